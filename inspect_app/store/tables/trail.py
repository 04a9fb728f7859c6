from sqlalchemy import Text
from sqlalchemy.orm import Mapped, mapped_column

from inspect_app.store.database import Sequence, Table


class TrailRow(Table):
    """Who did what beside the record: saw, exported, invited, revoked. The database itself refuses to change or
    remove a row. ``job`` is NULL for a sign-in, ``who`` a person's id or NULL, ``facts`` JSON."""

    __tablename__ = "trail"

    seq: Mapped[int] = mapped_column(Sequence, primary_key=True, autoincrement=False)
    at: Mapped[str]
    job: Mapped[str | None] = mapped_column(index=True)
    who: Mapped[str | None]
    what: Mapped[str]
    facts: Mapped[str] = mapped_column(Text)
