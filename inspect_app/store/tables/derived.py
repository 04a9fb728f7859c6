from sqlalchemy import Text
from sqlalchemy.orm import Mapped, mapped_column

from inspect_app.store.database import Sequence, Table


class DerivedJob(Table):
    """A job's record as last folded (``record``, JSON with sorted keys), and from what: its entries up to
    ``up_to``, and the people of ``people`` (a digest). Drop it at will."""

    __tablename__ = "derived_job"

    job: Mapped[str] = mapped_column(primary_key=True)
    up_to: Mapped[int] = mapped_column(Sequence)
    people: Mapped[str]
    record: Mapped[str] = mapped_column(Text)
