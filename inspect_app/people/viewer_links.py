"""Reviewers' links: one job's page, to read and nothing else, until a day, unless withdrawn."""

from collections.abc import Callable
from typing import NamedTuple

from sqlalchemy import func, insert, select, update

from inspect_app.clock import Clock, spell
from inspect_app.errors import BadInput, Gone, NotFound, TooOften
from inspect_app.people.secret import expiry, fresh, kept, state_of
from inspect_app.store.tables import PersonRow, ViewerLinkRow
from inspect_app.store.transactions import Transactions

LONGEST = 366  # days
LONGEST_NAME = 100
MOST_OPEN = 200  # in one job


class ViewerLink(NamedTuple):
    """``name``: for whom it is; ``by``: a name. ``state``: ``open`` ``expired`` ``withdrawn``; ``seen``: how often."""

    id: str
    job: str
    name: str
    by: str
    expires: str
    state: str
    seen: int


class ViewerLinks:
    """``new_id()`` gives ids, ``entropy(n)`` n random bytes."""

    def __init__(self, transactions: Transactions, clock: Clock, new_id: Callable[[], str],
                 entropy: Callable[[int], bytes]) -> None:  # fmt: skip
        self.transactions, self.clock, self.new_id, self.entropy = transactions, clock, new_id, entropy

    def make(self, job: str, name: str, days: int, by: str) -> tuple[str, str, str]:
        """``(id, secret, expires)``; the secret is told once. Raises ``BadInput``, ``TooOften``."""
        text = name.strip()
        if not 0 < len(text) <= LONGEST_NAME or not text.isprintable():
            raise BadInput("bad_text", "name", name)
        expires, secret, id = expiry(self.clock(), days, LONGEST), fresh(self.entropy), self.new_id()
        with self.transactions.writing() as session:
            if sum(one.state == "open" for one in self.of(job)) >= MOST_OPEN:
                raise TooOften("too_many_links", "links", 3600)
            session.execute(
                insert(ViewerLinkRow).values(
                    id=id, job=job, name=text, by=by, made_at=spell(self.clock()), expires=expires,
                    secret=kept(secret), withdrawn_at=None, seen=0,
                )
            )  # fmt: skip
        return id, secret, expires

    def of(self, job: str) -> list[ViewerLink]:
        """The job's, newest first."""
        return self._all(ViewerLinkRow.job == job)

    def find(self, secret: str) -> ViewerLink:
        """The one of this secret, still good. Raises ``NotFound``, or ``Gone`` when it is withdrawn or has expired."""
        key = kept(secret)
        found = self._all(ViewerLinkRow.secret == key) if key else []
        if not found:
            raise NotFound("link_unknown", "link")
        if found[0].state != "open":
            raise Gone(f"link_{found[0].state}", "link", found[0].expires)
        return found[0]

    def count(self, id: str) -> None:
        """Once more seen."""
        with self.transactions.writing() as session:
            seen = ViewerLinkRow.seen + 1
            session.execute(update(ViewerLinkRow).where(ViewerLinkRow.id == id).values(seen=seen))

    def withdraw(self, job: str, id: str) -> None:
        """End it; again and again is the same. Raises ``NotFound``."""
        with self.transactions.writing() as session:
            if all(one.id != id for one in self.of(job)):
                raise NotFound("link_unknown", "link", id)
            now = func.coalesce(ViewerLinkRow.withdrawn_at, spell(self.clock()))
            session.execute(update(ViewerLinkRow).where(ViewerLinkRow.id == id).values(withdrawn_at=now))

    def _all(self, condition: object) -> list[ViewerLink]:
        asked = (
            select(ViewerLinkRow, PersonRow.name)
            .join(PersonRow, PersonRow.id == ViewerLinkRow.by)
            .where(condition)  # type: ignore[arg-type]
            .order_by(ViewerLinkRow.id.desc())
        )
        now = self.clock()
        with self.transactions.reading() as session:
            return [
                ViewerLink(row.id, row.job, row.name, name, row.expires,
                           state_of(now, row.expires, row.withdrawn_at), row.seen)
                for row, name in session.execute(asked)
            ]  # fmt: skip
