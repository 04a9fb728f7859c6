from sqlalchemy import ForeignKey
from sqlalchemy.orm import Mapped, mapped_column

from inspect_app.store.database import Sequence, Table


class PhotoRow(Table):
    """A photo held whole in the vault for a job; ``seq`` is its receipt's, ``type`` what was declared."""

    __tablename__ = "photo"

    job: Mapped[str] = mapped_column(primary_key=True)
    sha256: Mapped[str] = mapped_column(primary_key=True)
    size: Mapped[int] = mapped_column(Sequence)
    type: Mapped[str]
    seq: Mapped[int] = mapped_column(Sequence, ForeignKey("statement.seq"), unique=True)
