"""Whether whoever asks may: a member, one who sees the whole job, one with a right of the office, a known secret."""

from collections.abc import Callable
from typing import TypeVar

from flask import request

from inspect_app.errors import NotAllowed, NotFound
from inspect_app.people.accounts import Person
from inspect_app.people.rights import may
from inspect_app.web.bearer import require_member
from inspect_app.web.office_desk import office

T = TypeVar("T")


def require_whole(job: str) -> Person:
    """The person asking, a member whose firm sees the whole job. Raises ``NotFound``, ``NotAllowed``."""
    person = require_member(job)
    if office().firms.areas_of(job, person.id) is not None:
        raise NotAllowed("sight_of_areas", "job", job)
    return person


def require_right(job: str, right: str) -> Person:
    """The person asking, whose role has this right of ``people/rights.py`` and who sees the whole job. Raises
    ``NotFound``, ``NotAllowed``."""
    person = require_member(job)
    if not may(person.role, right, office().firms.areas_of(job, person.id) is None):
        raise NotAllowed("role_may_not", "role", person.role)
    return person


def by_secret(find: Callable[[str], T], secret: str) -> T:
    """What a link leads to. Raises what ``find`` raises; from an address that tries many, ``TooOften``."""
    address = request.remote_addr or ""
    office().guesses.check(address)
    try:
        return find(secret)
    except NotFound:
        office().guesses.wrong(address)
        raise
