"""What became of each thing in a saved copy, and of the list that names them all."""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import Any, NamedTuple

from inspect_app.entry.refusal import Refused
from inspect_app.intake.copy_list import CopyList, Listed
from inspect_app.intake.copy_tar import Damage

TAKEN = ("accepted", "duplicate", "quarantined")
STATUSES = (*TAKEN, "refused", "damaged", "absent")


class Came(NamedTuple):
    """One entry (``name`` its digest) or photo (its SHA-256). ``status``: ``accepted``, ``duplicate`` (the server had
    it), ``quarantined`` (a revoked key's: kept apart for a decision), ``refused``, ``damaged`` (its bytes are not what
    its name says), ``absent`` (listed, and not in the file); the last four with why. ``listed``: what the list says of
    it, where it does."""

    what: str
    name: str
    job: str
    status: str
    why: Refused | None = None
    listed: Listed | None = None


class Seal(NamedTuple):
    """``state``: ``good``; ``key_revoked``: good, by a key that was ended; ``other_list``, ``unknown_key``,
    ``unreadable``, ``bad_signature``. ``person``: whose key it is, where that is known."""

    kid: str
    person: str
    state: str


@dataclass
class Brought:
    """A copy, or a part of one, brought in. ``listing`` is None where no list was found or it could not be read."""

    listing: CopyList | None = None
    seals: list[Seal] = field(default_factory=list)
    came: list[Came] = field(default_factory=list)
    damage: list[Damage] = field(default_factory=list)

    @property
    def sealed(self) -> bool:
        """Whether a key of this server vouches for the list, and so for everything in it."""
        return any(seal.state in ("good", "key_revoked") for seal in self.seals)

    @property
    def whole(self) -> bool:
        """Whether nothing at all is wrong with the file: its list is sealed, and all of it came as it was made."""
        sound = all(one.status in TAKEN and one.listed for one in self.came)
        return self.listing is not None and self.sealed and not self.damage and sound

    def counted(self) -> Counter[str]:
        return Counter(one.status for one in self.came)


def accounted(listing: CopyList | None, came: Iterable[Came]) -> list[Came]:
    """Each thing once: as it came, beside what the list says of it, and then what is listed and did not come."""
    wanted = {_key(one): one for one in listing.items} if listing else {}
    told = []
    for one in came:
        known = wanted.pop(_key(one), None)
        told.append(one._replace(listed=known, job=one.job or (known.job if known else "")))
    missing = (
        Came(one.what, one.name, one.job, "absent", Refused(f"copy_{one.damage or 'absent'}", one.what, one.name), one)
        for one in wanted.values()
    )
    return [*told, *missing]


def _key(one: Came | Listed) -> tuple[str, str, str]:
    return one.what, one.name, one.job if one.what == "photo" else ""  # what an entry says its job is, it signs


def plain(brought: Brought) -> dict[str, Any]:
    """All of it as JSON can hold it; ``whole`` and ``absent`` are of this file or part alone."""
    listing = brought.listing
    return {
        "copy": listing.copy if listing else None, "at": listing.at if listing else None,
        "sealed": brought.sealed, "whole": brought.whole,
        "seals": [seal._asdict() for seal in brought.seals],
        "damage": [one._asdict() for one in brought.damage],
    }  # fmt: skip
