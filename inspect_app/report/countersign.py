"""Countersign a sealed report: one more signature, by a second person's own key, that leaves the first intact.

The report is looked at before, since nobody should put their name under one that was changed, and again afterwards:
what comes out verifies, or nothing comes out.
"""

import io
import json
import mmap
from collections.abc import Sequence
from datetime import datetime
from pathlib import Path
from typing import Any, NamedTuple

from pyhanko.pdf_utils.reader import PdfFileReader
from pyhanko.sign.fields import enumerate_sig_fields

from inspect_app.clock import spell
from inspect_app.evidence.enclosure import CONTENTS, enclosed
from inspect_app.evidence.signature import Signature, examine
from inspect_app.report.authority import Authority
from inspect_app.report.pages.text import plain
from inspect_app.report.pages.voice import Texts, Voice
from inspect_app.report.seal import SPARE, countersign
from inspect_app.report.seal_box import Stamping, box_of
from inspect_app.report.seal_key import SealKey

LONGEST = 300  # characters of a countersigner's own words


class CannotCountersign(Exception):
    """``code``: ``not_a_report`` (no sealed report of ours), ``not_intact`` (changed since it was sealed), ``no_room``
    (every box is used), ``same_key`` (this certificate has signed it already), ``unfit`` (what the certificate signs
    does not verify: it has expired, or is not for signatures), ``takes_long`` (looking at it came to no end in time);
    ``value``: what it is about."""

    def __init__(self, code: str, value: str = "") -> None:
        super().__init__(code, value)
        self.code, self.value = code, value


class Looked(NamedTuple):
    """A sealed report before it is countersigned: its ``signatures``, the seal first; where each ends (``ends``, in
    bytes from the start); the free ``boxes``, name and corners; the language and units of its pages."""

    signatures: list[Signature]
    ends: list[int]
    boxes: list[tuple[str, list[float]]]
    language: str
    units: str


class Hand(NamedTuple):
    """Who countersigns: their key, the time (with a zone), their ``words`` or None."""

    key: SealKey
    when: datetime
    words: str | None = None


class Means(NamedTuple):
    """What a countersignature is made with, beside the key."""

    texts: Texts
    fonts: Path
    authority: Authority | None = None


def look(path: Path) -> Looked:
    """Raises ``CannotCountersign`` (``not_a_report``, ``not_intact``) and ``OSError``."""
    with open(path, "rb") as file:
        try:
            held = mmap.mmap(file.fileno(), 0, access=mmap.ACCESS_READ)  # reports can be large
        except ValueError:  # nothing in it
            raise CannotCountersign("not_a_report", path.name) from None
        with held as data:
            try:
                return _looked(file, data)
            except Exception as reason:  # a file of any other kind breaks the reader anywhere
                raise CannotCountersign("not_a_report", path.name) from reason


def sound(looked: Looked, name: str) -> None:
    """Raises ``CannotCountersign`` unless every signature holds and the last covers the file."""
    if not looked.signatures or not looked.signatures[0].certifies:
        raise CannotCountersign("not_a_report", name)
    whole = all(one.intact and one.allowed and one.container is not False for one in looked.signatures)
    if not whole or not looked.signatures[-1].whole_file:
        raise CannotCountersign("not_intact", name)


def countersign_file(source: Path, target: Path, hand: Hand, means: Means) -> Stamping:
    """Write ``source`` with one more signature to ``target``, which must not exist. Raises ``CannotCountersign`` and
    ``OSError``; then there is no ``target``."""
    looked = look(source)
    sound(looked, source.name)
    if hand.key.fingerprint in [one.fingerprint for one in looked.signatures]:
        raise CannotCountersign("same_key", hand.key.name)
    if not looked.boxes:
        raise CannotCountersign("no_room", str(len(looked.signatures) - 1))
    box, corners = looked.boxes[0]
    voice = Voice(means.texts, looked.language, looked.units)
    headline = voice.say("seal_countersigned_by") if hand.words is None else plain(hand.words, 90)
    paint = box_of(means.fonts, voice, hand.key, spell(hand.when), headline)
    with open(target, "xb+") as out:
        try:
            with open(source, "rb") as sealed:
                told = countersign(sealed, out, hand.key, hand.when, box, corners, paint, means.authority, hand.words)
            out.flush()
            last = look(target)
            try:
                sound(last, target.name)
            except CannotCountersign:
                raise CannotCountersign("unfit", hand.key.name) from None
        except BaseException:
            target.unlink(missing_ok=True)
            raise
    return told


def _looked(file: io.BufferedReader, data: Any) -> Looked:
    reader = PdfFileReader(file)
    embedded = list(reader.embedded_signatures)
    contents = json.loads((enclosed(reader) or {})[CONTENTS])
    return Looked(
        [examine(one, data) for one in embedded],
        [int(one.byte_range[2]) + int(one.byte_range[3]) for one in embedded],
        _free(reader),
        str(contents.get("language")),
        str(contents.get("units")),
    )


def _free(reader: PdfFileReader) -> list[tuple[str, list[float]]]:
    every: Sequence[Any] = list(enumerate_sig_fields(reader, filled_status=False))
    return [(str(name), [float(one) for one in place.get_object()["/Rect"]]) for name, _, place in every
            if str(name).startswith(SPARE)]  # fmt: skip
