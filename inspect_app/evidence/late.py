"""Entries that came once their key was ended: each wants an administrator's entry that let it in."""

from collections.abc import Mapping
from typing import Any

from inspect_app.evidence import once
from inspect_app.evidence.tokens import Fault, Tokens


def late(tokens: Tokens, record: Mapping[str, Any]) -> list[Fault]:
    """Those that nobody let in, as faults ``key_revoked``. ``record``: the entries, folded; where they cannot be,
    nobody is known to have let in any. What came before its key was ended stands, whatever became of the key since."""
    ended: dict[object, int] = {}
    for one in tokens.enrolments:
        if one.kind == "revocation":  # said twice, the first ends it: a later one must not let in what came between
            seq = int(str(one.payload["seq"]))
            ended[one.payload["kid"]] = min(seq, ended.get(one.payload["kid"], seq))
    if not ended:
        return []
    let_in = {flag["digest"] for flag in record.get("flags", []) if flag["code"] == "admitted"}
    came: dict[object, int] = {}
    for token in tokens.receipts:
        try:
            told = once.statement(token).payload
            came[told.get("entry")] = int(str(told["seq"]))
        except Exception:  # counted by receipts_whole
            continue
    return [
        Fault(line, "key_revoked") for line, one in enumerate(tokens.entries, 1)
        if came.get(one.digest, 0) > ended.get(one.kid, came.get(one.digest, 0)) and one.digest not in let_in
    ]  # fmt: skip
