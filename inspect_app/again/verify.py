"""Every fact about a report that is found by making it again.

``contents_follow`` and ``inputs_follow`` always; ``pages_follow`` and ``pictures_follow`` where somebody asked for
them, since drawing every page and decoding every photo takes as long as making the report did.
"""

import io
from collections.abc import Collection, Mapping
from typing import NamedTuple

from pyhanko.pdf_utils.reader import PdfFileReader

from inspect_app.again.checklists import checklists
from inspect_app.again.contents import contents_fact
from inspect_app.again.copies import copies_in
from inspect_app.again.inputs import inputs_fact
from inspect_app.again.pages import Draw, pages_fact
from inspect_app.again.pictures import Original, Read, Shrink, pictures_fact
from inspect_app.evidence.fact import Fact
from inspect_app.evidence.verify import Looked


class Means(NamedTuple):
    """What pages and copies are made with: ``draw`` (``write_pages``), ``read`` (what a picture says of itself) and
    ``shrink`` (its small copies)."""

    draw: Draw
    read: Read
    shrink: Shrink


def facts_again(
    data: bytes, looked: Looked, ours: Mapping[str, str], beside: Collection[bytes] = (),
    means: Means | None = None, original: Original | None = None,
) -> list[Fact]:  # fmt: skip
    """``ours``: this release (``report.release``); ``beside``: compiled checklists of the report's package, and from
    it too ``original(sha256)``; ``means``: None unless pages are to be drawn again. Never raises for anything in the
    data."""
    here = checklists(looked.files, beside)
    found = [contents_fact(looked, ours, here), inputs_fact(looked, here)]
    if means is not None:
        found.append(pages_fact(data, looked, ours, means.draw))
        found.append(pictures_fact(looked, _copies(data), original, means.read, means.shrink))
    return found


def _copies(data: bytes) -> dict[str, bytes]:
    try:
        return copies_in(PdfFileReader(io.BytesIO(data)))
    except Exception:  # a file that no reader takes has none
        return {}
