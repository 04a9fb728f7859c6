from sqlalchemy.orm import Mapped, mapped_column

from inspect_app.store.database import Table


class DeviceContactRow(Table):
    """What people call a key's phone, and when the server last heard of it. Not derived: no statement says so."""

    __tablename__ = "device_contact"

    kid: Mapped[str] = mapped_column(primary_key=True)
    name: Mapped[str | None]
    last_contact: Mapped[str | None]
