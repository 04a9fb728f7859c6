"""The shared vectors and a small world of keys and members to judge them in."""

import json
from pathlib import Path
from typing import Any

from cryptography.hazmat.primitives.asymmetric import ec

from inspect_app.entry.accept import Key, Outcome, accept
from inspect_app.entry.format import parse
from inspect_app.entry.jwk import public_jwk
from inspect_app.entry.refusal import Refused
from inspect_app.entry.thumbprint import thumbprint

VECTORS = Path(__file__).parent.parent / "vectors"
ENTRIES: dict[str, Any] = json.loads((VECTORS / "entries.json").read_text(encoding="ascii"))
STATEMENTS: dict[str, Any] = json.loads((VECTORS / "entries_statements.json").read_text(encoding="ascii"))

# RFC 7515 appendix A.3.1, member d; and RFC 6979 appendix A.2.5, x.
ADA = ec.derive_private_key(
    0x8E9B109E719098BF980487DF1F5D77E9CB29606EBED2263B5F57C213DF84F4B2, ec.SECP256R1()
)
BEN = ec.derive_private_key(
    0xC9AFA9D845BA75166B5C215767B1D6934E50C3DB36E89B127B8A622B120F6721, ec.SECP256R1()
)
ADA_KID, BEN_KID = thumbprint(public_jwk(ADA)), thumbprint(public_jwk(BEN))
KEYS = {
    ADA_KID: Key(public_jwk(ADA), "ada", role="foreman"),
    BEN_KID: Key(public_jwk(BEN), "ben", role="administrator"),
}


def good(name: str) -> str:
    """The token of the good vector with this name."""
    return str(next(row["token"] for row in ENTRIES["good"] if row["name"] == name))


def payload_of(name: str) -> dict[str, Any]:
    return parse(good(name)).payload


JOB = str(payload_of("station")["job"])
MEMBERS = {JOB: {"ada", "ben"}}


def nothing_held(digest: str) -> bool:
    return False


def judged(token: bytes | str) -> Outcome:
    """What the small world makes of a token: both keys enrolled, both people members, nothing held."""
    return accept(token, KEYS, MEMBERS, nothing_held)


def facts(outcome: object) -> tuple[str, str]:
    assert isinstance(outcome, Refused), outcome
    return outcome.code, outcome.field
