"""Seal a report: a certifying PAdES-B-B signature (ETSI EN 319 142-1) over the whole file, or B-T with a time stamp.

Every signature field exists before the first signature, which certifies the document and from then on allows
nothing but filling those fields: a countersignature adds to the file and breaks nothing; anything else does.
"""

from collections.abc import Sequence
from datetime import datetime
from typing import Any, BinaryIO

from asn1crypto import keys, x509
from pyhanko.pdf_utils import embed
from pyhanko.pdf_utils.incremental_writer import IncrementalPdfFileWriter
from pyhanko.sign import fields, signers
from pyhanko.sign.fields import MDPPerm, SigFieldSpec, SigSeedSubFilter
from pyhanko.sign.signers.pdf_byterange import BuildProps
from pyhanko.stamp.static import StaticStampStyle
from pyhanko_certvalidator.registry import SimpleCertificateStore

from inspect_app.apart import apart
from inspect_app.evidence.enclosure import Enclosure
from inspect_app.evidence.signature import STAMPED
from inspect_app.report.authority import Authority, AuthoritySilent, Stamper
from inspect_app.report.seal_box import Paint, Stamping, styled
from inspect_app.report.seal_key import SealKey

SEAL, SPARE = "Seal", "Countersignature"
PROGRAM, UNSTAMPED = "Seamwalk", "not-time-stamped"


class _Dated(signers.PdfSigner):
    """A signer whose time is given, not taken from the machine's clock."""

    when: datetime

    def init_signing_session(self, pdf_out: Any, existing_fields_only: bool = False) -> Any:
        session = super().init_signing_session(pdf_out, existing_fields_only)
        session.system_time = self.when
        return session


def seal(
    unsealed: BinaryIO, sealed: BinaryIO, key: SealKey, when: datetime, place: dict[str, Any], paint: Paint,
    inside: Sequence[Enclosure] = (), authority: Authority | None = None,
) -> Stamping:  # fmt: skip
    """Copy ``unsealed`` to ``sealed`` (open for reading and writing), with the files ``inside``, and sign it.

    ``place``: ``{"page": from 1, "boxes": {"Seal": [x0, y0, x1, y1], "Countersignature": [...], …}}`` in points.
    ``paint(canvas, width, height, stamping)`` draws what is seen in the seal's box. ``when`` needs a zone. An
    ``authority`` that gives no time stamp keeps nothing back: the report is sealed without, and says so.
    """

    def once(stamper: Stamper | None, stamping: Stamping) -> None:
        writer = IncrementalPdfFileWriter(unsealed)
        for name, corners in place["boxes"].items():
            spec = SigFieldSpec(name, on_page=place["page"] - 1, box=tuple(corners))
            fields.append_signature_field(writer, spec)
        for enclosure in inside:
            _embed(writer, enclosure)
        with styled(place["boxes"][SEAL], paint, stamping) as style:
            _sign(writer, sealed, key, SEAL, when, style, certify=True, stamper=stamper)

    return stamped_or_not(sealed, authority, once)


def countersign(
    sealed: BinaryIO, out: BinaryIO, key: SealKey, when: datetime, box: str, corners: Sequence[float], paint: Paint,
    authority: Authority | None = None, reason: str | None = None,
) -> Stamping:  # fmt: skip
    """Fill the free field ``box``, whose ``corners`` are given, of a sealed report; ``reason``: the countersigner's
    words. Every byte of ``sealed`` stays as it was, at the start of ``out``."""

    def once(stamper: Stamper | None, stamping: Stamping) -> None:
        with styled(corners, paint, stamping) as style:
            writer = IncrementalPdfFileWriter(sealed)
            _sign(writer, out, key, box, when, style, certify=False, stamper=stamper, reason=reason)

    return stamped_or_not(out, authority, once)


def stamped_or_not(out: BinaryIO, authority: Authority | None, once: Any) -> Stamping:
    """Call ``once(stamper, stamping)``; where the authority gives no stamp, again without one."""
    stamping = Stamping("silent" if authority else "none")
    if authority is not None:
        stamper = authority.stamper()
        try:
            stamped = Stamping("stamped", stamper.trial().name)
            once(stamper, stamped)
            return stamped
        except AuthoritySilent:
            out.seek(0)
            out.truncate()
    once(None, stamping)
    return stamping


def _sign(writer: Any, out: BinaryIO, key: SealKey, field: str, when: datetime, style: Any, certify: bool,
          stamper: Stamper | None = None, reason: str | None = None) -> None:  # fmt: skip
    registry = SimpleCertificateStore()  # type: ignore[no-untyped-call]
    registry.register_multiple(x509.Certificate.load(other) for other in key.chain)
    signer = signers.SimpleSigner(
        signing_cert=x509.Certificate.load(key.certificate), signing_key=keys.PrivateKeyInfo.load(key.key),
        cert_registry=registry,
    )  # fmt: skip
    meta = signers.PdfSignatureMetadata(
        field_name=field, md_algorithm="sha256", subfilter=SigSeedSubFilter.PADES, certify=certify,
        docmdp_permissions=MDPPerm.FILL_FORMS, name=key.name, reason=reason,
        # Under the signature, so that a time stamp, which stands outside it, is missed when it is taken away.
        app_build_props=BuildProps(PROGRAM, STAMPED if stamper else UNSTAMPED),
    )  # fmt: skip
    dated = _Dated(meta, signer, timestamper=stamper, stamp_style=style or StaticStampStyle(border_width=0))
    dated.when = when
    apart(lambda: dated.sign_pdf(writer, output=out, existing_fields_only=True))


def _embed(writer: Any, enclosure: Enclosure) -> None:
    data = embed.EmbeddedFileObject.from_file_data(
        writer, enclosure.data, params=embed.EmbeddedFileParams(), mime_type=enclosure.type
    )
    embed.embed_file(writer, embed.FileSpec(enclosure.name, enclosure.name, data))
