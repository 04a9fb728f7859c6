"""What the routes about people are given by the composition root, kept as ``app.extensions["office"]``."""

from typing import NamedTuple

from flask import current_app

from inspect_app.people.contacts import Contacts
from inspect_app.people.firms import Firms
from inspect_app.people.invitations import Invitations
from inspect_app.people.scope import Scope
from inspect_app.people.trail import Trail
from inspect_app.people.tries import Tries
from inspect_app.people.viewer_links import ViewerLinks


class OfficeDesk(NamedTuple):
    """``guesses``: tries of links that lead nowhere, by address."""

    firms: Firms
    invitations: Invitations
    links: ViewerLinks
    contacts: Contacts
    scope: Scope
    trail: Trail
    guesses: Tries


def office() -> OfficeDesk:
    """The one of the running app."""
    given = current_app.extensions["office"]
    assert isinstance(given, OfficeDesk)
    return given
