"""The phones of people: what each is called, when the server last heard of it, what is still only on it."""

from collections.abc import Collection
from typing import Any, NamedTuple

from sqlalchemy import insert, select, update
from sqlalchemy.orm import Session

from inspect_app.clock import Clock, spell
from inspect_app.entry.statement import parse_statement
from inspect_app.errors import BadInput
from inspect_app.store.manifests import Manifests
from inspect_app.store.tables import DeviceContactRow, DeviceRow, EntryRow, PersonRow, PhotoRow, StatementRow
from inspect_app.store.transactions import Transactions

LONGEST = 100


class Contact(NamedTuple):
    """One key. ``unsent``: ``{"entries", "photos", "oldest"}`` of this job as it last told, without what has
    arrived since; None before it ever did."""

    kid: str
    name: str
    person: str
    who: str
    enrolled_at: str
    last_contact: str | None
    unsent: dict[str, Any] | None
    revoked_at: str | None


class Contacts:
    """Beside the keys themselves (``devices.py``), which come from signed statements."""

    def __init__(self, transactions: Transactions, manifests: Manifests, clock: Clock) -> None:
        self.transactions, self.manifests, self.clock = transactions, manifests, clock

    def heard(self, kid: str) -> None:
        """It asked for a delivery or told what is unsent."""
        self._set(kid, last_contact=spell(self.clock()))

    def name(self, kid: str, name: str) -> None:
        """Raises ``BadInput``."""
        text = name.strip()
        if not 0 < len(text) <= LONGEST or not text.isprintable():
            raise BadInput("bad_text", "name", name)
        self._set(kid, name=text)

    def of(self, people: Collection[str], job: str) -> list[Contact]:
        """The keys of these people, by person and enrolment; what is unsent is told of this job alone."""
        asked = (
            select(DeviceRow, PersonRow.name, DeviceContactRow.name, DeviceContactRow.last_contact)
            .join(PersonRow, PersonRow.id == DeviceRow.person)
            .outerjoin(DeviceContactRow, DeviceContactRow.kid == DeviceRow.kid)
            .where(DeviceRow.person.in_(people))
            .order_by(PersonRow.id, DeviceRow.enrolled)
        )
        with self.transactions.reading() as session:
            rows = session.execute(asked).all()
            said = self._said([seq for row, *_ in rows for seq in (row.enrolled, row.revoked) if seq is not None])
            kids = [row.kid for row, *_ in rows]
            here = _arrived(session, kids, job)
            unsent = {one.kid: _unsent(one.items, one.oldest, job, here) for one in self.manifests.of(kids)}
        return [
            Contact(row.kid, name or row.device, row.person, who, str(said[row.enrolled]), last,
                    unsent.get(row.kid), said.get(row.revoked))
            for row, who, name, last in rows
        ]  # fmt: skip

    def _said(self, seqs: Collection[int]) -> dict[int | None, str]:
        """``{seq: at}`` of statements."""
        asked = select(StatementRow.seq, StatementRow.jws).where(StatementRow.seq.in_(seqs))
        with self.transactions.reading() as session:
            return {seq: str(parse_statement(jws).payload["at"]) for seq, jws in session.execute(asked)}

    def _set(self, kid: str, **changed: str) -> None:
        with self.transactions.writing() as session:
            here = DeviceContactRow.kid == kid
            if session.scalar(select(DeviceContactRow.kid).where(here)) is None:
                row = {"kid": kid, "name": None, "last_contact": None, **changed}
                session.execute(insert(DeviceContactRow).values(**row))
            else:
                session.execute(update(DeviceContactRow).where(here).values(**changed))


def _arrived(session: Session, kids: Collection[str], job: str) -> set[tuple[str, str]]:
    """What these keys signed in the job, and its photos: a phone tells before it sends, and then falls silent."""
    entries = select(EntryRow.digest).where(EntryRow.job == job, EntryRow.kid.in_(kids))
    photos = select(PhotoRow.sha256).where(PhotoRow.job == job)
    return {("entry", one) for one in session.scalars(entries)} | {("photo", one) for one in session.scalars(photos)}


def _unsent(items: list[dict[str, Any]], oldest: str | None, job: str, here: set[tuple[str, str]]) -> dict[str, Any]:
    own = [one["what"] for one in items if one["job"] == job and (one["what"], one["name"]) not in here]
    return {"entries": own.count("entry"), "photos": own.count("photo"), "oldest": oldest if own else None}
