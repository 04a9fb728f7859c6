"""Enrol a device: somebody who is signed in shows that the phone holds the key."""

from collections.abc import Mapping

from inspect_app.entry.jwk import bare
from inspect_app.entry.proof import parse_proof, verify_proof
from inspect_app.people.accounts import Person
from inspect_app.people.devices import Devices
from inspect_app.people.nonces import Nonces


def enrol(
    devices: Devices, nonces: Nonces, person: Person, jwk: Mapping[str, object], device: str, proof: str
) -> str:
    """The statement that ties the key to the person. Raises ``Refused`` for a bad key or proof,
    ``NotSignedIn`` for an old or foreign nonce, ``Conflict`` for somebody else's key."""
    key = bare(jwk)
    nonce = str(parse_proof(proof).payload["nonce"])
    verify_proof(proof, key, nonce, "enrol")
    nonces.check(nonce)
    return devices.enrol(person, key, device)
