"""A time stamping authority of the tests' own, over real HTTP: RFC 3161 as asn1crypto writes it, keys made anew.

It can also misbehave in each of the ways that an answer from anywhere may."""

import hashlib
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime, timedelta
from functools import cache
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from typing import Any, NamedTuple

from asn1crypto import algos, cms, core, tsp
from asn1crypto import x509 as asn1_x509
from cryptography import x509
from cryptography.hazmat.primitives import hashes
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.serialization import Encoding
from cryptography.x509.oid import ExtendedKeyUsageOID, NameOID

STAMPED_AT = datetime(2026, 11, 25, 23, 6, 3, tzinfo=UTC)
POLICY = "2.25.318265193722048215376620461830477163841"  # of nobody
MADE = datetime(2026, 1, 1, tzinfo=UTC)


class Keys(NamedTuple):
    root: x509.Certificate
    own: x509.Certificate
    private: ec.EllipticCurvePrivateKey


def named(text: str) -> x509.Name:
    return x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, text)])


@cache
def keys(
    usage: tuple[x509.ObjectIdentifier, ...] = (ExtendedKeyUsageOID.TIME_STAMPING,), critical: bool = True
) -> Keys:
    root_key, private = ec.generate_private_key(ec.SECP256R1()), ec.generate_private_key(ec.SECP256R1())

    def certificate(subject: str, key: Any, ca: bool) -> x509.CertificateBuilder:
        return (
            x509.CertificateBuilder().subject_name(named(subject)).issuer_name(named("Root of time (invented)"))
            .public_key(key.public_key()).serial_number(x509.random_serial_number())
            .not_valid_before(MADE).not_valid_after(MADE + timedelta(days=3650))
            .add_extension(x509.BasicConstraints(ca=ca, path_length=None), critical=True)
            .add_extension(x509.KeyUsage(not ca, False, False, False, False, ca, ca, False, False), critical=True)
        )  # fmt: skip

    root = certificate("Root of time (invented)", root_key, True).sign(root_key, hashes.SHA256())
    own = certificate("Clock house (invented)", private, False)
    own = own.add_extension(x509.ExtendedKeyUsage(usage), critical=critical)
    return Keys(root, own.sign(root_key, hashes.SHA256()), private)


def token(imprint: tsp.MessageImprint, nonce: Any, at: datetime, by: Keys) -> cms.ContentInfo:
    own = asn1_x509.Certificate.load(by.own.public_bytes(Encoding.DER))
    told = tsp.TSTInfo({
        "version": "v1", "policy": POLICY, "message_imprint": imprint, "serial_number": 7,
        "gen_time": core.GeneralizedTime(at), **({} if nonce.native is None else {"nonce": nonce.native}),
    }).dump()  # fmt: skip
    sha256 = algos.DigestAlgorithm({"algorithm": "sha256"})
    named_by = tsp.SigningCertificateV2({"certs": [{"cert_hash": hashlib.sha256(own.dump()).digest()}]})
    signed = cms.CMSAttributes([
        {"type": "content_type", "values": ["tst_info"]},
        {"type": "message_digest", "values": [hashlib.sha256(told).digest()]},
        {"type": "signing_certificate_v2", "values": [named_by]},
    ])  # fmt: skip
    signer = {
        "version": "v1",
        "sid": {"issuer_and_serial_number": {"issuer": own.issuer, "serial_number": own.serial_number}},
        "digest_algorithm": sha256, "signed_attrs": signed, "signature_algorithm": {"algorithm": "sha256_ecdsa"},
        "signature": by.private.sign(signed.dump(), ec.ECDSA(hashes.SHA256())),
    }  # fmt: skip
    certificates = [own, asn1_x509.Certificate.load(by.root.public_bytes(Encoding.DER))]
    return cms.ContentInfo({"content_type": "signed_data", "content": cms.SignedData({
        "version": "v3", "digest_algorithms": [sha256], "certificates": certificates, "signer_infos": [signer],
        "encap_content_info": {"content_type": "tst_info", "content": cms.ParsableOctetString(told)},
    })})  # fmt: skip


class TimeAuthority:
    """``way``: how it answers; ``asked``: how often it was asked; ``at``: its clock."""

    def __init__(self, way: str = "good", by: Keys | None = None, at: datetime = STAMPED_AT) -> None:
        self.way, self.by, self.at, self.asked = way, by or keys(), at, 0
        self.url = ""

    def answer(self, asked: bytes) -> tuple[int, str, bytes]:
        self.asked += 1
        way = {"tires": "good" if self.asked == 1 else "broken"}.get(self.way, self.way)
        query = tsp.TimeStampReq.load(asked, strict=True)
        imprint, nonce = query["message_imprint"], query["nonce"]
        if way == "other":
            imprint = tsp.MessageImprint({"hash_algorithm": {"algorithm": "sha256"}, "hashed_message": bytes(32)})
        if way == "stale":
            nonce = core.Integer(1)
        reply = {"status": {"status": "granted"}, "time_stamp_token": token(imprint, nonce, self.at, self.by)}
        if way == "refuses":
            reply = {"status": {"status": "rejection", "status_string": ["no"]}}
        data = tsp.TimeStampResp(reply).dump()
        return {
            "broken": (500, "text/plain", b"no"), "page": (200, "text/html", b"<p>Welcome to the hotel"),
            "cut": (200, "application/timestamp-reply", data[:-40]), "empty": (200, "application/timestamp-reply", b""),
            "endless": (200, "application/timestamp-reply", b"\0" * 200_000),
        }.get(way, (200, "application/timestamp-reply", data))  # fmt: skip


@contextmanager
def serving(way: str = "good", by: Keys | None = None, at: datetime = STAMPED_AT) -> Iterator[TimeAuthority]:
    """One at an address of its own until the block ends. ``slow`` answers a byte now and then, for ever."""
    authority = TimeAuthority(way, by, at)
    done = threading.Event()

    class Door(BaseHTTPRequestHandler):
        def do_POST(self) -> None:
            asked = self.rfile.read(int(self.headers["Content-Length"]))
            assert self.headers["Content-Type"] == "application/timestamp-query"
            status, kind, data = authority.answer(asked)
            moved = authority.way == "moved" and self.path == "/stamp"
            self.send_response(307 if moved else status)
            if moved:
                self.send_header("Location", "/elsewhere")
            self.send_header("Content-Type", kind)
            self.send_header("Content-Length", str(len(data)))
            self.end_headers()
            if authority.way == "slow":
                while not done.wait(0.05):
                    self.wfile.write(b"\0")
            self.wfile.write(data)

        def log_message(self, *_: object) -> None:
            pass

    server = ThreadingHTTPServer(("127.0.0.1", 0), Door)
    threading.Thread(target=server.serve_forever, args=(0.02,), daemon=True).start()
    authority.url = f"http://127.0.0.1:{server.server_port}/stamp"
    try:
        yield authority
    finally:
        done.set()
        server.shutdown()
        server.server_close()


def gone() -> str:
    """An address at which nobody answers."""
    with serving() as authority:
        return authority.url

