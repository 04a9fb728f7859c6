"""The key that seals reports: made once in the data folder, or the firm's own from a PKCS#12 file."""

import hashlib
from datetime import datetime, timedelta
from pathlib import Path
from typing import NamedTuple

from asn1crypto import x509 as asn1_x509
from cryptography import x509
from cryptography.hazmat.primitives import hashes, serialization
from cryptography.hazmat.primitives.asymmetric import ec, rsa
from cryptography.hazmat.primitives.serialization import pkcs12
from cryptography.x509.oid import NameOID

from inspect_app.evidence.certificate_name import certificate_name
from inspect_app.evidence.container import issued_by
from inspect_app.store.server_key import kept_secret

YEARS = 25  # a roof outlives its installer's warranty; the certificate should too
NAME_LIMIT = 64  # X.520: upper bound of a common name
RSA_BITS = (2048, 8192)  # NIST SP 800-131A Rev. 2, table 2, has the least; a key of more takes seconds to sign once


class UnreadableKey(Exception):
    """The PKCS#12 file cannot be used: ``path`` (None for bytes that were handed over) and ``reason``
    (``not_found``, ``not_pkcs12``, ``no_key``, ``unusable``: no key that reports are signed with, or a certificate
    whose name cannot be read)."""

    def __init__(self, path: Path | None, reason: str) -> None:
        super().__init__(str(path), reason)
        self.path = path
        self.reason = reason


class SealKey(NamedTuple):
    """A private key with its certificate and the chain above it, as DER."""

    key: bytes
    certificate: bytes
    chain: tuple[bytes, ...]

    @property
    def fingerprint(self) -> str:
        """SHA-256 of the certificate, lower-case hexadecimal: what is printed in reports and given to others."""
        return hashlib.sha256(self.certificate).hexdigest()

    @property
    def until(self) -> str:
        """The last day on which the certificate is good."""
        return x509.load_der_x509_certificate(self.certificate).not_valid_after_utc.date().isoformat()

    @property
    def name(self) -> str:
        """Whom the certificate names."""
        return certificate_name(self.certificate)


def given_key(path: Path, passphrase: str) -> SealKey:
    """The key of a PKCS#12 file. Raises ``UnreadableKey``."""
    try:
        data = path.read_bytes()
    except OSError as reason:
        raise UnreadableKey(path, "not_found") from reason
    return key_in(data, passphrase, path)


def key_in(data: bytes, passphrase: str, path: Path | None = None) -> SealKey:
    """The key of a PKCS#12 file's bytes. Raises ``UnreadableKey``."""
    try:
        key, certificate, others = pkcs12.load_key_and_certificates(data, passphrase.encode() or None)
    except Exception as reason:  # a wrong passphrase looks the same as a damaged file, and each is damaged in its way
        raise UnreadableKey(path, "not_pkcs12") from reason
    if key is None or certificate is None:
        raise UnreadableKey(path, "no_key")
    if not _usable(key, certificate):
        raise UnreadableKey(path, "unusable")
    return SealKey(_key_der(key), _der(certificate), tuple(_der(other) for other in _above(certificate, others)))


def _usable(key: object, certificate: x509.Certificate) -> bool:
    """Whether what this key signs is read by those who verify: ECDSA or RSA, under a name that says who."""
    sized = isinstance(key, rsa.RSAPrivateKey) and RSA_BITS[0] <= key.key_size <= RSA_BITS[1]
    if not sized and not isinstance(key, ec.EllipticCurvePrivateKey):
        return False
    try:
        read = asn1_x509.Certificate.load(_der(certificate))
        # Names are compared as RFC 3454 prepares them, which knows the letters of Unicode 3.2 and no emoji.
        return bool(read.issuer.hashable and read.subject.hashable) and any(
            read.subject.native.get(member) for member in ("common_name", "organization_name")
        )
    except ValueError:
        return False


def _above(certificate: x509.Certificate, others: list[x509.Certificate]) -> list[x509.Certificate]:
    """Of the certificates in a file its own issuer, that one's, and so on: any other in a seal is a fault there."""
    chain, left, at = [], list(others), certificate
    while found := next((other for other in left if issued_by(at, other)), None):
        left.remove(found)
        chain.append(found)
        at = found
    return chain


def own_key(folder: Path, name: str, now: datetime) -> SealKey:
    """The key kept in ``folder`` (``seal-key.pem``, ``seal-certificate.pem``), made there the first time, with
    ``name`` in its certificate. Of several starts at once, one makes it. Raises ``OSError``."""
    folder.mkdir(parents=True, exist_ok=True)
    pem = kept_secret(folder / "seal-key.pem", lambda: _key_pem(ec.generate_private_key(ec.SECP256R1())))
    key = serialization.load_pem_private_key(pem, None)
    assert isinstance(key, ec.EllipticCurvePrivateKey)
    certificate = kept_secret(folder / "seal-certificate.pem", lambda: _pem(certificate_for(key, name, now)))
    return SealKey(_key_der(key), _der(x509.load_pem_x509_certificate(certificate)), ())


def certificate_for(key: ec.EllipticCurvePrivateKey, name: str, now: datetime) -> x509.Certificate:
    """A self-signed certificate for document signatures (digital signature and content commitment)."""
    subject = x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, name[:NAME_LIMIT] or "Seamwalk")])
    usage = x509.KeyUsage(True, True, False, False, False, False, False, False, False)
    return (
        x509.CertificateBuilder()
        .subject_name(subject)
        .issuer_name(subject)
        .public_key(key.public_key())
        .serial_number(x509.random_serial_number())
        .not_valid_before(now - timedelta(days=1))
        .not_valid_after(now + timedelta(days=365 * YEARS))
        .add_extension(x509.BasicConstraints(ca=False, path_length=None), critical=True)
        .add_extension(usage, critical=True)
        .sign(key, hashes.SHA256())
    )


def _der(certificate: x509.Certificate) -> bytes:
    return certificate.public_bytes(serialization.Encoding.DER)


def _pem(certificate: x509.Certificate) -> bytes:
    return certificate.public_bytes(serialization.Encoding.PEM)


def _key_der(key: object) -> bytes:
    return key.private_bytes(  # type: ignore[attr-defined, no-any-return]
        serialization.Encoding.DER, serialization.PrivateFormat.PKCS8, serialization.NoEncryption()
    )


def _key_pem(key: ec.EllipticCurvePrivateKey) -> bytes:
    return key.private_bytes(
        serialization.Encoding.PEM, serialization.PrivateFormat.PKCS8, serialization.NoEncryption()
    )


def grouped(fingerprint: str) -> str:
    """Four digits at a time, to be read aloud and compared."""
    return " ".join(fingerprint[at : at + 4] for at in range(0, len(fingerprint), 4))
