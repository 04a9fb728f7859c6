from sqlalchemy import ForeignKey
from sqlalchemy.orm import Mapped, mapped_column

from inspect_app.store.database import Table


class MembershipRow(Table):
    """A person belongs to a job and sees it; nobody else does. ``firm``: the one they belong to on this job, if any."""

    __tablename__ = "membership"

    job: Mapped[str] = mapped_column(primary_key=True)
    person: Mapped[str] = mapped_column(ForeignKey("person.id"), primary_key=True, index=True)
    since: Mapped[str]
    firm: Mapped[str | None]
