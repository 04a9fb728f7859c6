"""Tokens read and checked once in a process: a package and each of its reports enclose the same ones, by the thousand.

What is given back is shared: nobody changes it. What does not hold is looked at again each time, and costs as much.
"""

from functools import lru_cache

from inspect_app.entry.format import Entry, parse
from inspect_app.entry.jwk import Jwk
from inspect_app.entry.jws import Jws, verify
from inspect_app.entry.refusal import Refused
from inspect_app.entry.statement import Statement, parse_statement

MANY = 50_000  # tokens kept of each kind; of a job with more the first are read again
_good: set[tuple[str, tuple[tuple[str, object], ...]]] = set()  # (token, key) of the signatures that held


@lru_cache(MANY)
def statement(token: bytes | str) -> Statement:
    """As ``parse_statement``."""
    return parse_statement(token)


@lru_cache(MANY)
def entry(token: bytes | str) -> Entry:
    """As ``format.parse``."""
    return parse(token)


def signed(token: Jws, jwk: Jwk) -> None:
    """As ``jws.verify``."""
    try:
        name = (token.token, tuple(sorted(jwk.items())))
        known = name in _good
    except TypeError:  # a key with members of another kind: it is refused as it is
        return verify(token, jwk)
    if not known:
        verify(token, jwk)
        if len(_good) >= 2 * MANY:
            _good.clear()
        _good.add(name)


def receipt(token: bytes | str, jwk: Jwk) -> Statement:
    """A receipt signed by this key. Raises Refused."""
    found = statement(token)
    signed(found, jwk)
    if found.kind != "receipt":
        raise Refused("unknown_kind", "kind", found.kind)
    return found

