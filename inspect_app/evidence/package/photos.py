"""The photos of a package: whether each is the one it is named after, and whether any is wanting.

Facts: ``photos_match`` (every photo has the SHA-256 and the ending of its name, and the server's receipt) and
``photos_complete`` (every photo that an entry or a receipt names is here). A photo that an entry names and that never
arrived at the server has no receipt: it may still be on a phone, so nothing is shown by it. One with a receipt was
there, and is gone.
"""

from collections.abc import Mapping, Set
from typing import Any

from inspect_app.entry.picture_type import ending_of
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN, Fact
from inspect_app.evidence.package.names import PHOTO

MATCH, COMPLETE = "photos_match", "photos_complete"
SHOWN = 20


def photo_facts(
    digests: Mapping[str, str], sizes: Mapping[str, int], named: Set[str], received: Mapping[str, int],
    firsts: Mapping[str, bytes] = {},
) -> list[Fact]:  # fmt: skip
    """Both facts. ``digests`` and ``sizes``: of the package's files, the SHA-256 found; ``named``: the photos that
    entries name; ``received``: ``{SHA-256: size}`` of those that have a receipt of the server;
    ``firsts``: the first bytes of each, which say what its ending has to be: a program opens it by that."""
    here = {name: match[1] for name in digests if (match := PHOTO.fullmatch(name))}
    other = sorted(name for name, named in here.items() if digests[name] != named)
    stray = sorted(name for name, named in here.items() if named not in received)
    grown = sorted(name for name, named in here.items() if received.get(named, sizes[name]) != sizes[name])
    about: dict[str, Any] = {"count": len(here)}
    if other or grown:
        matching = _failing(MATCH, "other_bytes", sorted({*other, *grown}), about)
    elif stray:
        matching = _failing(MATCH, "not_received", stray, about)
    elif misnamed := sorted(name for name in here.keys() & firsts.keys() if not name.endswith(ending_of(firsts[name]))):
        matching = _failing(MATCH, "other_ending", misnamed, about)
    else:
        matching = Fact(MATCH, HOLDS, None, about)
    wanting = missing(digests, named, received)
    lost, never = [one for one in wanting if one in received], [one for one in wanting if one not in received]
    about = {"count": len(named | received.keys()), "lost": len(lost), "never": len(never)}
    if lost:
        return [matching, _failing(COMPLETE, "photo_lost", lost, about)]
    if never:
        return [matching, Fact(COMPLETE, UNKNOWN, "never_arrived", about | {"file": never[0], "files": never[:SHOWN]})]
    return [matching, Fact(COMPLETE, HOLDS, None, about)]


def missing(digests: Mapping[str, str], named: Set[str], received: Mapping[str, int]) -> list[str]:
    """SHA-256 of the photos that an entry or a receipt names and that are not here, or not whole; in order."""
    sound = {match[1] for name in digests if (match := PHOTO.fullmatch(name)) and digests[name] == match[1]}
    return sorted((named | received.keys()) - sound)


def _failing(name: str, reason: str, files: list[str], about: dict[str, Any]) -> Fact:
    return Fact(name, FAILS, reason, about | {"faults": len(files), "file": files[0], "files": files[:SHOWN]})
