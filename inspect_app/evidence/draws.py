"""Verify the draws of a report's lots: by whose chance, over what, and what came out.

Fact ``draw_recomputes``: the ticket of every lot is the enclosed server key's own, given to the key that signed the
lot, for this job, and the lot bears its name; population, size, digest and number drawn follow from the area and
assembly entries that the lot names; the report prints the panels that this draw gives, in their order, and keeps sealed
only those that the record keeps sealed. Tickets left out, and entries that would draw again by a used ticket (the first
stands), are counted: each is told in the record, and none of them moves a draw.
"""

from collections.abc import Iterable, Mapping
from typing import Any

from inspect_app.entry.format import Entry
from inspect_app.entry.jwk import Jwk
from inspect_app.entry.refusal import Refused
from inspect_app.evidence import once
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN, Fact
from inspect_app.record.area import panel_count
from inspect_app.record.lot_plans import as_computed
from inspect_app.record.population import digest_of, rows_of, size_of
from inspect_app.record.tickets import drawn_by

NAME = "draw_recomputes"
Body = Mapping[str, Any]


def draw_fact(
    entries: list[Entry], server_key: Jwk, contents: Mapping[str, Any] | None, record: Mapping[str, Any]
) -> Fact:
    """The fact above. ``contents``: the enclosed ones, None when they do not read; ``record``: the entries, folded."""
    again = drawn_again(entries, server_key)
    if again.status == FAILS:
        return again
    if again.about["lots"] and contents is None:
        return Fact(NAME, UNKNOWN, "no_record", again.about)
    other = _printed_otherwise(contents or {}, record)
    return Fact(NAME, FAILS, "other_drawn", again.about | {"lot": other}) if other else again


def drawn_again(entries: list[Entry], server_key: Jwk) -> Fact:
    """The fact above but for what a report prints: where there is none."""
    lots = _lots(entries)
    versions = {entry.digest: entry for entry in entries}
    about: dict[str, Any] = {"lots": len(lots), "repeated": sum(len(every) - 1 for every in lots.values())}
    used: dict[tuple[str, str], set[int]] = {}
    wrong: tuple[str, str] | None = None
    for name, every in lots.items():
        fault = _fault(_first(name, every), versions, server_key)
        if fault is not None:
            wrong = wrong or (name, fault)
        else:
            owner, series, n = name.split("/")
            used.setdefault((owner, series), set()).add(int(n))
    about["skipped"] = sum(max(numbers) + 1 - len(numbers) for numbers in used.values())
    return Fact(NAME, FAILS, wrong[1], about | {"lot": wrong[0]}) if wrong else Fact(NAME, HOLDS, None, about)


def _lots(entries: Iterable[Entry]) -> dict[str, list[Entry]]:
    found: dict[str, list[Entry]] = {}
    for entry in entries:
        if entry.kind == "lot":
            found.setdefault(str(entry.payload["subject"]), []).append(entry)
    return found


def _first(name: str, every: list[Entry]) -> Entry:
    """The entry that draws the lot, chosen as the fold chooses it."""
    plain = [{"digest": one.digest, "kid": one.kid, "payload": one.payload} for one in every]
    digest = drawn_by(name, {"all": plain})["digest"]
    return next(one for one in every if one.digest == digest)


def _fault(lot: Entry, versions: Mapping[str, Entry], server_key: Jwk) -> str | None:
    try:
        return _ticket(lot, server_key) or _population(_body(lot), versions)
    except Exception:  # a body that the rules cannot compute with: whatever it is, this draw does not recompute
        return "other_draw"


def _ticket(lot: Entry, server_key: Jwk) -> str | None:
    told = _body(lot)["ticket"]
    try:
        statement = once.statement(str(told["statement"]))
        once.signed(statement, server_key)
    except Refused:
        return "ticket_not_signed"
    said = statement.payload
    if statement.kind != "ticket":
        return "ticket_not_signed"
    named = f"{said['kid']}/{said['series']}/{said['n']}" == lot.payload["subject"]
    given = (said["job"], said["kid"]) == (lot.job, lot.kid)
    same = all(said[name] == told[name] for name in ("series", "n", "random"))
    return None if named and given and same else "ticket_not_theirs"


def _population(body: Body, versions: Mapping[str, Entry]) -> str | None:
    rows = rows_of(body["population"])
    if rows is None or body["size"] != size_of(rows) or body["population_digest"] != digest_of(rows):
        return "other_draw"
    if not as_computed(dict(body)) or not all(digest in versions for digest in body["placements"]):
        return "other_draw"
    return None if all(_on_the_roof(row, versions) for row in body["population"]) else "other_draw"


def _on_the_roof(row: Mapping[str, Any], versions: Mapping[str, Entry]) -> bool:
    """Whether the panels of a row have seams on the very area and assembly that it names: all but the last have."""
    area, assembly = versions[row["area_entry"]], versions[row["assembly_entry"]]
    if (area.kind, area.payload["subject"], assembly.kind) != ("area", row["area"], "assembly"):
        return False
    if _body(area)["assembly"] != assembly.payload["subject"]:
        return False
    there = panel_count(dict(_body(area)), dict(_body(assembly)))
    return there is not None and row["to"] < there


def _printed_otherwise(contents: Mapping[str, Any], record: Mapping[str, Any]) -> str | None:
    """The first lot whose drawn panels are printed otherwise, left out or doubled."""
    try:
        said = [(one["lot"], [_stop(stop) for stop in one["drawn"]]) for one in contents.get("lots", [])]
        true = [(name, [_stop(stop) for stop in lot["drawn"]]) for name, lot in record["lots"].items()]
    except Exception as reason:  # contents of any other shape, or entries that cannot be folded
        return type(reason).__name__
    wrong = [one for one in said if one not in true] + [one for one in true if said.count(one) != 1]
    return str(wrong[0][0]) if wrong else None


def _stop(stop: Mapping[str, Any]) -> tuple[Any, Any]:
    return stop.get("area"), stop.get("panel")


def _body(entry: Entry) -> Body:
    body = entry.payload["body"]
    assert isinstance(body, dict)  # the entry's form was checked
    return body
