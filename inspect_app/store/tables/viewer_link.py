from sqlalchemy import ForeignKey
from sqlalchemy.orm import Mapped, mapped_column

from inspect_app.store.database import Sequence, Table


class ViewerLinkRow(Table):
    """A page of one job that anybody may read who has the secret, until it expires or is withdrawn. Of the secret only
    its SHA-256 is kept; ``seen`` counts how often the page was opened."""

    __tablename__ = "viewer_link"

    id: Mapped[str] = mapped_column(primary_key=True)
    job: Mapped[str] = mapped_column(index=True)
    name: Mapped[str]
    by: Mapped[str] = mapped_column(ForeignKey("person.id"))
    made_at: Mapped[str]
    expires: Mapped[str]
    secret: Mapped[str] = mapped_column(unique=True)
    withdrawn_at: Mapped[str | None]
    seen: Mapped[int] = mapped_column(Sequence)
