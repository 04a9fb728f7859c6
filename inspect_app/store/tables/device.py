from sqlalchemy import ForeignKey, Text
from sqlalchemy.orm import Mapped, mapped_column

from inspect_app.store.database import Sequence, Table


class DeviceRow(Table):
    """An enrolled key. Derived from the enrolment and revocation statements, whose ``seq`` it names."""

    __tablename__ = "device"

    kid: Mapped[str] = mapped_column(primary_key=True)
    person: Mapped[str] = mapped_column(ForeignKey("person.id"), index=True)
    jwk: Mapped[str] = mapped_column(Text)
    device: Mapped[str]
    enrolled: Mapped[int] = mapped_column(Sequence)
    revoked: Mapped[int | None] = mapped_column(Sequence)
