"""Bearer tokens for delivery: given to a device key, good for an hour, no sign-in needed.

A token says which key it was given to and nothing else. Whether that key is revoked is looked up each time it
is used, so a revocation takes effect at once.
"""

from itsdangerous import BadData, SignatureExpired, URLSafeTimedSerializer

from inspect_app.clock import Clock
from inspect_app.entry.proof import parse_proof, verify_proof
from inspect_app.entry.refusal import Refused
from inspect_app.errors import NotAllowed, NotSignedIn
from inspect_app.people.devices import Device, Devices
from inspect_app.people.nonces import Nonces
from inspect_app.people.signed_time import signer_with

SECONDS = 3600


class Delivery:
    """Proof in, token out; token in, device out."""

    def __init__(self, secret: bytes, clock: Clock, nonces: Nonces, devices: Devices) -> None:
        signer = signer_with(clock)
        self._tokens = URLSafeTimedSerializer(secret, salt="seamwalk-delivery", signer=signer)
        self.nonces, self.devices = nonces, devices

    def token(self, proof: str) -> tuple[str, Device]:
        """A token for the key that signed the proof. Raises ``Refused`` for a bad proof or an unknown key,
        ``NotSignedIn`` for an old or foreign nonce."""
        claimed = parse_proof(proof)
        device = self.devices.find(claimed.kid)
        if device is None:
            raise Refused("unknown_key", "header.kid", claimed.kid)
        nonce = str(claimed.payload["nonce"])
        verify_proof(proof, device.jwk, nonce, "deliver")
        self.nonces.check(nonce)
        return str(self._tokens.dumps(device.kid)), device

    def device(self, token: str, scope: str = "full") -> Device:
        """Whose token this is. ``scope``: ``full``, or ``quarantine`` where a revoked key may still deliver.
        Raises ``NotSignedIn`` (``token_old``, ``token_unknown``), ``NotAllowed`` ``key_revoked``."""
        try:
            kid = self._tokens.loads(token, max_age=SECONDS)
        except SignatureExpired:
            raise NotSignedIn("token_old", "Authorization") from None
        except BadData:
            raise NotSignedIn("token_unknown", "Authorization") from None
        device = self.devices.find(str(kid))
        if device is None:
            raise NotSignedIn("token_unknown", "Authorization")
        if device.revoked and scope != "quarantine":
            raise NotAllowed("key_revoked", "key", device.kid)
        return device


def scope_of(device: Device) -> str:
    """``full``, or ``quarantine`` for a revoked key."""
    return "quarantine" if device.revoked else "full"
