"""Whoever countersigns in the tests: keys as PKCS#12 files, and an office whose shelf holds one sealed report."""

import hashlib
from datetime import UTC, datetime, timedelta
from functools import cache
from pathlib import Path
from typing import Any

from cryptography import x509
from cryptography.hazmat.primitives import hashes, serialization
from cryptography.hazmat.primitives.asymmetric import ec, rsa
from cryptography.hazmat.primitives.serialization import pkcs12
from cryptography.x509.oid import NameOID

from inspect_app.web.countersign_desk import countersigned
from inspect_app.web.reports_desk import maker
from tests.evidence.sealed import DIGEST, RECORD, contents_of, sealed
from tests.office import Office

WORD = "a passphrase of the tests"


@cache
def pkcs12_of(name: str, kind: str = "ec", days: int = 3650, usage: bool = True, word: str = WORD) -> bytes:
    """A self-signed certificate that lasts so many days from the beginning of 2026; without ``usage`` it is for
    ciphering keys, not for signatures."""
    key: Any = ec.generate_private_key(ec.SECP256R1()) if kind == "ec" else rsa.generate_private_key(65537, 2048)
    subject = x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, name)])
    start = datetime(2026, 1, 1, tzinfo=UTC)
    made = (
        x509.CertificateBuilder().subject_name(subject).issuer_name(subject).public_key(key.public_key())
        .serial_number(x509.random_serial_number()).not_valid_before(start).not_valid_after(start + timedelta(days))
        .add_extension(x509.KeyUsage(usage, usage, not usage, False, False, False, False, False, False), critical=True)
        .sign(key, hashes.SHA256())
    )  # fmt: skip
    locked = serialization.BestAvailableEncryption(word.encode()) if word else serialization.NoEncryption()
    return pkcs12.serialize_key_and_certificates(b"own", key, made, None, locked)


def shelved(office: Office, data: bytes | None = None) -> str:
    """The job whose report 1 is the one-page sealed report."""
    job, _ = office.job()
    with office.app.app_context():
        shelf = maker().shelf
        number = shelf.begin(job)
        pdf = shelf.work(job) / "made.part"
        pdf.write_bytes(data or sealed())
        shelf.finish(job, number, pdf, contents_of(RECORD), DIGEST, 1)
    return job


def file_of(office: Office, job: str, number: int = 1) -> Path:
    with office.app.app_context():
        found = maker().shelf.numbered(job, number)
        assert found is not None and found.pdf is not None
        return found.pdf


def desk(office: Office) -> Any:
    return countersigned(office.app)


def sha256(path: Path) -> str:
    return hashlib.sha256(path.read_bytes()).hexdigest()
