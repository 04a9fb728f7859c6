"""What a signature's own container may hold (RFC 5652, 5): every byte of it must be accounted for.

The signature covers its signed attributes, these name the signer's certificate by its hash (RFC 5035), and that
certificate carries its issuer's signature. Left over are version numbers, algorithm names, further certificates and
the time stamp, which a validator reads past: here each must be exactly what the rest makes it.
"""

from asn1crypto import algos, cms
from asn1crypto.core import Null, Void
from cryptography import x509
from cryptography.exceptions import InvalidSignature

from inspect_app.evidence.der import canonical
from inspect_app.evidence.time_stamp import stamp_faults, token_in

NULLS = (b"", Null().dump())


def container_faults(der: bytes) -> tuple[list[str], list[str]]:
    """``(faults, unknown)``, codes each. Any fault: not as it was made. Unknown: a part that is allowed but that
    this version cannot check (``unsigned_attributes``, ``open_chain``, ``revocation_lists``). Those of a time stamp
    within are among them."""
    try:
        return _faults(der, "data", "v1")
    except Exception:  # a parser fed a damaged container fails in its own ways; each of them is an answer
        return ["unreadable_container"], []


def token_faults(token: bytes, signature: bytes) -> tuple[list[str], list[str]]:
    """As ``container_faults`` of a time stamp's token (RFC 3161, 2.4.2) for a signature's value."""
    try:
        faults, unknown = _faults(token, "tst_info", "v3")
        return faults or stamp_faults(token, signature), unknown
    except Exception:  # as above
        return ["time_stamp_unreadable"], []


def _faults(der: bytes, content: str, version: str) -> tuple[list[str], list[str]]:
    if not canonical(der):
        return ["not_canonical"], []
    info = cms.ContentInfo.load(der, strict=True)
    if info["content_type"].native != "signed_data":
        return ["unreadable_container"], []
    signed = info["content"]
    faults: list[str] = []
    unknown: list[str] = []
    infos = signed["signer_infos"]
    if len(infos) != 1:
        return ["not_one_signer"], []
    signer = infos[0]
    if (
        signed["version"].native != version
        or signer["version"].native != "v1"
        or signer["sid"].name != "issuer_and_serial_number"
    ):
        faults.append("version")
    encapsulated = signed["encap_content_info"]
    # A report's signature speaks of bytes outside it, a time stamp's of what it holds.
    held = not isinstance(encapsulated["content"], Void)
    if encapsulated["content_type"].native != content or held == (content == "data"):
        faults.append("content_inside")
    used = signer["digest_algorithm"]
    named = list(signed["digest_algorithms"])
    if len(named) != 1 or named[0].dump() != used.dump() or not _plain(used):
        faults.append("digest_algorithms")
    if not _plain(signer["signature_algorithm"]):
        faults.append("signature_algorithm")
    if not isinstance(signer["unsigned_attrs"], Void):  # `native` would take the whole token apart, for seconds
        token = token_in(signer) if content == "data" else None
        within = ([], ["unsigned_attributes"]) if token is None else token_faults(token, signer["signature"].native)
        faults, unknown = faults + within[0], unknown + within[1]
    if signed["crls"].native:
        unknown.append("revocation_lists")
    chain_faults, chain_unknown = _certificates(signed, signer)
    return faults + chain_faults, unknown + chain_unknown


def _plain(algorithm: algos.AlgorithmIdentifier) -> bool:
    """Whether an algorithm's parameters are absent or null. RSA-PSS has parameters; we never seal with it."""
    return algorithm["parameters"].dump() in NULLS if algorithm["parameters"] is not None else True


def _certificates(signed: cms.SignedData, signer: cms.SignerInfo) -> tuple[list[str], list[str]]:
    every = [choice.chosen for choice in signed["certificates"]]
    if any(choice.name != "certificate" for choice in signed["certificates"]):
        return ["certificates"], []
    sid = signer["sid"].chosen
    own = [one for one in every if one.issuer == sid["issuer"] and one.serial_number == sid["serial_number"].native]
    if len(own) != 1:
        return ["certificates"], []
    if own[0].issuer.dump() != sid["issuer"].dump():
        return ["certificates"], []
    at = x509.load_der_x509_certificate(own[0].dump())
    left = [x509.load_der_x509_certificate(one.dump()) for one in every if one is not own[0]]
    while not issued_by(at, at):
        issuer = next((one for one in left if issued_by(at, one)), None)
        if issuer is None:
            # Whether the certificate was changed shows from its hash in the signed attributes; whoever issued
            # it is not here. Further certificates that hang on nothing are another matter.
            rootlike = at.issuer == at.subject  # it says that it signed itself, and did not
            return (["certificates"], []) if left or rootlike else ([], ["open_chain"])
        left.remove(issuer)
        at = issuer
    return (["certificates"], []) if left else ([], [])


def issued_by(certificate: x509.Certificate, issuer: x509.Certificate) -> bool:
    """Whether the issuer's key signed the certificate, and its name is the one that the certificate gives."""
    try:
        certificate.verify_directly_issued_by(issuer)
    except (ValueError, TypeError, InvalidSignature):
        return False
    return True
