"""Verify one job's chain of receipts: separate facts, never one boolean."""

from collections.abc import Callable, Iterable, Sequence

from inspect_app.entry.jwk import Jwk
from inspect_app.entry.jws import verify
from inspect_app.entry.refusal import Refused
from inspect_app.entry.statement import Statement, parse_statement


def verify_receipts(
    tokens: Iterable[bytes | str], jwk: Jwk, read: Callable[[bytes | str, Jwk], Statement] | None = None
) -> dict[str, object]:
    """Check receipts of one job, given in any order, against the server's public key. ``read(token, key)``: a receipt
    that this key signed, or Refused; for whoever has read them before.

    ``{"count", "head", "seq", "refused": [...], "gaps": [[from, to]], "forks": [...], "breaks": [n]}``:
    ``count`` good ones with different digests; ``head`` and ``seq`` of the last (None without any);
    ``refused`` ``{"index", "code", "field", "value"}`` for each that is not a receipt signed by this key;
    ``gaps`` runs of missing ``n``; ``forks`` ``{"n", "digests"}`` where the server gave one place twice;
    ``breaks`` the ``n`` whose ``prev`` is not the digest before it, or whose ``seq`` or job does not follow.
    A chain that was cut at its end looks whole: only a later receipt or a sealed report can tell.
    """
    places: dict[int, dict[str, Statement]] = {}
    refused = []
    for index, token in enumerate(tokens):
        try:
            statement = (read or _receipt)(token, jwk)
        except Refused as error:
            refused.append({"index": index, "code": error.code, "field": error.field, "value": error.value})
            continue
        places.setdefault(_number(statement, "n"), {})[statement.digest] = statement
    order = sorted(places)
    chosen = [places[n][min(places[n])] for n in order]
    return {
        "count": sum(len(place) for place in places.values()),
        "head": chosen[-1].digest if chosen else None,
        "seq": _number(chosen[-1], "seq") if chosen else None,
        "refused": refused,
        "gaps": _gaps(order),
        "forks": [{"n": n, "digests": sorted(places[n])} for n in order if len(places[n]) > 1],
        "breaks": _breaks(order, places, chosen),
    }


def _receipt(token: bytes | str, jwk: Jwk) -> Statement:
    statement = parse_statement(token)
    verify(statement, jwk)
    if statement.kind != "receipt":
        raise Refused("unknown_kind", "kind", statement.kind)
    return statement


def _gaps(order: Sequence[int]) -> list[list[int]]:
    gaps, wanted = [], 0
    for n in order:
        if n > wanted:
            gaps.append([wanted, n - 1])
        wanted = n + 1
    return gaps


def _breaks(order: list[int], places: dict[int, dict[str, Statement]], chosen: list[Statement]) -> list[int]:
    broken = []
    for n in order:
        before = places.get(n - 1)
        for statement in places[n].values():
            wrong_job = statement.payload["job"] != chosen[0].payload["job"]
            previous = before.get(str(statement.payload["prev"])) if before else None
            unlinked = before is not None and previous is None
            backwards = previous is not None and _number(previous, "seq") >= _number(statement, "seq")
            if wrong_job or unlinked or backwards:
                broken.append(n)
                break
    return broken


def _number(statement: Statement, member: str) -> int:
    value = statement.payload[member]
    assert isinstance(value, int)
    return value
