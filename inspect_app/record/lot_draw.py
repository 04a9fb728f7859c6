"""Draw a lot: the body of its entry, ready to sign. The ticket decides; nobody chooses what is looked at."""

from inspect_app.record.calls_for import calls_for
from inspect_app.record.lot_plans import largest, lot_plans
from inspect_app.record.places import Roofs, lot_seed, places_of
from inspect_app.record.population import digest_of, rows_of, size_of
from inspect_app.record.tickets import owner_of
from inspect_app.rules.refused import Refused
from inspect_app.rules.roof import read_roof

STRICTEST_FIRST = ("tightened", "normal", "reduced")
FAILING = ("critical", "major", "minor")


def draw_lot(record: dict, asked: dict) -> dict:
    """``{"subject", "body"}`` of a lot entry.

    ``asked``: ``purpose crew day population`` [{``area``,``from``,``to``}], ``ticket``, ``definitions`` (compiled), and
    ``inspection``?, ``extends``?, ``reworks``?, ``note``?. Panels without a seam are left out. Raises Refused
    ``not_choice``, ``ticket_unreadable``, ``no_such_area``, ``no_such_panel``, ``bad_population``, ``nothing_to_draw``,
    ``one_area``, ``no_such_lot``, ``laxer`` and those of the plans.
    """
    purpose, ticket = asked["purpose"], asked["ticket"]
    if purpose not in ("work", "audit", "rework"):
        raise Refused("not_choice", "purpose", purpose)
    owner = owner_of(ticket)
    if owner is None:
        raise Refused("ticket_unreadable", "ticket", ticket.get("n"))
    named = [_row(record, row) for row in asked["population"]]
    named = sorted([row for row in named if row["from"] <= row["to"]], key=lambda row: (row["area"], row["from"]))
    if not named:
        raise Refused("nothing_to_draw", "population", None)
    rows = rows_of(named)
    if rows is None:
        raise Refused("bad_population", "population", None)
    if purpose != "audit" and len(rows) != 1:
        raise Refused("one_area", "population", len(rows))
    for name in ("extends", "reworks"):
        if asked.get(name) is not None and asked[name] not in record["lots"]:
            raise Refused("no_such_lot", name, asked[name])
    sampling = record["sampling"]
    inspection = _inspection(record, asked, named)
    plans = lot_plans(size_of(rows), purpose, inspection, sampling)
    body = {
        "purpose": purpose, "crew": asked["crew"], "day": asked["day"], "population": named, "size": size_of(rows),
        "population_digest": digest_of(rows),
        "ticket": {name: ticket[name] for name in ("series", "n", "random", "statement")},
        "inspection": inspection, "plans": plans, "n": largest(plans), "places": sampling["places"],
        "night_places": sampling["night_places"], "asks": asks_of(record, asked["definitions"], named),
        "placements": _placements(record, rows) if purpose == "audit" else [],
    }  # fmt: skip
    for name in ("extends", "reworks", "note"):
        if asked.get(name) is not None:
            body[name] = asked[name]
    return {"subject": owner + "/" + str(ticket["series"]) + "/" + str(ticket["n"]), "body": body}


def places(record: dict, lot_id: str, panel: int, count: int, area: "str | None" = None) -> list:
    """The drawn places of any panel of a lot, as ``drawn[].places`` gives them. Raises Refused ``no_such_lot``."""
    lot = record["lots"].get(lot_id)
    if lot is None:
        raise Refused("no_such_lot", "lot", lot_id)
    bodies = dict(record["layouts"])
    for name in ("areas", "assemblies"):
        for thing in record[name].values():
            bodies[thing["digest"]] = thing
    roof = Roofs(bodies).of(lot, area or lot["population"][0]["area"])
    return places_of(roof, lot_seed(lot_id, lot) or b"", panel, count)


def _row(record: dict, row: dict) -> dict:
    """A row of the population with the versions it is drawn on, up to the last panel that has a seam."""
    area = record["areas"].get(row["area"])
    assembly = record["assemblies"].get((area or {}).get("assembly"))
    if area is None or assembly is None:
        raise Refused("no_such_area", "population", row["area"])
    try:
        there = read_roof(area, assembly).count
    except Refused:
        raise Refused("no_such_area", "population", row["area"]) from None
    for name in ("from", "to"):
        if type(row[name]) is not int or not 1 <= row[name] <= there:
            raise Refused("no_such_panel", "panel", row[name])
    if row["from"] > row["to"]:
        raise Refused("bad_population", "population", row["from"])
    return {
        "area": area["id"], "from": row["from"], "to": min(row["to"], there - 1), "area_entry": area["digest"],
        "assembly_entry": assembly["digest"],
    }  # fmt: skip


def _inspection(record: dict, asked: dict, named: list) -> str:
    """What the crew's series calls for, or the stricter that a person chose."""
    calls = "normal"
    if asked["purpose"] == "work":
        calls = calls_for(record, asked["crew"], named[0]["area"], asked["day"])
    calls = "tightened" if calls == "stopped" else calls
    chosen: str = asked.get("inspection") or calls
    if chosen not in STRICTEST_FIRST:
        raise Refused("not_choice", "inspection", chosen)
    if STRICTEST_FIRST.index(chosen) > STRICTEST_FIRST.index(calls):
        raise Refused("laxer", "inspection", chosen)
    return chosen


def asks_of(record: dict, definitions: list, named: list) -> dict:
    """What is asked at each place, by severity: what can fail of every definition that is answered place by place, as
    far as it speaks of what is fastened there."""
    fastened = [record["assemblies"][record["areas"][row["area"]]["assembly"]].get("attachment") for row in named]
    asks: dict = {}
    for definition in definitions:
        if definition["per"] != "station" or not _applies(definition, fastened):
            continue
        for item in definition["items"]:
            if item["severity"] in FAILING and _applies(item, fastened):
                asks.setdefault(item["severity"], []).append(definition["id"] + "/" + item["id"])
    return {severity: sorted(asks[severity]) for severity in asks}


def _applies(thing: dict, fastened: list) -> bool:
    wanted = (thing.get("applies") or {}).get("attachment")
    return not wanted or any(one in wanted for one in fastened)


def _placements(record: dict, rows: list) -> list:
    """The entries that an audit's population rests on: every mark and walk that set panels of its areas."""
    areas = {row[0]: True for row in rows}
    found: dict = {}
    for lot in record["lots"].values():
        if lot["purpose"] == "work" and any(row["area"] in areas for row in lot["population"]):
            found.update(dict.fromkeys(lot["marks"], True))
    for walk in record["walks"].values():
        if any(row["area"] in areas for row in walk.get("placed") or []):
            found[walk["digest"]] = True
    return sorted(found)
