"""What makes reports, as the composition root built it: ``app.extensions["reports"]``, and what was asked for:
``app.extensions["asks"]``."""

import logging
from typing import cast

from flask import Flask, current_app

from inspect_app.report.asks import Ask, Asks
from inspect_app.report.background import Background
from inspect_app.report.make import Maker
from inspect_app.report.seal_key import UnreadableKey
from inspect_app.rules.refused import Refused
from inspect_app.store.trouble import trouble
from inspect_app.web.parts import parts

log = logging.getLogger("seamwalk")


def maker() -> Maker:
    """The maker of the app in hand."""
    return cast(Maker, current_app.extensions["reports"])


def asks() -> Asks:
    """What was asked for of the app in hand."""
    return cast(Asks, current_app.extensions["asks"])


def begin(ask: Ask) -> None:
    """Have what was asked for made: at once where this server makes reports by itself, else at its next start."""
    background = current_app.extensions.get("background")
    if background is not None:
        cast(Background, background).asked(ask.id, ask.job)


def make_report(app: Flask, job: str) -> None:
    """For the background: make the job's report, as it stands now."""
    maker().make_due(job)


def make_asked(app: Flask, identity: int) -> None:
    """For the background: make what was asked for. What goes wrong is noted with it, so that who waits is told."""
    with asks().begun(identity) as ask:
        if ask is None:
            return
        try:
            made = maker().make(ask.job, *ask.asked[1:], scope=ask.asked.scope, tell=asks().teller(identity))
        except Exception as reason:
            log.exception("report asked for as %s of job %s could not be made", identity, ask.job)
            asks().fail(identity, _code(reason))
        else:
            asks().done(identity, made.shelved.number, made.new)


def look_around(app: Flask) -> None:
    """For the background, at the start and now and then: take up what waits, and what a server of this store left that
    has ended. What another one is making is left to it."""
    shelf = maker().shelf
    shelf.sweep()
    for waiting in asks().sweep():
        begin(waiting)
    if shelf.holds.others_ended():
        parts().completion.look_again()


def _code(reason: Exception) -> str:
    """Words: ``sealed.trouble.CODE``."""
    if isinstance(reason, Refused):
        return "scope_unknown"
    if isinstance(reason, UnreadableKey):
        return "seal_key"
    known = trouble(reason)
    return known.code if known is not None else "internal"
