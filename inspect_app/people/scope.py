"""What of a job somebody may fetch: all of it, or what their firm sees (``sight.py``)."""

import hashlib
import threading
from collections import OrderedDict
from collections.abc import Collection
from typing import NamedTuple

from inspect_app.entry.format import parse
from inspect_app.people.firms import Firms
from inspect_app.people.membership import Membership
from inspect_app.people.sight import Said, Seen, Sight, said, seen
from inspect_app.store.log_reading import LogReading, Received

MOST = 64  # jobs, and sights of jobs, kept ready


class Item(NamedTuple):
    """An entry to send. ``at``: the cursor that it stands at, for who sees a part the place in the log since which they
    see it: what becomes theirs by a word said today comes after what they fetched yesterday."""

    at: int
    seq: int
    received: Received


class Scope:
    """Who sees what. Reading a job's entries costs once; what is new is added to it."""

    def __init__(self, reading: LogReading, firms: Firms, membership: Membership) -> None:
        self.reading, self.firms, self.membership = reading, firms, membership
        self._said: OrderedDict[str, tuple[list[Received], list[Said]]] = OrderedDict()
        self._seen: OrderedDict[tuple[str, Sight], tuple[int, Seen]] = OrderedDict()
        self._lock = threading.Lock()

    def sight(self, job: str, person: str) -> Sight | None:
        """None: the whole job."""
        placed, firms = self.firms.people(job), {firm.id: firm for firm in self.firms.of(job)}
        own = firms.get(placed.get(person, ""))
        if own is None or own.areas is None:
            return None
        everybody = self.membership.members([job]).get(job, set())
        trusted = {one for one in everybody if one not in placed or firms[placed[one]].areas is None}
        people = {one for one in everybody if placed.get(one) == own.id}
        return Sight(own.name, frozenset(own.areas), frozenset(people), frozenset(trusted))

    def name(self, job: str, person: str) -> str:
        """Another one whenever what they see changes otherwise than by new entries; empty for the whole job."""
        sight = self.sight(job, person)
        if sight is None:
            return ""
        text = "\n".join([sight.name, *(" ".join(sorted(one)) for one in sight[1:])])
        return hashlib.sha256(text.encode()).hexdigest()[:16]

    def authors(self, job: str, person: str) -> set[str] | None:
        """Those whom they are told of: their firm's people and the authors of what they see; None: everybody."""
        sight = self.sight(job, person)
        if sight is None:
            return None
        _, known, shown = self._of(job, sight)
        return set(sight.own) | {one.by for one in known if one.seq in shown.entries}

    def shows_photo(self, job: str, person: str, sha256: str) -> bool:
        """Whether they see a photo that the job holds."""
        sight = self.sight(job, person)
        return sight is None or sha256 in self._of(job, sight)[2].photos

    def after(self, person: str, cursor: int, jobs: Collection[str], limit: int) -> list[Item]:
        """Some ``limit`` entries of these jobs that they see, after a cursor, in order of it; more where several stand
        at the last one, since a cursor must not pass between them."""
        sights = {job: self.sight(job, person) for job in jobs}
        whole = [job for job in jobs if sights[job] is None]
        items = [Item(one.seq, one.seq, one) for one in self.reading.entries_after(cursor, whole, limit)]
        for job, sight in sights.items():
            if sight is not None:
                received, known, shown = self._of(job, sight)
                items += [
                    Item(shown.entries[one.seq], one.seq, received[at])
                    for at, one in enumerate(known) if shown.entries.get(one.seq, 0) > cursor
                ]  # fmt: skip
        items.sort(key=lambda item: (item.at, item.seq))
        return [item for at, item in enumerate(items) if at < limit or item.at == items[limit - 1].at]

    def _of(self, job: str, sight: Sight) -> tuple[list[Received], list[Said], Seen]:
        with self._lock:
            received, known = self._said.pop(job, ([], []))
            new = self.reading.job_after(job, received[-1].seq if received else 0)
            received, known = received + new, known + [said(one.seq, parse(one.token)) for one in new]
            self._said[job] = received, known
            up_to, shown = self._seen.pop((job, sight), (-1, Seen({}, {})))
            last = received[-1].seq if received else 0
            if up_to != last:
                up_to, shown = last, seen(known, sight)
            self._seen[job, sight] = up_to, shown
            for kept in (self._said, self._seen):
                while len(kept) > MOST:
                    kept.popitem(last=False)
            return received, known, shown
