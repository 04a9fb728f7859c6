"""Keys that a server, set back to a backup, has forgotten and whose phones cannot come back themselves: whoever runs
the server lets them in by its own signed enrolments, which every report and evidence package of that time encloses.

What such a key signed is on other people's phones, which bring it again and are refused until it is known.
"""

from collections.abc import Iterable
from typing import Any, NamedTuple

from inspect_app.entry.jwk import Jwk
from inspect_app.entry.jws import verify
from inspect_app.entry.refusal import Refused
from inspect_app.entry.statement import Statement, parse_statement
from inspect_app.people.accounts import Accounts
from inspect_app.people.devices import Devices
from inspect_app.people.trail import Trail

BY = "server"  # who ends a key here


class Forgotten(NamedTuple):
    """A key as its enrolment tells of it: ``person`` {``id``, ``name``, ``role``}; ``ended``: a revocation of it was
    enclosed too."""

    kid: str
    jwk: Jwk
    person: dict[str, str]
    device: str
    at: str
    ended: bool


def forgotten(devices: Devices, server: Jwk, tokens: Iterable[str]) -> list[Forgotten]:
    """The keys among these statements (JWS) that this server signed in the time a restoration undid and does not know,
    in order of their enrolment. Whatever else stands there is passed over."""
    said = sorted((one for one in (_ours(token, server) for token in tokens) if one), key=_seq)
    ended = {one.payload["kid"] for one in said if one.kind == "revocation"}
    found = dict[str, Forgotten]()
    for one in said:
        told: dict[str, Any] = one.payload
        if one.kind == "enrolment" and undone(devices, told["seq"]) and devices.find(told["kid"]) is None:
            kid, person = told["kid"], told["person"]
            found.setdefault(kid, Forgotten(kid, told["jwk"], person, told["device"], told["at"], kid in ended))
    return list(found.values())


def know_again(devices: Devices, accounts: Accounts, trail: Trail, one: Forgotten, ended: bool) -> None:
    """Tie the key to its person again, who is an account again where they are none. ``ended``: and end it at once, so
    that what it signed is kept apart until an administrator lets it in."""
    with devices.transactions.writing():
        who = accounts.again(one.person["id"], one.person["name"], one.person["role"])
        trail.note("known_again", None, who.id, key=one.kid, name=one.device)
        devices.enrol(who, one.jwk, one.device)
        if ended or one.ended:
            devices.revoke(one.kid, BY)


def undone(devices: Devices, seq: int) -> bool:
    """Whether a statement of this number was given in a time that a restoration undid."""
    said = (parse_statement(one).payload for one in devices.statements.restorations())
    return any(int(str(one["last"])) < seq < int(str(one["seq"])) for one in said)


def _ours(token: str, server: Jwk) -> Statement | None:
    try:
        said = parse_statement(token)
        verify(said, server)
    except Refused:
        return None
    return said


def _seq(one: Statement) -> int:
    return int(str(one.payload["seq"]))
