"""The seal and its key."""

import os
import subprocess
from concurrent.futures import ThreadPoolExecutor
from datetime import UTC, datetime

import pytest
from cryptography import x509
from cryptography.hazmat.primitives import serialization
from cryptography.hazmat.primitives.serialization import pkcs12

from inspect_app.evidence.verify import verify
from inspect_app.report.seal_key import UnreadableKey, given_key, own_key
from tests.evidence.sealed import countersigned, sealed, sealed_with

NOW = datetime(2026, 11, 25, 12, tzinfo=UTC)


def test_the_key_is_made_once_and_for_its_owner_only(tmp_path):
    first = own_key(tmp_path / "seal", "Issuer (invented)", NOW)
    assert own_key(tmp_path / "seal", "Another name", NOW) == first
    assert first.name == "Issuer (invented)"
    assert os.stat(tmp_path / "seal" / "seal-key.pem").st_mode & 0o077 == 0
    assert sorted(os.listdir(tmp_path / "seal")) == ["seal-certificate.pem", "seal-key.pem"]


def test_of_many_first_starts_at_once_one_key_comes_out(tmp_path):
    with ThreadPoolExecutor(8) as pool:
        keys = set(pool.map(lambda _: own_key(tmp_path, "Issuer (invented)", NOW).key, range(16)))
    assert len(keys) == 1
    assert not verify(sealed_with(own_key(tmp_path, "", NOW))).failed


def test_a_firm_s_own_pkcs12_key_seals(tmp_path):
    own = own_key(tmp_path, "Firm (invented)", NOW)
    private = serialization.load_der_private_key(own.key, None)
    data = pkcs12.serialize_key_and_certificates(
        b"seal",
        private,
        x509.load_der_x509_certificate(own.certificate),
        None,
        serialization.BestAvailableEncryption(b"word"),
    )
    (tmp_path / "seal.p12").write_bytes(data)
    given = given_key(tmp_path / "seal.p12", "word")
    assert given.fingerprint == own.fingerprint
    assert not verify(sealed_with(given), trust=own.fingerprint).failed


@pytest.mark.parametrize(("data", "reason"), [(None, "not_found"), (b"", "not_pkcs12"), (b"0" * 99, "not_pkcs12")])
def test_a_key_file_that_cannot_be_used_says_why(tmp_path, data, reason):
    if data is not None:
        (tmp_path / "seal.p12").write_bytes(data)
    with pytest.raises(UnreadableKey) as raised:
        given_key(tmp_path / "seal.p12", "word")
    assert raised.value.reason == reason


def test_the_seal_certifies_and_leaves_room_for_one_who_countersigns(tmp_path):
    (tmp_path / "s.pdf").write_bytes(sealed())
    told = subprocess.run(["pdfsig", str(tmp_path / "s.pdf")], capture_output=True, text=True, check=False).stdout
    assert "ETSI.CAdES.detached" in told and "Total document signed" in told
    assert "The signature form field is not signed" in told
    assert "Nov 25 2026" in told
    found = verify(countersigned())
    assert [one.name for one in found.signatures] == ["Issuer (invented)", "Countersigner (invented)"]
    assert [one.certifies for one in found.signatures] == [True, False]
