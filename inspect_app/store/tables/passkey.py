from sqlalchemy import ForeignKey, Text
from sqlalchemy.orm import Mapped, mapped_column

from inspect_app.store.database import Sequence, Table


class PasskeyRow(Table):
    """A passkey of a person: the credential's id and public key (COSE, RFC 9052), base64url both."""

    __tablename__ = "passkey"

    id: Mapped[str] = mapped_column(primary_key=True)
    person: Mapped[str] = mapped_column(ForeignKey("person.id"), index=True)
    name: Mapped[str]
    public_key: Mapped[str] = mapped_column(Text)
    sign_count: Mapped[int] = mapped_column(Sequence)
    added_at: Mapped[str]
    used_at: Mapped[str | None]


class SpentChallengeRow(Table):
    """A challenge that was answered well, kept until nobody would take it any more."""

    __tablename__ = "spent_challenge"

    challenge: Mapped[str] = mapped_column(primary_key=True)
    until: Mapped[int] = mapped_column(Sequence, index=True)
