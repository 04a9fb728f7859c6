"""What phones told of and what has not arrived since: named, and told to the office once it is two days old.

A phone's list is its word and its clock's. When the server first heard of a thing is its own: a clock that is years off
makes nothing late or early by itself.
"""

from collections.abc import Callable, Collection, Iterable
from datetime import datetime, timedelta
from typing import Any, NamedTuple

from sqlalchemy import select
from sqlalchemy.orm import InstrumentedAttribute, Session

from inspect_app.store.manifests import Manifest
from inspect_app.store.tables import EntryRow, PhotoRow, QuarantinePhotoRow, QuarantineRow

LATE = timedelta(hours=48)  # a third of the seven days after which some browsers erase what nobody looks at
AT_ONCE = 500  # names in one question: databases limit how many it may hold
Shown = Callable[[str, str], bool]


class Unsent(NamedTuple):
    """Of one key: when it told last, when the server first heard of what is still out, when the oldest of it was made
    by the phone's clock, and the things themselves, as it told them."""

    told_at: str
    since: str | None
    oldest: str | None
    items: list[dict[str, Any]]

    def counted(self) -> dict[str, Any]:
        kinds = [one["what"] for one in self.items]
        return {**self._asdict(), "entries": kinds.count("entry"), "photos": kinds.count("photo")}


def still_out(
    session: Session, manifests: Iterable[Manifest], job: str | None = None, shown: Shown = lambda job, photo: True
) -> dict[str, Unsent]:
    """``{kid: what has not arrived}``, of one job if told. What is kept apart has arrived. ``shown(job, sha256)``:
    whether it may be told that the job holds the photo; one that may not be told of stays out, or whoever knows a
    photo's hash could ask by it what others brought."""
    told = {one.kid: (one, [item for item in one.items if job in (None, item["job"])]) for one in manifests}
    here = _arrived(session, [item for _, items in told.values() for item in items])
    here = {(what, name, of) for what, name, of in here if what == "entry" or shown(of, name)}
    return {kid: _unsent(one, [item for item in items if _key(item) not in here]) for kid, (one, items) in told.items()}


def still_out_each(session: Session, manifests: Iterable[Manifest]) -> dict[str, dict[str, Unsent]]:
    """``{job: {kid: what of it has not arrived}}`` of the jobs and keys that something is out of, asked all at once."""
    told = list(manifests)
    here = _arrived(session, [item for one in told for item in one.items])
    found = dict[str, dict[str, Unsent]]()
    for one in told:
        out = dict[str, list[dict[str, Any]]]()
        for item in one.items:
            if _key(item) not in here:
                out.setdefault(str(item["job"]), []).append(item)
        for job, items in out.items():
            found.setdefault(job, {})[one.kid] = _unsent(one, items)
    return found


def is_late(unsent: Unsent | None, enrolled_at: str, now: datetime) -> bool:
    """Whether something has been out for ``LATE``: since the server heard of it, or by the phone's clock where that
    tells a time between its key's enrolment and now."""
    if unsent is None or unsent.since is None:
        return False
    heard, begun, made = _instant(unsent.since), _instant(enrolled_at), _instant(unsent.oldest or "")
    plausible = made is not None and begun is not None and begun <= made <= now
    return any(one is not None and now - one >= LATE for one in (heard, made if plausible else None))


def _unsent(manifest: Manifest, items: list[dict[str, Any]]) -> Unsent:
    if not items:
        return Unsent(manifest.received_at, None, None, [])
    since = min(str(one.get("since") or manifest.received_at) for one in items)
    made = [(instant, at) for one in items if (instant := _instant(at := str(one.get("at") or "")))]
    oldest = min(made)[1] if len(made) == len(items) else manifest.oldest
    shown = [{member: one[member] for member in ("what", "job", "name", "size", "kind", "at") if one.get(member)}
             for one in items]  # fmt: skip
    return Unsent(manifest.received_at, since, oldest, shown)


def _arrived(session: Session, items: list[dict[str, Any]]) -> set[tuple[str, str, str]]:
    entries = sorted({str(one["name"]) for one in items if one["what"] == "entry"})
    photos = sorted({str(one["name"]) for one in items if one["what"] == "photo"})
    here = {("entry", name, "") for column in (EntryRow.digest, QuarantineRow.digest)
            for name in _held(session, column, entries)}  # fmt: skip
    for row in (PhotoRow, QuarantinePhotoRow):
        for some in _some(photos):
            found = session.execute(select(row.sha256, row.job).where(row.sha256.in_(some)))
            here |= {("photo", sha256, job) for sha256, job in found}
    return here


def _held(session: Session, column: InstrumentedAttribute[str], names: list[str]) -> Iterable[str]:
    for some in _some(names):
        yield from session.scalars(select(column).where(column.in_(some)))


def _some(names: list[str]) -> Iterable[Collection[str]]:
    return (names[at : at + AT_ONCE] for at in range(0, len(names), AT_ONCE))


def _key(item: dict[str, Any]) -> tuple[str, str, str]:
    return str(item["what"]), str(item["name"]), str(item["job"]) if item["what"] == "photo" else ""


def _instant(text: str) -> datetime | None:
    """A time with its offset; None for anything else that a phone may have told."""
    try:
        found = datetime.fromisoformat(text)
    except ValueError:
        return None
    return found if found.tzinfo else None
