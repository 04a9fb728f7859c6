"""Passwords as Argon2id hashes (RFC 9106)."""

import secrets

from argon2 import PasswordHasher
from argon2.exceptions import InvalidHashError, VerificationError

from inspect_app.errors import BadInput

SHORTEST, LONGEST = 10, 200
# Without l, 1, o and 0: people read these aloud and type them on a phone.
ALPHABET = "abcdefghijkmnpqrstuvwxyz23456789"


class Passwords:
    """Hash and compare. What one comparison costs is the hasher's affair."""

    def __init__(self, hasher: PasswordHasher) -> None:
        self.hasher = hasher
        self._nobody = hasher.hash(secrets.token_hex(16))

    def hashed(self, password: str) -> str:
        """Its hash, as text that carries salt and parameters. Raises ``BadInput`` when too short or too
        long."""
        if not SHORTEST <= len(password) <= LONGEST:
            raise BadInput("bad_password_length", "password", len(password))
        return self.hasher.hash(password)

    def matches(self, password: str, known: str | None) -> bool:
        """Whether the password has this hash. Without one (no such person) it takes the same time to say no,
        so that nobody can find out by the clock who has an account."""
        if len(password) > LONGEST:
            return False
        try:
            return self.hasher.verify(known or self._nobody, password) and known is not None
        except (VerificationError, InvalidHashError):
            return False


def made_up() -> str:
    """A new password: 4 groups of 4, 80 bits."""
    return "-".join("".join(secrets.choice(ALPHABET) for _ in range(4)) for _ in range(4))
