"""Invitations: a place in a job's firm for whoever brings the link first; once, until a day, unless withdrawn."""

from collections.abc import Callable
from datetime import datetime
from typing import NamedTuple

from sqlalchemy import func, insert, select, update

from inspect_app.clock import Clock, spell
from inspect_app.errors import Conflict, Gone, NotFound, TooOften
from inspect_app.people.accounts import Person
from inspect_app.people.firms import Firms
from inspect_app.people.membership import Membership
from inspect_app.people.roles import role as known_role
from inspect_app.people.secret import expiry, fresh, kept, state_of
from inspect_app.store.tables import InvitationRow, PersonRow
from inspect_app.store.transactions import Transactions

LONGEST = 90  # days
MOST_OPEN = 200  # in one job


class Invitation(NamedTuple):
    """``by``: a name. ``state``: ``open`` ``used`` ``expired`` ``withdrawn``."""

    id: str
    job: str
    firm: str
    role: str
    by: str
    made_at: str
    expires: str
    state: str


class Invitations:
    """``new_id()`` gives ids, ``entropy(n)`` n random bytes."""

    def __init__(self, transactions: Transactions, clock: Clock, firms: Firms, membership: Membership,
                 new_id: Callable[[], str], entropy: Callable[[int], bytes]) -> None:  # fmt: skip
        self.transactions, self.clock, self.firms, self.membership = transactions, clock, firms, membership
        self.new_id, self.entropy = new_id, entropy

    def make(self, job: str, firm: str, role: str, days: int, by: str) -> tuple[str, str, str]:
        """``(id, secret, expires)``; the secret is told once. Raises ``BadInput`` (role, days), ``NotFound`` for a firm
        that is not in the job, ``Conflict`` for an administrator of a firm that sees only its areas, ``TooOften``
        beyond ``MOST_OPEN``."""
        known_role(role)
        expires, secret, id = expiry(self.clock(), days, LONGEST), fresh(self.entropy), self.new_id()
        with self.transactions.writing() as session:
            if self.firms.one(job, firm).areas is not None and role == "administrator":
                raise Conflict("administrator_of_areas", "role", role)
            if sum(one.state == "open" for one in self.of(job)) >= MOST_OPEN:
                raise TooOften("too_many_invitations", "invitations", 3600)
            session.execute(
                insert(InvitationRow).values(
                    id=id, job=job, firm=firm, role=role, by=by, made_at=spell(self.clock()), expires=expires,
                    secret=kept(secret), used_at=None, used_by=None, withdrawn_at=None,
                )
            )  # fmt: skip
        return id, secret, expires

    def of(self, job: str) -> list[Invitation]:
        """The job's, newest first."""
        return self._all(InvitationRow.job == job)

    def find(self, secret: str) -> Invitation:
        """The one of this secret, still good. Raises ``NotFound``, or ``Gone`` when it was used, is withdrawn or has
        expired."""
        key = kept(secret)
        found = self._all(InvitationRow.secret == key) if key else []
        if not found:
            raise NotFound("invitation_unknown", "invitation")
        if found[0].state != "open":
            raise Gone(f"invitation_{found[0].state}", "invitation", found[0].expires)
        return found[0]

    def take(self, secret: str, person: Person) -> Invitation:
        """Join by it, once: of two at the same time one joins. Raises as ``find``, and ``Conflict`` for somebody of
        another role or, on this job, of another firm."""
        with self.transactions.writing() as session:
            found = self.find(secret)
            if person.role != found.role:
                raise Conflict("invitation_other_role", "role", person.role)
            if person.role == "administrator" and self.firms.one(found.job, found.firm).areas is not None:
                raise Conflict("administrator_of_areas", "role", person.role)  # it was given areas since
            if not self.membership.place(person.id, found.job, found.firm):
                raise Conflict("invitation_other_firm", "firm", person.name)
            used = {"used_at": spell(self.clock()), "used_by": person.id}
            session.execute(update(InvitationRow).where(InvitationRow.id == found.id).values(**used))
        return found

    def withdraw(self, job: str, id: str) -> None:
        """End one that nobody used; again and again is the same. Raises ``NotFound``, ``Gone`` when it was used."""
        with self.transactions.writing() as session:
            found = next((one for one in self.of(job) if one.id == id), None)
            if found is None:
                raise NotFound("invitation_unknown", "invitation", id)
            if found.state == "used":
                raise Gone("invitation_used", "invitation", found.expires)
            now = func.coalesce(InvitationRow.withdrawn_at, spell(self.clock()))
            session.execute(update(InvitationRow).where(InvitationRow.id == id).values(withdrawn_at=now))

    def withdraw_all(self) -> int:
        """End every one that nobody used: a server that was set back cannot know which were; returns how many."""
        open_ = (InvitationRow.used_at.is_(None), InvitationRow.withdrawn_at.is_(None))
        with self.transactions.writing() as session:
            ended = session.scalar(select(func.count()).select_from(InvitationRow).where(*open_)) or 0
            session.execute(update(InvitationRow).where(*open_).values(withdrawn_at=spell(self.clock())))
        return ended

    def _all(self, condition: object) -> list[Invitation]:
        asked = (
            select(InvitationRow, PersonRow.name)
            .join(PersonRow, PersonRow.id == InvitationRow.by)
            .where(condition)  # type: ignore[arg-type]
            .order_by(InvitationRow.id.desc())
        )
        now = self.clock()
        with self.transactions.reading() as session:
            return [_invitation(row, name, now) for row, name in session.execute(asked)]


def _invitation(row: InvitationRow, name: str, now: datetime) -> Invitation:
    state = state_of(now, row.expires, row.withdrawn_at, row.used_at)
    return Invitation(row.id, row.job, row.firm, row.role, name, row.made_at, row.expires, state)
