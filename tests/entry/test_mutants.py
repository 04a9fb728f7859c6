"""Thousands of tokens gone wrong: each is taken as it stands or refused as a value, and an outside reader agrees."""

import json
from collections import Counter
from collections.abc import Iterator
from random import Random

import pytest
from joserfc import jws as outside
from joserfc.errors import JoseError
from joserfc.jwk import ECKey

from inspect_app.entry.accept import Accepted
from inspect_app.entry.base64url import decode
from inspect_app.entry.jwk import public_jwk
from inspect_app.entry.jws import parse_jws, verify
from inspect_app.entry.refusal import Refused
from inspect_app.entry.signature import ORDER
from inspect_app.entry.statement import parse_statement
from tests.entry.known import ADA, STATEMENTS, good, judged
from tests.entry.mutants import flipped, in_earnest, in_transit
from tests.seed import chance

TYPES = ("seamwalk-entry", "seamwalk-statement", "seamwalk-proof")
TOKENS = [good(name) for name in ("station", "area", "walk", "answer", "photo")]
KEY = ECKey.import_key(public_jwk(ADA))


def tokens(source: Random, count: int) -> Iterator[str]:
    for _ in range(count):
        token, other = source.sample(TOKENS, 2)
        yield in_earnest(token, ADA, source) if source.random() < 0.5 else in_transit(token, other, source)


def outside_payload(token: str) -> object:
    """What joserfc reads under Ada's key; None where it takes no such token."""
    try:
        return json.loads(outside.deserialize_compact(token, KEY, algorithms=["ES256"]).payload)
    except (JoseError, ValueError, UnicodeError):
        return None


def first_wins(written: bytes) -> object:
    """The same JSON by a reader that keeps the first of two members of one name."""
    return json.loads(written, object_pairs_hook=lambda pairs: dict(reversed(pairs)))


def read(token: str) -> str:
    """How it was read, having held it to what must be true of any token."""
    for typ in TYPES:
        try:
            jws = parse_jws(token, typ)
        except Refused as refused:
            assert refused.code and refused.field
            continue
        written = decode(token.split(".")[1], "payload")
        assert jws.token == token and json.loads(written) == first_wins(written) == jws.payload
    outcome = judged(token)
    if isinstance(outcome, Accepted):
        assert outside_payload(token) == outcome.entry.payload, token
        assert int.from_bytes(outcome.entry.signature[32:], "big") <= ORDER // 2, token
        return "accepted"
    assert isinstance(outcome, Refused), token
    return outcome.code


def run(source: Random, count: int) -> Counter[str]:
    return Counter(read(token) for token in tokens(source, count))


def test_tokens_gone_wrong_are_refused_as_values_or_read_as_others_read_them() -> None:
    codes = run(chance("tokens"), 600)
    assert len(codes) > 12, codes  # the mutants reach many of the refusals, not only the first


@pytest.mark.soak
def test_two_hundred_thousand_tokens_gone_wrong() -> None:
    codes = run(chance("many tokens"), 200_000)
    print(f"tokens gone wrong: {codes.total()}, as {dict(codes.most_common())}")
    assert len(codes) > 15, codes


def believed(statement: str) -> bool:
    """Whether a phone that pinned the server's key would take this for the server's word."""
    try:
        verify(parse_statement(statement), STATEMENTS["server"])
    except Refused:
        return False
    return True


@pytest.mark.soak
def test_no_single_changed_bit_of_any_kind_of_token_is_accepted() -> None:
    statements = [row["token"] for row in STATEMENTS["statements"]]
    assert all(read(token) == "accepted" for token in TOKENS) and all(believed(statement) for statement in statements)
    entries = [flipped(token, at, bit) for token in TOKENS for at in range(len(token)) for bit in range(8)]
    words = [flipped(token, at, bit) for token in statements for at in range(len(token)) for bit in range(8)]
    print(f"single bits changed: {len(entries)} in entries, {len(words)} in statements")
    assert [token for token in entries if read(token) == "accepted"] == []
    assert [token for token in words if believed(token)] == []
