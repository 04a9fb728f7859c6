"""A software authenticator and its browser: makes passkeys and answers challenges as W3C WebAuthn says, or wrongly."""

import hashlib
import json
from secrets import token_bytes
from typing import Any

import cbor2
from cryptography.hazmat.primitives import hashes
from cryptography.hazmat.primitives.asymmetric import ec

from inspect_app.entry.base64url import decode, encode

PRESENT, VERIFIED, ATTESTED = 0x01, 0x04, 0x40


class Authenticator:
    """One credential. ``counts``: whether it counts its uses, as few do today; ``origin``: of the page that asks."""

    def __init__(self, origin: str, counts: bool = True) -> None:
        self.origin, self.counts = origin, counts
        self.key = ec.generate_private_key(ec.SECP256R1())
        self.id, self.person, self.count = token_bytes(16), b"", 0

    def make(self, options: dict[str, Any], **changed: Any) -> dict[str, Any]:
        """The answer to ``navigator.credentials.create``, attestation ``none``."""
        self.person = decode(options["user"]["id"], "user")
        numbers = self.key.public_key().public_numbers()
        cose = {1: 2, 3: -7, -1: 1, -2: numbers.x.to_bytes(32, "big"), -3: numbers.y.to_bytes(32, "big")}
        held = bytes(16) + len(self.id).to_bytes(2, "big") + self.id + cbor2.dumps(cose)
        data = self._data(changed.get("rp_id", options["rp"]["id"]), PRESENT | VERIFIED | ATTESTED) + held
        return self._answer(
            "webauthn.create", options, changed,
            attestationObject=encode(cbor2.dumps({"fmt": "none", "attStmt": {}, "authData": data})),
        )  # fmt: skip

    def use(self, options: dict[str, Any], **changed: Any) -> dict[str, Any]:
        """The answer to ``navigator.credentials.get``. ``changed``: ``challenge``, ``rp_id``, ``origin``, ``flags``,
        ``kind`` in place of the right ones."""
        self.count += self.counts
        data = self._data(changed.get("rp_id", options["rpId"]), changed.get("flags", PRESENT | VERIFIED))
        answer = self._answer(
            "webauthn.get", options, changed, authenticatorData=encode(data), userHandle=encode(self.person)
        )
        signed = data + hashlib.sha256(decode(answer["response"]["clientDataJSON"], "client")).digest()
        answer["response"]["signature"] = encode(self.key.sign(signed, ec.ECDSA(hashes.SHA256())))
        return answer

    def _data(self, rp_id: str, flags: int) -> bytes:
        return hashlib.sha256(rp_id.encode()).digest() + bytes([flags]) + self.count.to_bytes(4, "big")

    def _answer(self, kind: str, options: dict[str, Any], changed: dict[str, Any], **response: str) -> dict[str, Any]:
        said = {
            "type": changed.get("kind", kind), "challenge": changed.get("challenge", options["challenge"]),
            "origin": changed.get("origin", self.origin), "crossOrigin": False,
        }  # fmt: skip
        client = encode(json.dumps(said).encode())
        return {
            "id": encode(self.id), "rawId": encode(self.id), "type": "public-key",
            "response": {"clientDataJSON": client, **response},
        }  # fmt: skip
