from sqlalchemy import Index, Text
from sqlalchemy.orm import Mapped, mapped_column

from inspect_app.store.database import Sequence, Table


class ReportAskRow(Table):
    """A report that somebody asked for. ``state``: ``waiting``, ``making``, ``ready``, ``same`` (nothing had changed
    since ``number``) or ``failed``; ``stage`` and ``share`` (thousandths) how far it is; ``asked``: scope and form as
    sorted JSON."""

    __tablename__ = "report_ask"

    id: Mapped[int] = mapped_column(Sequence, primary_key=True)
    job: Mapped[str]
    person: Mapped[str]
    asked: Mapped[str] = mapped_column(Text)
    state: Mapped[str]
    stage: Mapped[str]
    share: Mapped[int]
    number: Mapped[int | None]
    trouble: Mapped[str | None] = mapped_column(Text)
    asked_at: Mapped[str]

    __table_args__ = (Index("ix_report_ask_job_state", "job", "state"),)
