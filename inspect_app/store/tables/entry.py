from sqlalchemy import ForeignKey, Index, Text
from sqlalchemy.orm import Mapped, mapped_column

from inspect_app.store.database import Sequence, Table


class EntryRow(Table):
    """An accepted entry: ``token`` as received, to the byte. The other columns only repeat what it says, to
    find it by; ``seq`` is that of its receipt."""

    __tablename__ = "entry"
    __table_args__ = (Index("entry_by_job", "job", "seq"), Index("entry_by_kind", "job", "kind"))

    seq: Mapped[int] = mapped_column(
        Sequence, ForeignKey("statement.seq"), primary_key=True, autoincrement=False
    )
    digest: Mapped[str] = mapped_column(unique=True)
    job: Mapped[str]
    kind: Mapped[str]
    subject: Mapped[str]
    kid: Mapped[str]
    token: Mapped[str] = mapped_column(Text)
