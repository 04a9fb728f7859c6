from sqlalchemy import ForeignKey
from sqlalchemy.orm import Mapped, mapped_column

from inspect_app.store.database import Sequence, Table


class TicketRow(Table):
    """A random ticket given to a key: where it is in its series, and the statement that signs it. Derived from the
    ticket statements."""

    __tablename__ = "ticket"

    job: Mapped[str] = mapped_column(primary_key=True)
    kid: Mapped[str] = mapped_column(primary_key=True)
    series: Mapped[str] = mapped_column(primary_key=True)
    n: Mapped[int] = mapped_column(Sequence, primary_key=True, autoincrement=False)
    seq: Mapped[int] = mapped_column(Sequence, ForeignKey("statement.seq"), unique=True)
