from sqlalchemy.orm import Mapped, mapped_column

from inspect_app.store.database import Table


class PersonRow(Table):
    """An account. ``password`` is an Argon2 hash in its own text form. A sign-in made before ``sign_ins_from``
    no longer counts: a phone of theirs was revoked then."""

    __tablename__ = "person"

    id: Mapped[str] = mapped_column(primary_key=True)
    login: Mapped[str] = mapped_column(unique=True)
    name: Mapped[str]
    role: Mapped[str]
    password: Mapped[str]
    added_at: Mapped[str]
    sign_ins_from: Mapped[str | None]
