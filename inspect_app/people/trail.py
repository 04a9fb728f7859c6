"""The trail: who saw, exported, invited, revoked, admitted, joined, signed in, and when. It only grows.

What matters for the evidence (a release, a recheck, a concession, an admission) is a signed entry besides; the trail
tells of what nobody signs.
"""

import json
from datetime import timedelta
from typing import Any, NamedTuple

from sqlalchemy import and_, func, insert, or_, select

from inspect_app.clock import Clock, spell
from inspect_app.store.tables import MembershipRow, PersonRow, TrailRow
from inspect_app.store.transactions import Transactions

WHAT = (
    "joined", "signed_in", "passkey_added", "passkey_removed", "firm", "invited", "invitation_withdrawn", "link_made",
    "link_withdrawn", "link_seen", "report_seen", "report_asked", "photo_seen", "exported", "device_named", "revoked",
    "admitted", "copy_imported", "known_again", "packaged", "countersigned",
)  # fmt: skip
PAGE = 200
VISIT = timedelta(hours=1)  # seen again within it is the same visit: a link read in a loop fills no disk


class Step(NamedTuple):
    """``who``: a name, or nobody's for a link; ``person``: their id."""

    seq: int
    at: str
    person: str | None
    who: str | None
    what: str
    facts: dict[str, Any]


class Trail:
    """Rows are written in the transaction of what they tell of, if there is one."""

    def __init__(self, transactions: Transactions, clock: Clock) -> None:
        self.transactions, self.clock = transactions, clock

    def note(self, what: str, job: str | None, who: str | None, **facts: object) -> None:
        """Durably. ``what`` is one of ``WHAT``; ``job`` None: of everybody who shares a job with ``who``."""
        if what not in WHAT:
            raise RuntimeError(f"no trail of {what!r}")
        with self.transactions.writing() as session:
            seq = (session.scalar(select(func.max(TrailRow.seq))) or 0) + 1
            row = {"seq": seq, "at": spell(self.clock()), "job": job, "who": who, "what": what}
            session.execute(insert(TrailRow).values(**row, facts=json.dumps(facts, sort_keys=True)))

    def visit(self, what: str, job: str, **facts: object) -> None:
        """As ``note`` of somebody who is not signed in; once for all that is seen alike within ``VISIT``."""
        self.once(what, job, None, VISIT, **facts)

    def once(self, what: str, job: str, who: str | None, within: timedelta, **facts: object) -> None:
        """As ``note``, unless the same stands there of the same person within that time."""
        said, since = json.dumps(facts, sort_keys=True), spell(self.clock() - within)
        alike = select(TrailRow.seq).where(
            TrailRow.job == job, TrailRow.what == what, TrailRow.who.is_not_distinct_from(who), TrailRow.at > since,
            TrailRow.facts == said,
        )  # fmt: skip
        with self.transactions.writing() as session:
            if session.scalar(alike.limit(1)) is None:
                self.note(what, job, who, **facts)

    def of(self, job: str, before: int | None = None) -> list[Step]:
        """The newest ``PAGE`` steps of a job, newest first, or those before a number. A sign-in is told of members,
        from when they joined: what they did elsewhere before is nobody's here."""
        since = select(MembershipRow.person).where(
            MembershipRow.job == job, MembershipRow.person == TrailRow.who, MembershipRow.since <= TrailRow.at
        )
        asked = (
            select(TrailRow.seq, TrailRow.at, TrailRow.who, PersonRow.name, TrailRow.what, TrailRow.facts)
            .outerjoin(PersonRow, PersonRow.id == TrailRow.who)
            .where(or_(TrailRow.job == job, and_(TrailRow.job.is_(None), since.exists())))
            .order_by(TrailRow.seq.desc())
            .limit(PAGE)
        )
        if before is not None:
            asked = asked.where(TrailRow.seq < before)
        with self.transactions.reading() as session:
            return [Step(*row[:5], json.loads(row[5])) for row in session.execute(asked)]
