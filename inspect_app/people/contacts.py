"""The phones of people: what each is called, when the server last heard of it, what is still only on it."""

from collections.abc import Collection, Mapping
from typing import Any, NamedTuple

from sqlalchemy import insert, select, update

from inspect_app.clock import Clock, spell
from inspect_app.entry.statement import parse_statement
from inspect_app.errors import BadInput
from inspect_app.people.unsent import Shown, is_late, still_out, still_out_each
from inspect_app.store.manifests import Manifests
from inspect_app.store.tables import DeviceContactRow, DeviceRow, PersonRow, StatementRow
from inspect_app.store.transactions import Transactions

LONGEST = 100


class Contact(NamedTuple):
    """One key. ``unsent``: what of this job it last told is only on it, without what has arrived since; None before it
    ever did. ``late``: some of that is older than two days; ``replaced``: its person enrolled another key since the
    server last heard of it."""

    kid: str
    name: str
    person: str
    who: str
    enrolled_at: str
    last_contact: str | None
    unsent: dict[str, Any] | None
    revoked_at: str | None
    late: bool
    replaced: bool


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

    def of(
        self, people: Collection[str], job: str | None = None, shown: Shown = lambda job, photo: True
    ) -> list[Contact]:
        """The keys of these people, by person and enrolment; what is unsent is told of this job alone, if one is
        given. ``shown``: as of ``still_out``."""
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
            unsent = still_out(session, self.manifests.of(kids), job, shown)
        newest = {row.person: str(said[row.enrolled]) for row, *_ in rows}  # they come in order of enrolment
        now = self.clock()
        return [
            Contact(row.kid, name or row.device, row.person, who, str(said[row.enrolled]), last,
                    unsent[row.kid].counted() if row.kid in unsent else None, said.get(row.revoked),
                    is_late(unsent.get(row.kid), str(said[row.enrolled]), now),
                    (last or str(said[row.enrolled])) < newest[row.person])
            for row, who, name, last in rows
        ]  # fmt: skip

    def never_arrived(self, person: str, but: str | None, shown: Shown) -> list[Contact]:
        """Those of the person's keys, but one, that told of something which has not arrived, of whatever job."""
        return [one for one in self.of([person], shown=shown) if one.kid != but and one.unsent and one.unsent["items"]]

    def overdue(self, jobs: Mapping[str, Collection[str]]) -> dict[str, int]:
        """``jobs``: the people of each. How many phones of these hold something of the job for more than two days; one
        whose key was ended is none: somebody has given it up. Each phone's list is read once, however many jobs there
        are."""
        everybody = {person for people in jobs.values() for person in people}
        asked = select(DeviceRow).where(DeviceRow.person.in_(everybody), DeviceRow.revoked.is_(None))
        with self.transactions.reading() as session:
            devices = {row.kid: row for row in session.scalars(asked)}
            said = self._said([row.enrolled for row in devices.values()])
            out = still_out_each(session, self.manifests.of(devices))
        now = self.clock()
        return {
            job: sum(devices[kid].person in people and is_late(unsent, str(said[devices[kid].enrolled]), now)
                     for kid, unsent in out.get(job, {}).items())
            for job, people in jobs.items()
        }  # fmt: skip

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

