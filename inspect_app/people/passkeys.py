"""Passkeys: sign-in by a key that a phone or its account keeps, beside the password and worth the same session."""

import re
from collections.abc import Mapping
from typing import Any, NamedTuple

from sqlalchemy import delete, func, insert, select, update

from inspect_app.clock import Clock, spell
from inspect_app.entry.base64url import encode
from inspect_app.errors import BadInput, Conflict, NotAllowed, NotFound, NotSignedIn
from inspect_app.people.accounts import Accounts, Person
from inspect_app.people.passkey_answers import Party, made, to_make, to_use, used
from inspect_app.store.tables import PasskeyRow, SpentChallengeRow
from inspect_app.store.transactions import Transactions

SECONDS = 300  # that a challenge may wait for its answer: a person looks for a finger or a second phone
MOST = 10  # passkeys of one person
ID = re.compile(r"[A-Za-z0-9_-]{1,1364}\Z", re.ASCII)  # 1,023 bytes at most (WebAuthn 4, Credential ID)


class Passkey(NamedTuple):
    """A passkey as its person sees it."""

    id: str
    name: str
    added_at: str
    used_at: str | None


class Passkeys:
    """All passkeys. Challenges are made and remembered by whoever asks; here each is spent once."""

    def __init__(self, transactions: Transactions, clock: Clock, accounts: Accounts) -> None:
        self.transactions, self.clock, self.accounts = transactions, clock, accounts

    def to_add(self, person: Person, challenge: bytes, party: Party) -> dict[str, Any]:
        """What a browser makes a passkey from. Raises ``Conflict`` ``passkeys_full``."""
        held = [one.id for one in self.of(person.id)]
        if len(held) >= MOST:
            raise Conflict("passkeys_full", "passkeys", MOST)
        return to_make(party, person.id, person.login, person.name, challenge, held)

    def add(self, person: Person, name: str, answer: Mapping[str, Any], challenge: bytes, party: Party) -> Passkey:
        """Keep the passkey of the answer. Raises ``BadInput`` ``passkey_not_proved``, ``NotAllowed``
        ``passkey_elsewhere``, ``NotSignedIn`` ``passkey_spent``, ``Conflict`` (one held already, too many)."""
        new = made(answer, challenge, party)
        with self.transactions.writing() as session:
            self._spend(challenge)
            held = session.scalar(select(PasskeyRow.person).where(PasskeyRow.id == new.id))
            if held is not None:
                raise Conflict("passkey_held", "passkey", new.id)
            asked = select(func.count()).select_from(PasskeyRow).where(PasskeyRow.person == person.id)
            if (session.scalar(asked) or 0) >= MOST:
                raise Conflict("passkeys_full", "passkeys", MOST)
            kept = Passkey(new.id, name, spell(self.clock()), None)
            session.execute(
                insert(PasskeyRow).values(
                    **kept._asdict(), person=person.id, public_key=new.public_key, sign_count=new.sign_count
                )
            )
        return kept

    def to_sign_in(self, challenge: bytes, party: Party) -> dict[str, Any]:
        return to_use(party, challenge)

    def signing_in(self, answer: Mapping[str, Any], challenge: bytes, party: Party) -> Person:
        """Whose passkey answered. Raises ``NotSignedIn`` (``passkey_unknown``: never added, or removed;
        ``passkey_spent``), ``NotAllowed`` (``passkey_elsewhere``, ``passkey_copied``), ``BadInput``."""
        named = answer.get("id")
        if not isinstance(named, str) or not ID.match(named):
            raise BadInput("passkey_not_proved", "credential", named)
        with self.transactions.writing() as session:
            row = session.execute(select(PasskeyRow).where(PasskeyRow.id == named)).scalar_one_or_none()
            if row is None:
                raise NotSignedIn("passkey_unknown", "passkey", named)
            count = used(answer, challenge, party, row.public_key)
            self._spend(challenge)
            # Two copies of one key count apart; many authenticators never count and stay at 0 (WebAuthn 6.1.1).
            if (count or row.sign_count) and count <= row.sign_count:
                raise NotAllowed("passkey_copied", "passkey", named)
            counted = {"sign_count": count, "used_at": spell(self.clock())}
            session.execute(update(PasskeyRow).where(PasskeyRow.id == named).values(**counted))
            person = self.accounts.by_id(row.person)
        if person is None:
            raise NotSignedIn("passkey_unknown", "passkey", named)
        return person

    def of(self, person: str) -> list[Passkey]:
        """The person's passkeys, oldest first."""
        asked = select(PasskeyRow.id, PasskeyRow.name, PasskeyRow.added_at, PasskeyRow.used_at)
        with self.transactions.reading() as session:
            rows = session.execute(asked.where(PasskeyRow.person == person)).all()
        return sorted((Passkey(*row) for row in rows), key=lambda one: (one.added_at, one.id))

    def remove(self, person: str, passkey: str) -> None:
        """It opens nothing any more. Raises ``NotFound`` for one that is not the person's."""
        if not ID.match(passkey):
            raise NotFound("passkey_missing", "passkey", passkey)
        with self.transactions.writing() as session:
            own = (PasskeyRow.id == passkey, PasskeyRow.person == person)
            if session.scalar(select(PasskeyRow.id).where(*own)) is None:
                raise NotFound("passkey_missing", "passkey", passkey)
            session.execute(delete(PasskeyRow).where(*own))

    def _spend(self, challenge: bytes) -> None:
        """Once only, even for who kept an old cookie: the session alone, being a cookie, cannot forget."""
        now, text = int(self.clock().timestamp()), encode(challenge)
        with self.transactions.writing() as session:
            session.execute(delete(SpentChallengeRow).where(SpentChallengeRow.until < now))
            if session.get(SpentChallengeRow, text) is not None:
                raise NotSignedIn("passkey_spent", "challenge", "")
            session.execute(insert(SpentChallengeRow).values(challenge=text, until=now + SECONDS))
