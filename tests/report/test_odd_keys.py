"""Keys that people hand over to sign reports with, of every odd make: each is used, or refused before it signs."""

import time

import pytest
from asn1crypto import pkcs12 as asn1_pkcs12
from cryptography import x509
from cryptography.hazmat.primitives import hashes, serialization
from cryptography.hazmat.primitives.asymmetric import ec, ed25519, rsa
from cryptography.hazmat.primitives.serialization import pkcs12
from cryptography.x509.oid import NameOID

from inspect_app.evidence.verify import verify
from inspect_app.report.judged import key_apart
from inspect_app.report.seal_key import UnreadableKey, key_in
from tests.evidence.sealed import WHEN, key, sealed_with, signed_again
from tests.office import Office
from tests.report.countersigners import WORD, desk, file_of, pkcs12_of, shelved

LOCKED = serialization.BestAvailableEncryption(WORD.encode())


def named(*names, member=NameOID.COMMON_NAME):
    return x509.Name([x509.NameAttribute(member, name) for name in names])


def certificate(own, subject, issuer=None, by=None, authority=False):
    usage = x509.KeyUsage(not authority, not authority, False, False, False, authority, authority, False, False)
    made = (
        x509.CertificateBuilder().subject_name(subject).issuer_name(issuer or subject).public_key(own.public_key())
        .serial_number(x509.random_serial_number()).not_valid_before(WHEN.replace(month=1))
        .not_valid_after(WHEN.replace(year=2046)).add_extension(usage, critical=True)
        .add_extension(x509.BasicConstraints(authority, None), critical=True)
    )  # fmt: skip
    return made.sign(by or own, None if isinstance(own, ed25519.Ed25519PrivateKey) else hashes.SHA256())


def file_with(own, subject, others=None, **more):
    return pkcs12.serialize_key_and_certificates(b"own", own, certificate(own, subject, **more), others, LOCKED)


def curve():
    return ec.generate_private_key(ec.SECP256R1())


ODD = {
    "an RSA key too short": lambda: file_with(rsa.generate_private_key(65537, 1024), named("Short")),
    "a key of another algorithm": lambda: file_with(ed25519.Ed25519PrivateKey.generate(), named("Edwards")),
    "nobody's name": lambda: file_with(curve(), named()),
    "a name that is no name": lambda: file_with(curve(), named("a@b.invalid", member=NameOID.EMAIL_ADDRESS)),
    "a name that no verifier reads": lambda: file_with(curve(), named("Ann \N{SLIGHTLY SMILING FACE}")),
}


@pytest.mark.parametrize("make", ODD.values(), ids=ODD)
def test_what_would_sign_so_that_nobody_can_read_it_is_refused_before_it_signs(make):
    with pytest.raises(UnreadableKey) as raised:
        key_in(make(), WORD)
    assert raised.value.reason == "unusable"


@pytest.mark.parametrize("subject", [named("Firm (invented)", member=NameOID.ORGANIZATION_NAME),
                                     named("One (invented)", "Two (invented)"), named("Only (invented)")])  # fmt: skip
def test_a_report_names_its_sealer_as_whoever_verifies_it_reads_them(subject):
    odd = key_in(file_with(curve(), subject), WORD)
    assert verify(sealed_with(odd)).signatures[0].name == odd.name


def test_certificates_in_the_file_that_hang_on_nothing_do_not_go_into_the_seal():
    top, middle, own = curve(), curve(), curve()
    root = certificate(top, named("Root"), authority=True)
    between = certificate(middle, named("Between"), named("Root"), top, authority=True)
    others = [certificate(curve(), named("Somebody else")), root, between]
    held = key_in(file_with(own, named("Leaf"), others, issuer=named("Between"), by=middle), WORD)
    assert held.chain == tuple(one.public_bytes(serialization.Encoding.DER) for one in (between, root))
    data = sealed_with(held)
    assert not verify(data).failed and not verify(signed_again(data, key("Second"), "Countersignature")).failed


def test_a_name_that_no_statement_can_hold_keeps_nobody_from_signing_after_it(tmp_path):
    office = Office(tmp_path / "data")
    job = shelved(office)
    with office.app.app_context():
        for data in (file_with(curve(), named("Nul\0l")), pkcs12_of("Next (invented)")):
            done = desk(office).sign(job, 1, key_in(data, WORD), "chief")
    assert [one["by"] for one in done.signatures] == [None, "chief", "chief"]
    assert not verify(file_of(office, job).read_bytes()).failed


def test_a_file_that_asks_for_endless_work_holds_nothing_up():
    held = asn1_pkcs12.Pfx.load(pkcs12_of("Endless"))
    held["mac_data"]["iterations"] = 2**31 - 1
    before = time.monotonic()
    with pytest.raises(UnreadableKey) as raised:
        key_apart(held.dump(), WORD, seconds=1)
    assert raised.value.reason == "not_pkcs12" and time.monotonic() - before < 10
    assert key_apart(pkcs12_of("Quick"), WORD) == key_in(pkcs12_of("Quick"), WORD)
    with pytest.raises(UnreadableKey) as raised:
        key_apart(ODD["nobody's name"](), WORD)
    assert raised.value.reason == "unusable"
