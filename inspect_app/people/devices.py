"""Device keys: tied to a person by the server's signed word, ended by another."""

import json
from collections.abc import Collection, Mapping
from typing import Any, NamedTuple

from sqlalchemy import delete, insert, select, update

from inspect_app.entry.accept import Key
from inspect_app.entry.jwk import bare
from inspect_app.entry.statement import enrolment, parse_statement, revocation
from inspect_app.entry.thumbprint import thumbprint
from inspect_app.errors import Conflict, NotFound
from inspect_app.people.accounts import Person
from inspect_app.store.statements import Statements
from inspect_app.store.tables import DeviceRow, PasskeyRow, PersonRow
from inspect_app.store.transactions import Transactions


class Device(NamedTuple):
    """An enrolled key. ``revoked``: what it signs from now on goes to quarantine."""

    kid: str
    person: str
    jwk: dict[str, Any]
    device: str
    revoked: bool


class Devices:
    """All enrolled keys."""

    def __init__(self, transactions: Transactions, statements: Statements) -> None:
        self.transactions, self.statements = transactions, statements

    def enrol(self, person: Person, jwk: Mapping[str, object], device: str) -> str:
        """Tie a key to a person; the server's statement (JWS). The same key and person again: the same
        statement. Raises ``Refused`` ``bad_key``, ``Conflict`` for a key that is somebody else's."""
        key = bare(jwk)
        kid = thumbprint(key)
        who = {"id": person.id, "name": person.name, "role": person.role}
        with self.transactions.writing() as session:
            held = session.execute(select(DeviceRow).where(DeviceRow.kid == kid)).scalar_one_or_none()
            if held and held.person != person.id:
                raise Conflict("key_taken", "jwk", kid)
            if held:
                return self.statements.at(held.enrolled)
            issued = self.statements.issue(lambda seq, at: enrolment(seq, at, key, who, device))
            session.execute(
                insert(DeviceRow).values(
                    kid=kid, person=person.id, jwk=json.dumps(key, sort_keys=True), device=device,
                    enrolled=issued.seq, revoked=None,
                )
            )  # fmt: skip
            return issued.jws

    def revoke(self, kid: str, by: str) -> str:
        """End a key, once, and its person's passkeys and sign-ins of before, since one may be on that very phone (the
        password stays); the statement (JWS). ``by``: a person id, or ``server`` for whoever runs it. Raises
        ``NotFound``."""
        with self.transactions.writing() as session:
            held = session.execute(select(DeviceRow).where(DeviceRow.kid == kid)).scalar_one_or_none()
            if held is None:
                raise NotFound("key_unknown", "kid", kid)
            if held.revoked is not None:
                return self.statements.at(held.revoked)
            issued = self.statements.issue(lambda seq, at: revocation(seq, at, kid, by))
            session.execute(update(DeviceRow).where(DeviceRow.kid == kid).values(revoked=issued.seq))
            at = parse_statement(issued.jws).payload["at"]
            session.execute(update(PersonRow).where(PersonRow.id == held.person).values(sign_ins_from=at))
            session.execute(delete(PasskeyRow).where(PasskeyRow.person == held.person))
            return issued.jws

    def find(self, kid: str) -> Device | None:
        with self.transactions.reading() as session:
            row = session.execute(select(DeviceRow).where(DeviceRow.kid == kid)).scalar_one_or_none()
            return _device(row) if row else None

    def of(self, person: str) -> list[Device]:
        """The person's keys, in order of enrolment."""
        asked = select(DeviceRow).where(DeviceRow.person == person).order_by(DeviceRow.enrolled)
        with self.transactions.reading() as session:
            return [_device(row) for row in session.scalars(asked)]

    def keys(self, kids: Collection[str]) -> dict[str, Key]:
        """Those of the keys that are enrolled, as ``entry.accept`` wants them."""
        asked = select(DeviceRow, PersonRow.role).join(PersonRow, PersonRow.id == DeviceRow.person)
        with self.transactions.reading() as session:
            rows = session.execute(asked.where(DeviceRow.kid.in_(kids))).all()
            return {
                row.kid: Key(json.loads(row.jwk), row.person, row.revoked is not None, role)
                for row, role in rows
            }


def _device(row: DeviceRow) -> Device:
    return Device(row.kid, row.person, json.loads(row.jwk), row.device, row.revoked is not None)
