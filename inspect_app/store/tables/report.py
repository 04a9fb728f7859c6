from sqlalchemy import Text
from sqlalchemy.orm import Mapped, mapped_column

from inspect_app.store.database import Sequence, Table


class ReportRow(Table):
    """A report of a job. ``state``: ``making``, ``ready`` or ``failed``; ``file`` is a name in the reports'
    folder, ``contents`` the digest of its contents, ``up_to`` the last server sequence it covers."""

    __tablename__ = "report"

    job: Mapped[str] = mapped_column(primary_key=True)
    number: Mapped[int] = mapped_column(primary_key=True, autoincrement=False)
    state: Mapped[str]
    up_to: Mapped[int] = mapped_column(Sequence)
    made_at: Mapped[str]
    contents: Mapped[str | None]
    file: Mapped[str | None]
    trouble: Mapped[str | None] = mapped_column(Text)
