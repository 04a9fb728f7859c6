"""What a report is made again with, in the process that looks at it: this release's words and fonts, and what lies
beside it in a package."""

from collections.abc import Mapping, Sequence
from functools import cache
from typing import NamedTuple

from inspect_app.again.verify import Means, facts_again
from inspect_app.commands.opened import Opened, Place
from inspect_app.evidence.fact import Fact
from inspect_app.evidence.package.names import DEFINITION, LARGEST_TEXT, PHOTO
from inspect_app.evidence.verify import Looked, Verification, look
from inspect_app.report.release import release
from inspect_app.settings import shipped

LARGEST_PHOTO = 1024**3


class Beside(NamedTuple):
    """``checklists`` of a package, and its ``photos`` by SHA-256, None for a report alone; ``redraw``: whether pages
    and copies are made again."""

    redraw: bool = False
    checklists: Sequence[Place] = ()
    photos: Mapping[str, Place] | None = None

    def original(self, sha256: str) -> bytes | None:
        """A photo's own bytes; None where they cannot be read."""
        return _read((self.photos or {}).get(sha256), LARGEST_PHOTO)


ALONE = Beside()


def beside_in(opened: Opened, redraw: bool) -> Beside:
    """What a package's reports are made again with."""
    every = opened.places.items()
    photos = {match[1]: place for name, place in every if (match := PHOTO.fullmatch(name))} if redraw else {}
    return Beside(redraw, [place for name, place in every if DEFINITION.fullmatch(name)], photos)


def verify_again(
    data: bytes, trust: Sequence[str] = (), contents: bytes | None = None, beside: Beside = ALONE
) -> Verification:
    """As ``evidence.verify.verify``, with the facts of ``again``."""
    looked = look(data, trust, contents)
    return looked.verification.further(again(data, looked, beside))


def again(data: bytes, looked: Looked, beside: Beside) -> list[Fact]:
    """The facts of ``again`` of one report."""
    checklists = [one for place in beside.checklists if (one := _read(place, LARGEST_TEXT)) is not None]
    means = _means() if beside.redraw else None
    ours = release(shipped("static") / "words", shipped("static") / "vendor")
    return facts_again(data, looked, ours, checklists, means, None if beside.photos is None else beside.original)


@cache
def _means() -> Means:
    # Only where pages are drawn: what draws them takes longer to load than most reports take to verify.
    from inspect_app.commands.redrawn import means

    return means()


def _read(place: Place | None, most: int) -> bytes | None:
    try:
        return None if place is None else place.read(most)
    except OSError:
        return None
