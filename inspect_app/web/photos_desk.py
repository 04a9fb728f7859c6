"""What the photo routes are given by the composition root, kept as ``app.extensions["photos"]``."""

from collections.abc import Callable
from typing import NamedTuple, Protocol

from flask import current_app

from inspect_app.intake.uploads import Uploads
from inspect_app.people.accounts import Person
from inspect_app.people.scope import Scope
from inspect_app.store.log import Log
from inspect_app.store.vault import Vault
from inspect_app.store.vault_copies import Copies
from inspect_app.words import Words


class Device(Protocol):
    """Whose token a request carries."""

    @property
    def kid(self) -> str: ...


class PhotoDesk(NamedTuple):
    """``device()`` gives the device of the request's bearer token, revoked or not, and raises for any other request;
    ``delivers(job)`` too, and unless its person belongs to that job; ``member(job)`` gives whoever asks (by a device
    that is not revoked, or signed in) and raises unless they belong to it."""

    uploads: Uploads
    vault: Vault
    copies: Copies
    receipts: Log
    scope: Scope
    words: Words
    device: Callable[[], Device]
    delivers: Callable[[str], Device]
    member: Callable[[str], Person]


def desk() -> PhotoDesk:
    """The one of the running app."""
    given = current_app.extensions["photos"]
    assert isinstance(given, PhotoDesk)
    return given
