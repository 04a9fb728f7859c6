"""The firms of a job: on which side each is, and what its people see of the roof."""

import json
from collections.abc import Callable, Sequence
from typing import NamedTuple

from sqlalchemy import delete, insert, select

from inspect_app.clock import Clock, spell
from inspect_app.errors import BadInput, Conflict, NotFound
from inspect_app.people.sight import folded
from inspect_app.store.tables import FirmRow, JobFirmRow, MembershipRow, PersonRow
from inspect_app.store.transactions import Transactions

SIDES = ("contractor", "sub", "supplier", "owner", "engineer", "reviewer")
LONGEST = 100
MOST_AREAS = 500


class Firm(NamedTuple):
    """A firm in one job. ``areas``: the only ones its people see, or None for the whole job."""

    id: str
    name: str
    side: str
    areas: list[str] | None


_COLUMNS = (FirmRow.id, FirmRow.name, JobFirmRow.side, JobFirmRow.areas)


class Firms:
    """``new_id()`` gives the id of a new firm."""

    def __init__(self, transactions: Transactions, clock: Clock, new_id: Callable[[], str]) -> None:
        self.transactions, self.clock, self.new_id = transactions, clock, new_id

    def join(self, job: str, name: str, side: str, areas: Sequence[str] | None) -> Firm:
        """Let a firm take part in a job; said again, with whatever capitals and blanks, its side and areas are changed.
        Raises ``BadInput``, and ``Conflict`` for areas of a firm that has an administrator there: a job whose last one
        sees a part of it could be put right by nobody."""
        text = " ".join(name.split())
        if not 0 < len(text) <= LONGEST or not text.isprintable():
            raise BadInput("bad_text", "name", name)
        if side not in SIDES:
            raise BadInput("firm_side", "side", side)
        if areas is not None and len(areas) > MOST_AREAS:
            raise BadInput("firm_areas", "areas", len(areas))
        own = None if areas is None else sorted(set(areas))
        with self.transactions.writing() as session:
            same = next((one for one in self.of(job) if folded(one.name) == folded(text)), None)
            firm, text = (same.id, same.name) if same else (self._named(text), text)
            if own is not None and same and self._has_administrator(job, firm):
                raise Conflict("administrator_of_areas", "areas", text)
            here = (JobFirmRow.job == job, JobFirmRow.firm == firm)
            since = session.scalar(select(JobFirmRow.since).where(*here)) or spell(self.clock())
            session.execute(delete(JobFirmRow).where(*here))
            row = {"job": job, "firm": firm, "side": side, "since": since}
            session.execute(insert(JobFirmRow).values(**row, areas=None if own is None else json.dumps(own)))
        return Firm(firm, text, side, own)

    def of(self, job: str) -> list[Firm]:
        """The job's firms, by name."""
        asked = select(*_COLUMNS).join(JobFirmRow, JobFirmRow.firm == FirmRow.id).where(JobFirmRow.job == job)
        with self.transactions.reading() as session:
            rows = [Firm(id, name, side, None if areas is None else json.loads(areas))
                    for id, name, side, areas in session.execute(asked)]  # fmt: skip
        return sorted(rows, key=lambda firm: firm.name)

    def one(self, job: str, firm: str) -> Firm:
        """Raises ``NotFound`` for a firm that is not in the job."""
        found = next((one for one in self.of(job) if one.id == firm), None)
        if found is None:
            raise NotFound("firm_unknown", "firm", firm)
        return found

    def areas_of(self, job: str, person: str) -> list[str] | None:
        """The only areas that this member sees; None for the whole job, as members of no firm always did."""
        here = self.people(job).get(person)
        return self.one(job, here).areas if here else None

    def people(self, job: str) -> dict[str, str]:
        """``{person id: firm id}`` of the members who belong to a firm of the job."""
        asked = (
            select(MembershipRow.person, MembershipRow.firm)
            .join(JobFirmRow, (JobFirmRow.job == MembershipRow.job) & (JobFirmRow.firm == MembershipRow.firm))
            .where(MembershipRow.job == job)
        )
        with self.transactions.reading() as session:
            return {person: str(firm) for person, firm in session.execute(asked)}

    def _has_administrator(self, job: str, firm: str) -> bool:
        asked = (
            select(PersonRow.id)
            .join(MembershipRow, MembershipRow.person == PersonRow.id)
            .where(MembershipRow.job == job, MembershipRow.firm == firm, PersonRow.role == "administrator")
        )
        with self.transactions.reading() as session:
            return session.scalar(asked.limit(1)) is not None

    def _named(self, name: str) -> str:
        """The id of the firm of that name, made if there is none."""
        with self.transactions.writing() as session:
            known = session.scalar(select(FirmRow.id).where(FirmRow.name == name))
            if known is not None:
                return known
            firm = self.new_id()
            session.execute(insert(FirmRow).values(id=firm, name=name, added_at=spell(self.clock())))
            return firm

