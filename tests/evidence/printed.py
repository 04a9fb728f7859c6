"""A report with real pages and pictures, sealed as the server seals it; and what a sealer could do to it on the way."""

import hashlib
import io
import json
import tempfile
from collections.abc import Callable
from copy import deepcopy
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

from pyhanko.pdf_utils.incremental_writer import IncrementalPdfFileWriter
from pyhanko.sign.fields import SigFieldSpec, append_signature_field

from inspect_app.again.verify import Means, facts_again
from inspect_app.evidence.enclosure import enclosures
from inspect_app.evidence.fact import HOLDS, Fact
from inspect_app.evidence.verify import look
from inspect_app.intake.pictures import facts, shrink
from inspect_app.report import seal
from inspect_app.report.basis import seen
from inspect_app.report.contents import contents_bytes, contents_digest
from inspect_app.report.pages import write_pages
from inspect_app.report.seal_box import Stamping, styled
from tests.evidence.packed import DEFINITION, NAMED, RELEASE, said, walked
from tests.evidence.record import Made
from tests.evidence.sealed import WHEN, key, painted
from tests.report.laid_out import FONTS, WORDS
from tests.report.sample_pictures import picture

ISSUER = key("Issuer (invented)")
PICTURES = (picture("one"), picture("two"))
ORIGINALS = {hashlib.sha256(one).hexdigest(): one for one in PICTURES}
Contents = dict[str, Any]
Drawn = tuple[bytes, dict[str, Any]]  # as ``write_pages`` writes and tells them
Change = Callable[[Contents], object]
Paint = Callable[[IncrementalPdfFileWriter], object]


class Printed(NamedTuple):
    """``of`` the record, the honest ``contents``, and the ``copies`` that are printed, by the photo's SHA-256."""

    of: Made
    contents: Contents
    copies: dict[str, bytes]


@cache
def honest() -> Printed:
    of = walked(PICTURES).site.made(PICTURES)
    copies = {sha256: copy_of(data) for sha256, data in ORIGINALS.items()}
    return Printed(of, with_copies(of, copies), copies)


def with_copies(of: Made, copies: dict[str, bytes], gone: dict[str, Any] | None = None) -> Contents:
    """What a report says that prints these; ``gone``: of each photo that has none."""
    held = {sha256: {"held": True, "copy": hashlib.sha256(copies[sha256]).hexdigest()} | seen(facts(data))
            if sha256 in copies else gone for sha256, data in ORIGINALS.items()}  # fmt: skip
    told: Contents = json.loads(contents_bytes(said(of, 1, None, ISSUER, held)))
    return told


def copy_of(data: bytes) -> bytes:
    made = shrink(data, (1600,))
    assert isinstance(made, dict)
    return made[1600]


def changed(change: Change) -> Contents:
    contents = deepcopy(honest().contents)
    change(contents)
    return contents


def draw(contents: Contents, copies: dict[str, bytes]) -> Drawn:
    with tempfile.TemporaryDirectory() as folder:
        kept = {sha256: Path(folder) / sha256 for sha256 in copies}
        for sha256, file in kept.items():
            file.write_bytes(copies[sha256])
        out = io.BytesIO()
        laid = drawn_once(contents, kept.get, out)
    return out.getvalue(), laid


_drawn: dict[Any, Drawn] = {}


def drawn_once(contents: Contents, find: Callable[[str], Path | None], out: Any, anew: bool = False) -> dict[str, Any]:
    """As ``write_pages``, which draws the same again only where it is asked for ``anew``: it takes a while."""
    paths = [find(sha256) for sha256 in ORIGINALS]
    told = (contents_digest(contents), *(path and path.read_bytes() for path in paths))
    if anew or told not in _drawn:
        fresh = io.BytesIO()
        laid = write_pages(contents, WORDS, FONTS, find, fresh)
        _drawn.setdefault(told, (fresh.getvalue(), laid))
        out.write(fresh.getvalue())
        return laid
    out.write(_drawn[told][0])
    return _drawn[told][1]


@cache
def drawn_honestly() -> Drawn:
    return draw(honest().contents, honest().copies)


def sealed_as(enclosed: Contents, drawn: Drawn | None = None, paint: Paint | None = None,
              spell: Callable[[bytes], bytes] = bytes) -> bytes:  # fmt: skip
    """These contents with these pages, which are said to be theirs; ``paint``: what is done to the file in the very
    update that seals it; ``spell``: what is done to the bytes of the contents."""
    told = spell(contents_bytes(enclosed))
    pdf, laid = drawn or drawn_honestly()
    named = pdf.split(b"seamwalk contents sha256 ")[1][:64]
    pdf = pdf.replace(named, hashlib.sha256(told).hexdigest().encode())
    inside = enclosures(told, honest().of.signed, {NAMED: DEFINITION})
    out, place, stamping = io.BytesIO(), laid["seal"], Stamping("none")
    writer = IncrementalPdfFileWriter(io.BytesIO(pdf))
    for name, corners in place["boxes"].items():
        append_signature_field(writer, SigFieldSpec(name, on_page=place["page"] - 1, box=tuple(corners)))
    for one in inside:
        seal._embed(writer, one)
    if paint:
        paint(writer)
    with styled(place["boxes"][seal.SEAL], painted(ISSUER), stamping) as style:
        seal._sign(writer, out, ISSUER, seal.SEAL, WHEN, style, certify=True)
    return out.getvalue()


def found(data: bytes, redraw: bool = True, originals: dict[str, bytes] | None = ORIGINALS,
          release: dict[str, str] = RELEASE, anew: bool = False) -> dict[str, Fact]:  # fmt: skip
    """The facts of making it again, by name."""
    means = Means(lambda told, find, out: drawn_once(told, find, out, anew), facts, shrink)
    looked = look(data)
    assert any(one.name == "contents_match" and one.status == HOLDS for one in looked.verification.facts)
    again = facts_again(data, looked, release, (), means if redraw else None, originals.get if originals else None)
    return {one.name: one for one in again}
