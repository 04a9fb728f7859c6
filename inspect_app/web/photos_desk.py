"""What the photo routes are given by the composition root, kept as ``app.extensions["photos"]``."""

from collections.abc import Callable
from typing import NamedTuple, Protocol

from flask import current_app

from inspect_app.intake.uploads import Receipts, Uploads
from inspect_app.store.vault import Vault
from inspect_app.store.vault_copies import Copies
from inspect_app.words import Words


class Device(Protocol):
    """Whose token a request carries."""

    @property
    def kid(self) -> str: ...


class PhotoDesk(NamedTuple):
    """``device()`` gives the device of the request's bearer token and raises for any other request;
    ``member(job)`` raises unless whoever asks (device or signed-in person) belongs to that job."""

    uploads: Uploads
    vault: Vault
    copies: Copies
    receipts: Receipts
    words: Words
    device: Callable[[], Device]
    member: Callable[[str], object]


def desk() -> PhotoDesk:
    """The one of the running app."""
    given = current_app.extensions["photos"]
    assert isinstance(given, PhotoDesk)
    return given
