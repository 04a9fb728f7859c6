"""Know a key again that a server, set back to a backup, has forgotten: its own signed enrolment says whose it is."""

from typing import Any

from inspect_app.entry.jwk import Jwk
from inspect_app.entry.jws import verify
from inspect_app.entry.proof import parse_proof, verify_proof
from inspect_app.entry.refusal import Refused
from inspect_app.entry.statement import parse_statement
from inspect_app.people.accounts import Accounts
from inspect_app.people.devices import Devices
from inspect_app.people.forgotten import undone
from inspect_app.people.nonces import Nonces
from inspect_app.people.trail import Trail


def enrol_again(
    devices: Devices, accounts: Accounts, nonces: Nonces, trail: Trail, server: Jwk, enrolment: str, proof: str
) -> str:
    """The new statement that ties the key to its person, who is an account again where they are none. ``enrolment``:
    what this server signed in the time that a restoration undid; a key that it still knows, ended or not, stays as it
    is. The trail tells of it: the key may have been ended in the time undone, and nobody can end a forgotten one before
    it comes. Raises ``Refused`` (``unknown_key`` for an enrolment of any other time), ``NotSignedIn`` for an old
    nonce."""
    said = parse_statement(enrolment)
    verify(said, server)
    told: dict[str, Any] = said.payload
    if said.kind != "enrolment":
        raise Refused("unknown_kind", "kind", said.kind)
    nonce = str(parse_proof(proof).payload["nonce"])
    verify_proof(proof, told["jwk"], nonce, "enrol")
    nonces.check(nonce)
    with devices.transactions.writing():
        known = devices.find(told["kid"])
        if known is None and not undone(devices, told["seq"]):
            raise Refused("unknown_key", "enrolment", told["kid"])
        who = accounts.again(told["person"]["id"], told["person"]["name"], told["person"]["role"])
        if known is None:
            trail.note("known_again", None, who.id, key=told["kid"], name=told["device"])
        return devices.enrol(who, told["jwk"], told["device"])
