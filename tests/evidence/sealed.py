"""Sealed files for the tests: a one-page report with its enclosures, and what a countersigner makes of it. Keys
are made anew."""

import hashlib
import io
from collections.abc import Sequence
from datetime import UTC, datetime
from functools import cache
from pathlib import Path

from cryptography.hazmat.primitives.asymmetric import ec
from reportlab.pdfgen.canvas import Canvas

from inspect_app.evidence.enclosure import Enclosure, enclosures
from inspect_app.report.authority import Authority
from inspect_app.report.pages.look import PLAIN, load_fonts
from inspect_app.report.seal import countersign, seal
from inspect_app.report.seal_box import Paint, paint_seal
from inspect_app.report.seal_key import SealKey, certificate_for
from tests.evidence.record import Made, contents_of, made

FONTS = Path(__file__).parents[2] / "static" / "vendor"
WHEN = datetime(2026, 11, 25, 23, 6, tzinfo=UTC)
RECORD = made()
DIGEST = hashlib.sha256(contents_of(RECORD)).hexdigest()
BOXES = {"Seal": [54, 200, 298, 278], "Countersignature": [314, 200, 558, 278],
         "Countersignature2": [54, 100, 298, 178], "Countersignature3": [314, 100, 558, 178]}  # fmt: skip
PLACE = {"page": 1, "boxes": BOXES}
STAMPINGS = {"stamped": "Time stamp: {name}", "silent": "Without time stamp", "none": "Without time stamp"}


@cache
def key(name: str) -> SealKey:
    from cryptography.hazmat.primitives import serialization as form

    private = ec.generate_private_key(ec.SECP256R1())
    der = private.private_bytes(form.Encoding.DER, form.PrivateFormat.PKCS8, form.NoEncryption())
    return SealKey(der, certificate_for(private, name, WHEN).public_bytes(form.Encoding.DER), ())


def unsealed(digest: str = DIGEST) -> bytes:
    load_fonts(FONTS)
    out = io.BytesIO()
    canvas = Canvas(out, pagesize=(612, 792), initialFontName=PLAIN, invariant=1)
    canvas.setSubject(f"seamwalk contents sha256 {digest}")
    canvas.setFont(PLAIN, 12)
    canvas.drawString(72, 700, "One page (invented)")
    canvas.showPage()
    canvas.save()
    return out.getvalue()


def inside(record: Made = RECORD) -> list[Enclosure]:
    return enclosures(contents_of(record), record.signed)


def painted(by: SealKey) -> Paint:
    return paint_seal(FONTS, by.name, "Sealed by", "now", "print", by.fingerprint, STAMPINGS)


def sealed_with(
    by: SealKey, enclosed: Sequence[Enclosure] | None = None, digest: str = DIGEST, authority: Authority | None = None
) -> bytes:
    out, held = io.BytesIO(), inside() if enclosed is None else enclosed
    seal(io.BytesIO(unsealed(digest)), out, by, WHEN, PLACE, painted(by), held, authority)
    return out.getvalue()


@cache
def sealed() -> bytes:
    return sealed_with(key("Issuer (invented)"))


def signed_again(data: bytes, by: SealKey, box: str, authority: Authority | None = None) -> bytes:
    """With one more signature, in the free box."""
    out = io.BytesIO()
    countersign(io.BytesIO(data), out, by, WHEN, box, BOXES[box], painted(by), authority)
    return out.getvalue()


@cache
def countersigned() -> bytes:
    return signed_again(sealed(), key("Countersigner (invented)"), "Countersignature")
