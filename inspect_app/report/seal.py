"""Seal a report: a certifying PAdES-B-B signature (ETSI EN 319 142-1) over the whole file.

Every signature field exists before the first signature, which certifies the document and from then on allows
nothing but filling those fields: a countersignature adds to the file and breaks nothing; anything else does.
"""

import io
import tempfile
from collections.abc import Callable, Sequence
from datetime import datetime
from pathlib import Path
from typing import Any, BinaryIO

from asn1crypto import keys, x509
from pyhanko.pdf_utils import embed
from pyhanko.pdf_utils.content import ImportedPdfPage
from pyhanko.pdf_utils.incremental_writer import IncrementalPdfFileWriter
from pyhanko.sign import fields, signers
from pyhanko.sign.fields import MDPPerm, SigFieldSpec, SigSeedSubFilter
from pyhanko.stamp.base import BaseStampStyle
from pyhanko.stamp.static import StaticStampStyle
from pyhanko_certvalidator.registry import SimpleCertificateStore
from reportlab.pdfgen.canvas import Canvas

from inspect_app.apart import apart
from inspect_app.evidence.enclosure import Enclosure
from inspect_app.report.pages.look import BOLD, CODE, GREY, INK, PLAIN, load_fonts
from inspect_app.report.seal_key import SealKey

SEAL = "Seal"
Paint = Callable[[Canvas, float, float], None]


class _Dated(signers.PdfSigner):
    """A signer whose time is given, not taken from the machine's clock."""

    when: datetime

    def init_signing_session(self, pdf_out: Any, existing_fields_only: bool = False) -> Any:
        session = super().init_signing_session(pdf_out, existing_fields_only)
        session.system_time = self.when
        return session


def seal(
    unsealed: BinaryIO, sealed: BinaryIO, key: SealKey, when: datetime, place: dict[str, Any], paint: Paint,
    inside: Sequence[Enclosure] = (),
) -> None:  # fmt: skip
    """Copy ``unsealed`` to ``sealed`` (open for reading and writing), with the files ``inside``, and sign it.

    ``place``: ``{"page": from 1, "boxes": {"Seal": [x0, y0, x1, y1], "Countersignature": [...]}}`` in points.
    ``paint(canvas, width, height)`` draws what is seen in the seal's box. ``when`` needs a zone.
    """
    writer = IncrementalPdfFileWriter(unsealed)
    for name, corners in place["boxes"].items():
        box = tuple(corners)
        fields.append_signature_field(writer, SigFieldSpec(name, on_page=place["page"] - 1, box=box))
    for enclosure in inside:
        _embed(writer, enclosure)
    x0, y0, x1, y1 = place["boxes"][SEAL]
    with tempfile.TemporaryDirectory() as folder:
        stamp = Path(folder) / "stamp.pdf"
        stamp.write_bytes(_stamp(x1 - x0, y1 - y0, paint))
        page = ImportedPdfPage(str(stamp))  # type: ignore[no-untyped-call]
        style = StaticStampStyle(border_width=0, background=page)
        _sign(writer, sealed, key, SEAL, when, style, certify=True)


def countersign(sealed: BinaryIO, out: BinaryIO, key: SealKey, when: datetime, name: str = "Countersignature") -> None:
    """Fill a spare field of a sealed report. What is seen is only the box; the signature is in the file."""
    _sign(IncrementalPdfFileWriter(sealed), out, key, name, when, None, certify=False)


def _sign(writer: Any, out: BinaryIO, key: SealKey, field: str, when: datetime, style: BaseStampStyle | None,
          certify: bool) -> None:  # fmt: skip
    registry = SimpleCertificateStore()  # type: ignore[no-untyped-call]
    registry.register_multiple(x509.Certificate.load(other) for other in key.chain)
    signer = signers.SimpleSigner(
        signing_cert=x509.Certificate.load(key.certificate), signing_key=keys.PrivateKeyInfo.load(key.key),
        cert_registry=registry,
    )  # fmt: skip
    permissions = MDPPerm.FILL_FORMS
    meta = signers.PdfSignatureMetadata(
        field_name=field, md_algorithm="sha256", subfilter=SigSeedSubFilter.PADES, certify=certify,
        docmdp_permissions=permissions, name=key.name,
    )  # fmt: skip
    dated = _Dated(meta, signer, stamp_style=style or StaticStampStyle(border_width=0))
    dated.when = when
    apart(lambda: dated.sign_pdf(writer, output=out, existing_fields_only=True))


def _embed(writer: Any, enclosure: Enclosure) -> None:
    data = embed.EmbeddedFileObject.from_file_data(
        writer, enclosure.data, params=embed.EmbeddedFileParams(), mime_type=enclosure.type
    )
    embed.embed_file(writer, embed.FileSpec(enclosure.name, enclosure.name, data))


def paint_seal(fonts: Path, issuer: str, headline: str, when: str, label: str, fingerprint: str) -> Paint:
    """A sober box: who sealed, when, and the certificate's fingerprint to compare."""
    load_fonts(fonts)

    def paint(canvas: Canvas, width: float, height: float) -> None:
        canvas.setFillColor(GREY)
        canvas.setFont(PLAIN, 6.8)
        canvas.drawString(9, height - 15, headline)
        canvas.setFillColor(INK)
        canvas.setFont(BOLD, 9.5)
        shown = issuer
        while shown and canvas.stringWidth(shown, BOLD, 9.5) > width - 18:
            shown = shown[:-2] + "…"
        canvas.drawString(9, height - 29, shown)
        canvas.setFont(PLAIN, 7.6)
        canvas.drawString(9, height - 42, when)
        canvas.setFillColor(GREY)
        canvas.setFont(PLAIN, 5.8)
        canvas.drawString(9, 18, label)
        canvas.setFont(CODE.fontName, 5.6)
        canvas.drawString(9, 9, fingerprint)

    return paint


def _stamp(width: float, height: float, paint: Paint) -> bytes:
    out = io.BytesIO()
    canvas = Canvas(out, pagesize=(width, height), initialFontName=PLAIN, invariant=1)
    paint(canvas, width, height)
    canvas.showPage()
    canvas.save()
    return out.getvalue()
