"""The time stamp of a signature: a token of somebody else's that says when the signature was there (RFC 3161).

Whoever signs writes any time they like; an authority's token holds the hash of the signature's own value and the
authority's time. It stands among the attributes that the signature does not cover (RFC 3161, appendix A), so each of
its bytes is accounted for here as those of the container are. Whether the authority is to be believed is another
question, asked by its certificate's fingerprint.
"""

import hashlib
from typing import Any, NamedTuple

from asn1crypto import cms, tsp, x509
from asn1crypto.core import Void
from pyhanko.sign.validation.generic_cms import validate_sig_integrity

HASHES = ("sha256", "sha384", "sha512")


class Stamp(NamedTuple):
    """``time`` as the authority says, ISO 8601 in UTC; ``name`` and ``fingerprint`` (SHA-256, hexadecimal) of its
    certificate; ``imprint``: what was stamped, as the name of a hash and its value."""

    time: str
    name: str
    fingerprint: str
    imprint: tuple[str, bytes]

    def plain(self) -> dict[str, str]:
        """For JSON."""
        return {"time": self.time, "name": self.name, "fingerprint": self.fingerprint}


def token_in(signer: cms.SignerInfo) -> bytes | None:
    """The token among a signer's unsigned attributes, as DER; None where there is none, or anything beside it."""
    attributes = [] if isinstance(signer["unsigned_attrs"], Void) else list(signer["unsigned_attrs"])
    if len(attributes) != 1 or attributes[0]["type"].native != "signature_time_stamp_token":
        return None
    values = list(attributes[0]["values"])
    return bytes(values[0].dump()) if len(values) == 1 else None


def read_stamp(token: bytes) -> Stamp:
    """What a token says, believed as it stands. A damaged one raises whatever the parser does."""
    signed = cms.ContentInfo.load(token, strict=True)["content"]
    told = tsp.TSTInfo.load(bytes(signed["encap_content_info"]["content"]), strict=True)
    own = _own(signed)
    named = own.subject.native.get("common_name")
    imprint = told["message_imprint"]
    return Stamp(
        told["gen_time"].native.isoformat(),
        str(named or own.subject.human_friendly),
        hashlib.sha256(own.dump()).hexdigest(),
        (imprint["hash_algorithm"]["algorithm"].native, imprint["hashed_message"].native),
    )


def stamp_faults(token: bytes, signature: bytes) -> list[str]:
    """Codes of what is wrong with a token as the stamp of a signature's value: ``time_stamp_other`` (it stamps
    something else), ``time_stamp_signature``, ``time_stamp_not_authority`` (its certificate is not for time stamps
    alone, RFC 3161, 2.3). A damaged token raises whatever the parser does."""
    signed = cms.ContentInfo.load(token, strict=True)["content"]
    signer, own = signed["signer_infos"][0], _own(signed)
    name, value = read_stamp(token).imprint
    faults = []
    if name not in HASHES or hashlib.new(name, signature).digest() != value:
        faults.append("time_stamp_other")
    if not _signed(signed, signer, own):
        faults.append("time_stamp_signature")
    usage = own.extended_key_usage_value
    if usage is None or usage.native != ["time_stamping"] or not _critical(own):
        faults.append("time_stamp_not_authority")
    return faults


def authority_in(token: bytes) -> x509.Certificate:
    """The certificate of whoever signed a token. A damaged one raises whatever the parser does."""
    return _own(cms.ContentInfo.load(token, strict=True)["content"])


def _own(signed: cms.SignedData) -> x509.Certificate:
    sid = signed["signer_infos"][0]["sid"].chosen
    every = [choice.chosen for choice in signed["certificates"]]
    return next(one for one in every
                if one.issuer == sid["issuer"] and one.serial_number == sid["serial_number"].native)  # fmt: skip


def _signed(signed: cms.SignedData, signer: cms.SignerInfo, own: x509.Certificate) -> bool:
    digest = hashlib.new(signer["digest_algorithm"]["algorithm"].native, bytes(signed["encap_content_info"]["content"]))
    try:
        intact, valid = validate_sig_integrity(signer, own, "tst_info", digest.digest())
        return bool(intact and valid and _names(signer, own))
    except Exception:  # an attribute missing, doubled or of another kind: each is an answer
        return False


def _names(signer: cms.SignerInfo, own: x509.Certificate) -> bool:
    """Whether the signed attributes name this certificate by its hash (RFC 5035; RFC 2634 for the older form)."""
    for attribute in signer["signed_attrs"]:
        kind = attribute["type"].native
        if kind not in ("signing_certificate", "signing_certificate_v2"):
            continue
        first: Any = attribute["values"][0]["certs"][0]
        used = "sha1" if kind == "signing_certificate" else first["hash_algorithm"]["algorithm"].native
        return bool(hashlib.new(used, own.dump()).digest() == first["cert_hash"].native)
    return False


def _critical(own: x509.Certificate) -> bool:
    return any(one["extn_id"].native == "extended_key_usage" and one["critical"].native
               for one in own["tbs_certificate"]["extensions"])  # fmt: skip
