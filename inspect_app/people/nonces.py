"""Nonces that the server need not remember: random, signed, good for five minutes."""

import secrets

from itsdangerous import BadSignature, SignatureExpired

from inspect_app.clock import Clock
from inspect_app.errors import NotSignedIn
from inspect_app.people.signed_time import signer_with

SECONDS = 300


class Nonces:
    """``fresh()`` for a phone to sign, ``check()`` when it comes back."""

    def __init__(self, secret: bytes, clock: Clock) -> None:
        self._signer = signer_with(clock)(secret, salt="seamwalk-nonce")

    def fresh(self) -> str:
        return self._signer.sign(secrets.token_urlsafe(16)).decode("ascii")

    def check(self, nonce: str) -> None:
        """Raises ``NotSignedIn``: ``nonce_old`` after five minutes, ``nonce_unknown`` when it is not ours."""
        try:
            self._signer.unsign(nonce.encode("utf-8", "replace"), max_age=SECONDS)
        except SignatureExpired:
            raise NotSignedIn("nonce_old", "proof.nonce", nonce) from None
        except BadSignature:
            raise NotSignedIn("nonce_unknown", "proof.nonce", nonce) from None
