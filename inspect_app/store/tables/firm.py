from sqlalchemy import ForeignKey, Text
from sqlalchemy.orm import Mapped, mapped_column

from inspect_app.store.database import Table


class FirmRow(Table):
    """A firm, by the name that people know it by."""

    __tablename__ = "firm"

    id: Mapped[str] = mapped_column(primary_key=True)
    name: Mapped[str] = mapped_column(unique=True)
    added_at: Mapped[str]


class JobFirmRow(Table):
    """A firm that takes part in a job, and on which side. ``areas``: JSON list of the area ids that its people see, or
    NULL where they see the whole job."""

    __tablename__ = "job_firm"

    job: Mapped[str] = mapped_column(primary_key=True)
    firm: Mapped[str] = mapped_column(ForeignKey("firm.id"), primary_key=True)
    side: Mapped[str]
    areas: Mapped[str | None] = mapped_column(Text)
    since: Mapped[str]
