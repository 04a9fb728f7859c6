from sqlalchemy import Text, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column

from inspect_app.store.database import Sequence, Table


class StatementRow(Table):
    """What the server has signed, in its one order. ``job`` and ``n`` place a receipt in its job's chain."""

    __tablename__ = "statement"
    __table_args__ = (UniqueConstraint("job", "n", name="one_chain_per_job"),)

    seq: Mapped[int] = mapped_column(Sequence, primary_key=True, autoincrement=False)
    kind: Mapped[str]
    job: Mapped[str | None]
    n: Mapped[int | None] = mapped_column(Sequence)
    digest: Mapped[str] = mapped_column(unique=True)
    jws: Mapped[str] = mapped_column(Text)
