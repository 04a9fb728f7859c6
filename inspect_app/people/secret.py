"""Secrets that travel in a link: 32 random bytes, of which only the SHA-256 is kept.

They need no slow hash: nobody guesses 256 bits, so a stolen database gives no link away.
"""

import hashlib
import re
from collections.abc import Callable
from datetime import datetime, timedelta

from inspect_app.clock import spell
from inspect_app.entry.base64url import encode
from inspect_app.errors import BadInput

FORM = re.compile(r"[A-Za-z0-9_-]{43}\Z", re.ASCII)


def fresh(entropy: Callable[[int], bytes]) -> str:
    """A new one, as it stands in a link: 43 characters of base64url. ``entropy(n)`` gives n random bytes."""
    return encode(entropy(32))


def kept(secret: str) -> str | None:
    """What is kept of it, in hexadecimal; None for what cannot be one."""
    return hashlib.sha256(secret.encode("ascii")).hexdigest() if FORM.match(secret) else None


def expiry(now: datetime, days: int, most: int) -> str:
    """When a link made now for so many days ends. Raises ``BadInput`` beyond 1 to ``most``."""
    if not 1 <= days <= most:
        raise BadInput("link_days", "days", days)
    return spell(now + timedelta(days=days))


def state_of(now: datetime, expires: str, withdrawn: str | None, used: str | None = None) -> str:
    """``used``, ``withdrawn``, ``expired`` or ``open``, the first that is so."""
    if used or withdrawn:
        return "used" if used else "withdrawn"
    return "expired" if datetime.fromisoformat(expires) <= now else "open"
