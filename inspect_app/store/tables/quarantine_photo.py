from sqlalchemy.orm import Mapped, mapped_column

from inspect_app.store.database import Sequence, Table


class QuarantinePhotoRow(Table):
    """A photo that a revoked key brought whole: in the vault, without a receipt until an entry in the log names it."""

    __tablename__ = "quarantine_photo"

    job: Mapped[str] = mapped_column(primary_key=True)
    sha256: Mapped[str] = mapped_column(primary_key=True)
    kid: Mapped[str] = mapped_column(index=True)
    size: Mapped[int] = mapped_column(Sequence)
    type: Mapped[str]
    received_at: Mapped[str]
