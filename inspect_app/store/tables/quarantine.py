from sqlalchemy import Text
from sqlalchemy.orm import Mapped, mapped_column

from inspect_app.store.database import Table


class QuarantineRow(Table):
    """A well formed entry that is kept out of the record until a person decides."""

    __tablename__ = "quarantine"

    digest: Mapped[str] = mapped_column(primary_key=True)
    job: Mapped[str]
    kid: Mapped[str] = mapped_column(index=True)
    reason: Mapped[str]
    received_at: Mapped[str]
    token: Mapped[str] = mapped_column(Text)
