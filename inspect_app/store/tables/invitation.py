from sqlalchemy import ForeignKey
from sqlalchemy.orm import Mapped, mapped_column

from inspect_app.store.database import Table


class InvitationRow(Table):
    """A place in a job's firm, for whoever brings the secret first. Of the secret only its SHA-256 is kept."""

    __tablename__ = "invitation"

    id: Mapped[str] = mapped_column(primary_key=True)
    job: Mapped[str] = mapped_column(index=True)
    firm: Mapped[str] = mapped_column(ForeignKey("firm.id"))
    role: Mapped[str]
    by: Mapped[str] = mapped_column(ForeignKey("person.id"))
    made_at: Mapped[str]
    expires: Mapped[str]
    secret: Mapped[str] = mapped_column(unique=True)
    used_at: Mapped[str | None]
    used_by: Mapped[str | None]
    withdrawn_at: Mapped[str | None]
