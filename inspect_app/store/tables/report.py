from sqlalchemy import Text
from sqlalchemy.orm import Mapped, mapped_column

from inspect_app.store.database import Sequence, Table

WHOLE = '{"kind":"closeout"}'


class ReportRow(Table):
    """A report of a job. ``state``: ``making``, ``ready`` or ``failed``; ``file`` is a name in the reports'
    folder, ``contents`` the digest of its contents, ``sha256`` that of the PDF (None: shelved before it was noted),
    ``up_to`` the last server sequence it covers. ``scope``: what it speaks of, as sorted JSON; ``told``: what a list
    says of it, as JSON, None for one of a release before lists."""

    __tablename__ = "report"

    job: Mapped[str] = mapped_column(primary_key=True)
    number: Mapped[int] = mapped_column(primary_key=True, autoincrement=False)
    state: Mapped[str]
    up_to: Mapped[int] = mapped_column(Sequence)
    made_at: Mapped[str]
    contents: Mapped[str | None]
    file: Mapped[str | None]
    sha256: Mapped[str | None]
    trouble: Mapped[str | None] = mapped_column(Text)
    kind: Mapped[str] = mapped_column(server_default="closeout")
    scope: Mapped[str] = mapped_column(Text, server_default=WHOLE)
    told: Mapped[str | None] = mapped_column(Text)
