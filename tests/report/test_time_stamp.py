"""Time stamps: asked of a real authority over HTTP, done without where none comes, and looked at to the last byte."""

import asyncio
import hashlib
import io
import subprocess
import time
from datetime import timedelta

import pytest
from asn1crypto import cms
from cryptography import x509
from cryptography.hazmat.primitives import hashes
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.serialization import Encoding, NoEncryption, PrivateFormat
from cryptography.x509.oid import ExtendedKeyUsageOID
from pyhanko.pdf_utils.reader import PdfFileReader

from inspect_app.apart import apart
from inspect_app.command_line import main
from inspect_app.evidence.container import token_faults
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN
from inspect_app.evidence.time_stamp import token_in
from inspect_app.evidence.verify import verify
from inspect_app.report.authority import Authority
from inspect_app.report.seal_key import SealKey
from tests.evidence.sealed import key, sealed_with, signed_again
from tests.report.time_authority import MADE, gone, keys, named, serving

ISSUER = key("Issuer (invented)")


def stamped(way="good", **more):
    with serving(way, **more) as authority:
        return sealed_with(ISSUER, authority=Authority(authority.url, 2))


def fact(data, name="time_stamped"):
    found = [(one.status, one.reason) for one in verify(data).facts if one.name == name]
    return found[0] if len(found) == 1 else found


def token_of(data):
    signer = PdfFileReader(io.BytesIO(data)).embedded_signatures[0].signer_info
    return token_in(signer), signer["signature"].native


def test_a_stamped_seal_says_who_stamped_it_and_when():
    data = stamped()
    found = verify(data)
    assert not found.failed
    assert fact(data) == (HOLDS, None)
    stamp = found.signatures[0].plain()["stamp"]
    assert (stamp["name"], stamp["time"]) == ("Clock house (invented)", "2026-11-25T23:06:03+00:00")
    assert len(stamp["fingerprint"]) == 64


def test_the_stamp_is_in_the_box_that_people_see(tmp_path):
    (tmp_path / "s.pdf").write_bytes(stamped())
    (tmp_path / "u.pdf").write_bytes(stamped("broken"))
    told = [subprocess.run(["pdftotext", str(tmp_path / name), "-"], capture_output=True, text=True, check=True).stdout
            for name in ("s.pdf", "u.pdf")]  # fmt: skip
    assert "Time stamp: Clock house (invented)" in told[0]
    assert "Without time stamp" in told[1]


def test_openssl_takes_the_stamp_for_one_of_the_signature_s_value(tmp_path):
    token, signature = token_of(stamped())
    (tmp_path / "token").write_bytes(token)
    (tmp_path / "value").write_bytes(signature)
    (tmp_path / "root.pem").write_bytes(keys().root.public_bytes(Encoding.PEM))
    judged = ["openssl", "ts", "-verify", "-data", "value", "-in", "token", "-token_in", "-CAfile", "root.pem",
              "-attime", "1795644363"]  # fmt: skip
    told = subprocess.run(judged, cwd=tmp_path, capture_output=True, text=True, check=False)
    assert told.stdout.strip() == "Verification: OK", told.stderr
    (tmp_path / "value").write_bytes(signature[:-1] + bytes([signature[-1] ^ 1]))
    assert subprocess.run(judged, cwd=tmp_path, capture_output=True, check=False).returncode != 0


WAYS = ["broken", "page", "cut", "empty", "endless", "refuses", "other", "stale", "tires", "moved"]


@pytest.mark.parametrize("way", WAYS)
def test_without_a_good_answer_the_report_comes_out_all_the_same_and_says_so(way):
    data = stamped(way)
    assert not verify(data).failed
    assert fact(data) == (UNKNOWN, "no_time_stamp")


def test_an_authority_that_is_gone_or_never_comes_to_an_end_holds_nothing_up():
    before = time.monotonic()
    with serving("slow") as authority:
        slow = sealed_with(ISSUER, authority=Authority(authority.url, 0.5))
    for data in (slow, sealed_with(ISSUER, authority=Authority(gone(), 2))):
        assert fact(data) == (UNKNOWN, "no_time_stamp")
    assert time.monotonic() - before < 10


def test_a_stamp_that_was_taken_out_is_missed():
    data = stamped()
    token, _ = token_of(data)
    first = data.index(b"/Contents <") + len(b"/Contents <")
    size = data.index(b">", first) - first
    info = cms.ContentInfo.load(bytes.fromhex(data[first : first + size].decode()))
    del info["content"]["signer_infos"][0]["unsigned_attrs"]
    bare = info.dump(force=True).hex().encode()
    assert token.hex().encode() not in bare
    changed = data[:first] + bare.ljust(size, b"0") + data[first + size :]
    assert len(changed) == len(data)
    assert fact(changed) == (FAILS, "time_stamp_gone")
    assert fact(changed, "seal_intact") == (HOLDS, None), "nothing but the mark under the signature tells"


def roomy():
    """A seal's key with a certificate as large as an organisation's with its chain."""
    private, who = ec.generate_private_key(ec.SECP256R1()), named("Large (invented)")
    filled = x509.UnrecognizedExtension(x509.ObjectIdentifier("2.25.1"), bytes(2400))
    made = (
        x509.CertificateBuilder().subject_name(who).issuer_name(who).public_key(private.public_key()).serial_number(7)
        .not_valid_before(MADE).not_valid_after(MADE + timedelta(days=3650)).add_extension(filled, critical=False)
        .sign(private, hashes.SHA256())
    )  # fmt: skip
    der = private.private_bytes(Encoding.DER, PrivateFormat.PKCS8, NoEncryption())
    return SealKey(der, made.public_bytes(Encoding.DER), ())


def test_a_stamp_that_somebody_put_there_afterwards_dates_nothing():
    """No signature covers the place of the token, and a large certificate leaves room there: anybody can have the seal
    stamped by a clock house of their own."""
    data = sealed_with(roomy())
    signature = PdfFileReader(io.BytesIO(data)).embedded_signatures[0]
    with serving() as authority:
        stamper = Authority(authority.url, 2).stamper()
        digest = hashlib.sha256(signature.signer_info["signature"].native).digest()
        token = apart(lambda: asyncio.run(stamper.async_timestamp(digest, "sha256")))
    start, end = signature.byte_range[1] + 1, signature.byte_range[2] - 1
    info = cms.ContentInfo.load(bytes.fromhex(data[start:end].decode()))
    info["content"]["signer_infos"][0]["unsigned_attrs"] = cms.CMSAttributes(
        [cms.CMSAttribute({"type": "signature_time_stamp_token", "values": [token]})])  # fmt: skip
    der = info.dump().hex()  # "force" would write every level of the large certificate anew: half a minute
    added = data[:start] + der.ljust(end - start, "0").encode() + data[end:]
    assert len(added) == len(data) and not verify(added).failed, "the seal is whole all the same"
    assert fact(added) == (UNKNOWN, "time_stamp_unsaid")


def test_a_flip_in_any_byte_of_a_token_is_found():
    token, signature = token_of(stamped())
    assert token_faults(token, signature) == ([], [])
    missed, unsure = [], set()
    for at in range(len(token)):
        changed = token[:at] + bytes([token[at] ^ 1 << at % 8]) + token[at + 1 :]
        faults, unknown = token_faults(changed, signature)
        missed += [at] if (faults, unknown) == ([], []) else []
        unsure |= set() if faults else set(range(at, at + 1))
    assert missed == []
    # Whoever signed a root that names another issuer is not here to ask: not sound, and not shown to be changed.
    name = token.index(b"Root of time", token.index(b"\x30\x82", 170))
    assert all(name - 16 <= at < name + 32 for at in unsure)


def test_a_stamp_of_another_signature_is_none_of_this_one():
    token, _ = token_of(stamped())
    assert token_faults(token, b"another value") == (["time_stamp_other"], [])


@pytest.mark.parametrize(
    ("usage", "critical"),
    [((ExtendedKeyUsageOID.TIME_STAMPING,), False), ((ExtendedKeyUsageOID.CODE_SIGNING,), True),
     ((ExtendedKeyUsageOID.TIME_STAMPING, ExtendedKeyUsageOID.CODE_SIGNING), True)],
)  # fmt: skip
def test_a_certificate_that_is_not_for_time_stamps_alone_stamps_nothing(usage, critical):
    data = stamped(by=keys(usage, critical))
    assert fact(data) == (FAILS, "time_stamp_not_authority")


@pytest.mark.parametrize("minutes", [-60, 60])
def test_a_seal_whose_clock_differs_from_the_authority_s_is_not_dated_by_either(minutes):
    from datetime import timedelta

    from tests.report.time_authority import STAMPED_AT

    assert fact(stamped(at=STAMPED_AT + timedelta(minutes=minutes))) == (UNKNOWN, "times_differ")


def test_each_signature_has_a_stamp_of_its_own():
    with serving() as authority:
        asked = Authority(authority.url, 2)
        once = sealed_with(ISSUER, authority=asked)
        twice = signed_again(once, key("Countersigner (invented)"), "Countersignature", asked)
    alone = signed_again(once, key("Countersigner (invented)"), "Countersignature2")
    assert [status for status, _ in fact(twice)] == [HOLDS, HOLDS]
    assert fact(alone) == [(HOLDS, None), (UNKNOWN, "no_time_stamp")]
    assert not verify(twice).failed and not verify(alone).failed


def test_the_command_names_the_authority_and_no_name_reaches_the_terminal_as_it_is(tmp_path, capsys):
    with serving() as authority:
        once = sealed_with(ISSUER, authority=Authority(authority.url, 2))
    (tmp_path / "r.pdf").write_bytes(signed_again(once, key("Owner \x1b[2J(invented)"), "Countersignature"))
    main(["verify", str(tmp_path / "r.pdf"), "--lang", "es"])
    said = capsys.readouterr().out
    assert "sello de tiempo de Clock house (invented): 2026-11-25T23:06:03+00:00" in said
    assert "Owner" in said and "\x1b" not in said


def test_the_authority_is_known_by_the_fingerprint_given_and_its_own_is_no_other_seal_s():
    data = stamped()
    own = verify(data).signatures[0]
    assert own.stamp is not None and own.fingerprint is not None

    def told(*given: str) -> dict[str, tuple[str, str | None]]:
        facts = verify(data, given).facts
        return {one.name: (one.status, one.reason) for one in facts if one.name.endswith("_known")}

    assert told()["authority_known"] == (UNKNOWN, "authority_not_given")
    assert told(own.fingerprint)["authority_known"] == (UNKNOWN, "authority_not_given")
    assert told(own.fingerprint, own.stamp.fingerprint)["authority_known"] == (HOLDS, None)
    alone = told(own.stamp.fingerprint)
    assert (alone["authority_known"], alone["signer_known"]) == ((HOLDS, None), (UNKNOWN, "only_server_given"))
    assert told("0" * 64)["signer_known"] == (FAILS, "other_signer"), "one that nothing here bears is another seal's"
    unstamped = [one.name for one in verify(sealed_with(ISSUER)).facts]
    assert "authority_known" not in unstamped
