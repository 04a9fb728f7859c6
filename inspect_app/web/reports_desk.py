"""What reports are made with, from the running app's parts; built once and kept on the app."""

from typing import TYPE_CHECKING, cast

from flask import Flask, current_app

from inspect_app.intake.pictures import facts
from inspect_app.report.make import Maker
from inspect_app.report.seal_key import SealKey, given_key, own_key
from inspect_app.report.shelf import Shelf
from inspect_app.report.source import Source

if TYPE_CHECKING:
    from inspect_app.application import Parts

NAME = "reports"


def maker() -> Maker:
    """The maker of the app in hand."""
    app = cast(Flask, current_app._get_current_object())  # type: ignore[attr-defined]
    if NAME not in app.extensions:
        app.extensions[NAME] = _build(app)
    return cast(Maker, app.extensions[NAME])


def make_report(app: Flask, job: str) -> None:
    """For the background: make the job's report, as it stands now."""
    maker().make(job)


def _build(app: Flask) -> Maker:
    parts: Parts = app.extensions["seamwalk"]
    source = Source(
        parts.transactions,
        parts.reading,
        parts.archive,
        parts.vault,
        app.extensions["photos"].copies,
        parts.server_key,
        facts,
    )
    shelf = Shelf(parts.settings.data / "reports", parts.transactions, parts.clock)
    fonts = parts.settings.static / "vendor"
    return Maker(source, shelf, parts.words, fonts, lambda: seal_key(parts), parts.clock)


def seal_key(parts: "Parts") -> SealKey:
    """The firm's own key when one is given, else the one of this server, made the first time."""
    settings = parts.settings
    if settings.seal_pkcs12 is not None:
        return given_key(settings.seal_pkcs12, settings.seal_passphrase)
    return own_key(settings.data / "seal", f"Seamwalk server {parts.server_key.kid[:12]}", parts.clock())
