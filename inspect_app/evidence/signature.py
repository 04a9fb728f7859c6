"""One signature of a PDF: what it covers, whether it is whole, and who made it."""

import hashlib
from datetime import datetime
from typing import Any, NamedTuple

from asn1crypto import x509
from pyhanko.sign.validation import validate_pdf_signature
from pyhanko.sign.validation.pdf_embedded import EmbeddedPdfSignature
from pyhanko.sign.validation.status import SignatureCoverageLevel
from pyhanko_certvalidator import ValidationContext

from inspect_app.apart import apart
from inspect_app.evidence.certificate_name import certificate_name
from inspect_app.evidence.container import container_faults
from inspect_app.evidence.hole import hole
from inspect_app.evidence.information import same_information
from inspect_app.evidence.time_stamp import Stamp, authority_in, read_stamp, token_in

STAMPED = "time-stamped"  # in /Prop_Build /App /REx of a signature that was stamped


class Signature(NamedTuple):
    """``field``; ``fingerprint`` (SHA-256 of the certificate, hexadecimal), ``name``, ``time`` as the signer says;
    ``intact``: digest and signature agree; ``allowed``: whatever was added later was only what it allows;
    ``whole_file``: nothing follows it; ``container``: its own bytes are as they were made; each True, False or None
    where it cannot be told. ``stamp``: an authority's word on the time, None without one or where it does not read;
    ``stamp_said``: whether the signed part says that there is one. ``reasons``: codes of what is wrong."""

    field: str
    fingerprint: str | None
    name: str | None
    time: str | None
    certifies: bool
    intact: bool | None
    allowed: bool | None
    whole_file: bool
    container: bool | None
    reasons: tuple[str, ...]
    stamp: Stamp | None = None
    stamp_said: bool = False

    def plain(self) -> dict[str, Any]:
        """For JSON."""
        stamp = self.stamp.plain() if self.stamp else None
        return self._asdict() | {"reasons": list(self.reasons), "stamp": stamp}


def examine(embedded: EmbeddedPdfSignature, data: bytes) -> Signature:
    """Look at one embedded signature. Whatever goes wrong on the way is an answer, never an exception."""
    reasons: list[str] = []
    try:
        ranges = [int(one) for one in embedded.byte_range]
    except Exception:  # a damaged array of anything
        ranges = []
    der, reason = hole(data, ranges)
    unknown: list[str] = []
    if der is None:
        reasons.append(reason or "bad_container")
    else:
        faults, unknown = container_faults(der)
        reasons += faults
        if embedded.pkcs7_content[: len(der)] != der:
            reasons.append("other_container")
    container = False if reasons else None if unknown else True
    whole = len(ranges) == 4 and ranges[0] == 0 and ranges[2] + ranges[3] == len(data)
    intact, allowed, covered, trouble = _validate(embedded)
    whole = whole and covered
    reasons += trouble + unknown
    fingerprint, name, time = _who(embedded)
    certifies = _certifies(embedded)
    stamp = _stamp(embedded)
    return Signature(
        str(embedded.field_name),
        fingerprint,
        name,
        time,
        certifies,
        intact,
        allowed,
        whole,
        container,
        tuple(reasons),
        stamp,
        _stamp_said(embedded),
    )


def _validate(embedded: EmbeddedPdfSignature) -> tuple[bool, bool, bool, list[str]]:
    try:
        # Trust is another question, asked by fingerprint: here each signature is checked against its own
        # certificate, at the time it claims, so that a report stays verifiable after the certificate expires.
        own = embedded.signer_cert
        context = ValidationContext(
            trust_roots=[own], allow_fetching=False, revocation_mode="soft-fail",
            moment=embedded.self_reported_timestamp,
        )  # fmt: skip
        status = apart(lambda: validate_pdf_signature(embedded, context, _authority(embedded)))
        intact = bool(status.intact and status.valid)
        # A file that a strict reader refuses is repaired by each reader in its own way: others may show other pages.
        unchanged = status.docmdp_ok and embedded.reader.strict
        unchanged = bool(unchanged and same_information(embedded.reader, embedded.signed_revision))
        allowed = bool(intact and unchanged and status.bottom_line and _fit(own, embedded.self_reported_timestamp))
        trouble = [] if intact else ["digest_differs" if not status.intact else "signature_invalid"]
        if intact and not allowed:
            trouble.append("not_valid_then" if unchanged else "changed_since")
        return intact, allowed, status.coverage == SignatureCoverageLevel.ENTIRE_FILE, trouble
    except Exception as reason:  # a damaged file breaks the validator anywhere
        return False, False, False, [f"cannot_validate:{type(reason).__name__}"]


def _fit(own: x509.Certificate, when: datetime | None) -> bool:
    """Whether a certificate was good at the time that its owner gives and is for signatures (RFC 5280, 4.1.2.5 and
    4.2.1.3): of one that is its own root no validator asks."""
    usage = own.key_usage_value
    for_signatures = usage is None or bool({"digital_signature", "non_repudiation"} & usage.native)
    return for_signatures and when is not None and own.not_valid_before <= when <= own.not_valid_after


def _authority(embedded: EmbeddedPdfSignature) -> ValidationContext | None:
    """As for the signer: an authority's token is checked against its own certificate, at the time it names."""
    token = token_in(embedded.signer_info)
    if token is None:
        return None
    return ValidationContext(
        trust_roots=[authority_in(token)], allow_fetching=False, revocation_mode="soft-fail",
        moment=datetime.fromisoformat(read_stamp(token).time),
    )  # fmt: skip


def _stamp(embedded: EmbeddedPdfSignature) -> Stamp | None:
    try:
        token = token_in(embedded.signer_info)
        return None if token is None else read_stamp(token)
    except Exception:  # a damaged token: the container is at fault
        return None


def _stamp_said(embedded: EmbeddedPdfSignature) -> bool:
    """Whether the signature's own dictionary, which is covered, says that a time stamp was put beside it."""
    try:
        return str(embedded.sig_object["/Prop_Build"]["/App"]["/REx"]) == STAMPED
    except Exception:  # most signatures say nothing of it
        return False


def _who(embedded: EmbeddedPdfSignature) -> tuple[str | None, str | None, str | None]:
    try:
        certificate = embedded.signer_cert.dump()
        when = embedded.self_reported_timestamp
        name = certificate_name(certificate)
        return hashlib.sha256(certificate).hexdigest(), name, when.isoformat() if when else None
    except Exception:  # names and times of a damaged container
        return None, None, None


def _certifies(embedded: EmbeddedPdfSignature) -> bool:
    try:
        return embedded.docmdp_level is not None
    except Exception:  # as above
        return False
