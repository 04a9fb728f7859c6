from sqlalchemy import Text
from sqlalchemy.orm import Mapped, mapped_column

from inspect_app.store.database import Table


class ManifestRow(Table):
    """What a phone said last about what is still only on it. ``items`` is JSON."""

    __tablename__ = "manifest"

    kid: Mapped[str] = mapped_column(primary_key=True)
    received_at: Mapped[str]
    oldest: Mapped[str | None]
    items: Mapped[str] = mapped_column(Text)
