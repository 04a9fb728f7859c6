"""Which entries of a job the people of a firm see that was given areas of its own: a function of the log alone.

They see the job, its assemblies, their areas, what their own people said, what speaks of their areas (by naming one, or
by a station, finding, lot or walk there), and findings that somebody who sees the whole job assigned to their firm,
with the place each is at. Every version of what they see is seen.

Nobody gains sight by what they say themselves: an entry passes its sight on to what hangs from it only if its author
sees the whole job, or was the first to speak of a subject that nobody could have guessed. So signing a station, a lot
or a photo's hash that belongs to others shows nothing of it.
"""

import heapq
from collections.abc import Collection, Iterable
from typing import Any, NamedTuple

from inspect_app.entry.format import Entry
from inspect_app.entry.pictures import pictures

Thing = tuple[str, str]
# Kinds whose subject is an id of its own that nobody can guess; the others' subjects are made of names known before.
FRESH = ("walk", "station", "finding", "correction", "recheck", "reopening", "mark", "day", "area")


class Sight(NamedTuple):
    """``name`` of the firm; ``own``: ids of its people on the job; ``trusted``: of those who see the whole job."""

    name: str
    areas: frozenset[str]
    own: frozenset[str]
    trusted: frozenset[str]


class Said(NamedTuple):
    """An entry as far as sight goes. ``ticket``: a lot under its own key's ticket. ``hooks``: things that show it;
    ``gives``: things it shows in turn; ``places``: the entries of its place, shown but showing nothing further."""

    seq: int
    digest: str
    by: str
    kind: str
    subject: str
    areas: frozenset[str]
    firm: str
    ticket: bool
    hooks: frozenset[Thing]
    gives: frozenset[Thing]
    places: frozenset[Thing]
    photos: frozenset[str]


class Seen(NamedTuple):
    """``entries``: ``{seq: since}``, the place in the server's order since which each is seen; ``photos`` likewise
    ``{sha256: since}``."""

    entries: dict[int, int]
    photos: dict[str, int]


def said(seq: int, entry: Entry) -> Said:
    """Read an entry once. ``seq``: its place in the server's order."""
    kind, subject = entry.kind, str(entry.payload["subject"])
    body: Any = entry.payload["body"]
    areas = _areas(kind, subject, body)
    version = ("version", f"{kind} {subject}")
    gives = {version, ("digest", entry.digest)}
    gives |= {(kind, subject)} if kind in ("walk", "station", "lot") else set()
    gives |= {("finding", subject), ("answer", subject)} if kind in ("answer", "finding") else set()
    places = {("place", f"{name} {body[name]}") for name in ("walk", "area", "station") if body.get(name)}
    firm = folded(str(body["firm"])) if kind == "assignment" else ""
    return Said(seq, entry.digest, entry.by, kind, subject, frozenset(areas), firm, subject.startswith(f"{entry.kid}/"),
                frozenset(_hooks(kind, subject, body, areas) | {version}), frozenset(gives), frozenset(places),
                frozenset(pictures(entry.payload)))  # fmt: skip


def folded(name: str) -> str:
    """A firm's name for comparing: blanks and capitals make no other firm."""
    return " ".join(name.casefold().split())


def _areas(kind: str, subject: str, body: dict[str, Any]) -> set[str]:
    """The areas that an entry names. An answer at a station speaks of that station's."""
    if kind == "answer" and body.get("station") is not None:
        return set()
    rows = body.get("population") or body.get("placed") or []
    named = [row["area"] for row in rows] + list(body.get("areas") or []) + [body.get("area")]
    return {area for area in [*named, subject if kind in ("area", "fit") else None] if isinstance(area, str)}


def _hooks(kind: str, subject: str, body: dict[str, Any], areas: Collection[str]) -> set[Thing]:
    hooks: set[Thing] = {("area", area) for area in areas}
    hooks |= {(name, body[name]) for name in ("station", "answer", "finding") if isinstance(body.get(name), str)}
    # A lot and a walk go over several areas: they show only what names nothing nearer.
    for name in ("lot", "walk"):
        if not hooks and isinstance(body.get(name), str):
            hooks.add((name, body[name]))
    if kind in ("area", "walk", "station"):
        hooks.add(("place", f"{kind} {subject}"))
    if kind in ("answer", "finding"):
        hooks.add(("finding", subject))
    if kind == "admission":
        hooks.add(("digest", body["entry"]))
    return hooks


def seen(entries: Iterable[Said], sight: Sight) -> Seen:
    """What is seen of these entries, in whatever order they are given."""
    known = sorted(entries, key=lambda one: one.seq)
    first: dict[Thing, int] = {}
    hooked: dict[Thing, list[Said]] = {}
    for one in known:
        for thing in [(one.kind, one.subject), *(("named", sha256) for sha256 in one.photos)]:
            first.setdefault(thing, one.seq)
        for hook in one.hooks:
            hooked.setdefault(hook, []).append(one)
    since: dict[int, int] = {}
    given: dict[Thing, int] = {}
    waiting = [(one.seq, one.seq, how) for one in known if (how := _plainly(one, sight))]
    heapq.heapify(waiting)
    by_seq = {one.seq: one for one in known}
    while waiting:
        at, seq, how = heapq.heappop(waiting)
        one = by_seq[seq]
        since.setdefault(seq, at)
        gives = _gives(one, how, sight, first[one.kind, one.subject] == seq)
        for thing in gives - given.keys():
            given[thing] = at
            for other in hooked.get(thing, ()):
                if other is one:
                    continue
                narrow = thing[0] == "place" or (thing[0] == "finding" and other.kind in ("answer", "finding"))
                found = how if thing[0] == "version" else PLACE if narrow else HOOKED
                heapq.heappush(waiting, (max(at, other.seq), other.seq, found))
    photos: dict[str, int] = {}
    for one in known:
        for sha256 in one.photos if one.seq in since else ():
            if one.by in sight.trusted or first["named", sha256] == one.seq:
                photos[sha256] = min(photos.get(sha256, since[one.seq]), since[one.seq])
    return Seen(since, photos)


OWN, HOOKED, PLACE = 1, 2, 3  # how an entry came to be seen


def _plainly(one: Said, sight: Sight) -> int:
    """Seen for what it says itself, and how; 0 when it is not."""
    assigned = one.kind == "assignment" and one.firm == folded(sight.name) and one.by in sight.trusted
    if one.kind in ("job", "assembly") or one.areas & sight.areas or assigned:
        return HOOKED
    return OWN if one.by in sight.own else 0


def _gives(one: Said, how: int, sight: Sight, first: bool) -> frozenset[Thing]:
    """What it shows. A place, or an answer seen for its finding alone, shows its versions and what speaks of the
    finding, not all that was done there."""
    passes = one.kind in FRESH or (one.kind == "lot" and one.ticket) or (one.kind == "answer" and how != OWN)
    if one.by not in sight.trusted and not (first and passes):
        return frozenset()
    if how == PLACE:
        narrow = frozenset(thing for thing in one.gives if thing[0] in ("version", "digest", "finding", "answer"))
        return narrow | (one.places if one.kind in ("answer", "finding", "station") else frozenset())
    gives = one.gives | one.places if one.by in sight.trusted else one.gives
    return gives if one.kind != "assignment" else gives | {("finding", one.subject)}
