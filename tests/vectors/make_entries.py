"""Make ``entries.json`` and ``entries_statements.json``: tokens that Python and JavaScript must agree on.

Run ``python tests/vectors/make_entries.py`` after a change of the format; never for anything else, since
released vectors must pass for ever. Keys, times and identifiers are fixed and signing is deterministic (RFC
6979), so the same code writes the same bytes.
"""

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from entry_bad_payloads import bad_payloads
from entry_bad_tokens import bad_tokens
from entry_bodies import JOB, payloads
from entry_signed import KEY, KID, OTHER, dumped, token

from inspect_app.entry.base64url import encode
from inspect_app.entry.format import parse
from inspect_app.entry.jwk import public_jwk
from inspect_app.entry.proof import format_proof
from inspect_app.entry.statement import (
    countersignature,
    enrolment,
    entry_receipt,
    format_statement,
    parse_statement,
    photo_receipt,
    restoration,
    revocation,
    ticket,
)
from inspect_app.entry.thumbprint import thumbprint

HERE = Path(__file__).parent
AT = "2026-11-25T21:40:06.000+00:00"
PERSON = {"id": "ada", "name": "Ada Ejemplo (invented)", "role": "foreman"}
NONCE = "n-0S6_WzA2Mj"


def good() -> Iterator[tuple[str, str]]:
    for name, payload in payloads():
        yield name, token(dumped(payload))
    base = dict(payloads())["station"]
    yield "spaces, new lines and another order of members", token(
        json.dumps(dict(reversed(base.items())), indent=2),
        f'{{ "typ":"seamwalk-entry",\n"kid":"{KID}", "alg":"ES256" }}',
    )
    yield "escapes where none are needed", token(dumped(base).replace("hand", "\\u0068and"))
    yield "the largest integers", token(dumped(base | {"x": [2**53 - 1, -(2**53 - 1), 0]}))
    yield "nesting of exactly 32", token(dumped(base)[:-1] + ',"x":' + "[" * 31 + "]" * 31 + "}")
    yield "brackets inside text are not nesting", token(dumped(base | {"x": '[{"' * 50 + "\\"}))
    room = 64 * 1024 - len(token(dumped(base | {"x": ""})))
    for padding in range(room * 3 // 4 - 3, room * 3 // 4 + 4):
        largest = token(dumped(base | {"x": "a" * padding}))
        if len(largest) == 64 * 1024:
            yield "exactly 64 KiB", largest
            break


def statements() -> dict[str, Any]:
    tokens = [
        format_statement(enrolment(1, AT, public_jwk(KEY), PERSON, "phone of Ada"), OTHER),
        format_statement(entry_receipt(2, AT, JOB, 0, None, encode(bytes(range(32)))), OTHER),
    ]
    first = parse_statement(tokens[1]).digest
    tokens.append(format_statement(photo_receipt(5, AT, JOB, 1, first, "0f" * 32, 4096), OTHER))
    tokens.append(format_statement(revocation(6, AT, KID, "ines"), OTHER))
    tokens.append(format_statement(ticket(7, AT, JOB, KID, "work", 3, encode(bytes(range(32, 64)))), OTHER))
    last = parse_statement(tokens[-1]).digest
    tokens.append(format_statement(restoration(1_795_642_805_120, AT, 7, last), OTHER))
    signed = countersignature(
        1_795_642_805_121, AT, JOB, 3, 1, "0a" * 32, "0b" * 32, "0c" * 32, "Ines Ejemplo (invented)", "ines"
    )
    tokens.append(format_statement(signed, OTHER))
    return {
        "server": public_jwk(OTHER),
        "kid": thumbprint(public_jwk(OTHER)),
        "statements": [{"token": it, "digest": parse_statement(it).digest} for it in tokens],
        "proof": {"token": format_proof(NONCE, "deliver", KEY), "nonce": NONCE, "jwk": public_jwk(KEY)},
    }


def contents() -> dict[str, Any]:
    names = ("name", "token", "code", "field")
    return {
        "jwk": public_jwk(KEY),
        "kid": KID,
        "good": [{"name": name, "token": it, "digest": parse(it).digest} for name, it in good()],
        "bad_tokens": [dict(zip(names, row, strict=True)) for row in bad_tokens()],
        "bad_payloads": [dict(zip(names, row, strict=True)) for row in bad_payloads()],
    }


def written(value: dict[str, Any]) -> str:
    return json.dumps(value, indent=1, ensure_ascii=True) + "\n"


FILES = {"entries.json": contents, "entries_statements.json": statements}

if __name__ == "__main__":
    for name, make in FILES.items():
        (HERE / name).write_text(written(make()), encoding="ascii")
