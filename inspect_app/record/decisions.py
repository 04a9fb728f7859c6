"""Decide every lot of the record, and say what the lots tell together."""

from inspect_app.record.audits import audits
from inspect_app.record.both_ways import both_ways
from inspect_app.record.decision import decide
from inspect_app.record.disposition import dispositions
from inspect_app.record.judged_plan import laxer
from inspect_app.record.lot_says import audit_says, lot_says, to_date_says
from inspect_app.record.panel_result import given_at, panel_result
from inspect_app.record.sampling import sampling
from inspect_app.record.series import series
from inspect_app.record.to_date import to_date


def fold_decisions(record: dict, grouped: dict, people: dict, flags: list) -> None:
    """Set ``results`` of every drawn panel, ``decision``, ``disposition``, ``failed`` and ``says`` of every lot, and
    the record's ``series``, ``to_date`` and ``audits``. The lots are as ``lots.fold_lots`` left them."""
    lots, stations, found = record["lots"], record["stations"], given_at(record["answers"])
    allowed = _allowed(grouped)
    chosen = dispositions(grouped.get("disposition", {}), people, flags)
    for lot_id in chosen:
        if lot_id not in lots:
            for digest in chosen[lot_id]["heads"]:
                flags.append({"digest": digest, "code": "lot_unknown", "facts": {"other": lot_id}})
    there, ends = _by_panel(stations), _ends(record)
    for lot_id in sorted(lots):
        lot = lots[lot_id]
        lot["disposition"] = chosen.get(lot_id)
        for panel in lot["drawn"]:
            panel["results"] = panel_result(panel.get("places") or [], lot["asks"], found, stations)
        lot["failed"] = _failed(lot, there, found, stations, ends)

    def judge(lot: dict, called_for: "str | None") -> dict:
        decision = decide(lot, record["sampling"], called_for, allowed)
        decision["lot"]["changed"] = _changed(lot, found)
        lot["decision"] = decision
        if laxer(lot["inspection"], called_for):
            flags.append({"digest": lot["digest"], "code": "lot_laxer", "facts": {"other": called_for}})
        return decision

    record["series"] = series(lots, _assemblies(record, grouped), record["sampling"], judge)
    for lot_id in sorted(lots):
        if lots[lot_id]["purpose"] != "work":
            judge(lots[lot_id], None)
    record["to_date"], record["audits"] = to_date(lots), audits(lots)
    _say(record)


def _allowed(grouped: dict) -> tuple:
    """What every version of the job chose, each choice once: a lot is not judged by what the job chose after it."""
    choices: list = []
    for group in grouped.get("job", {}).values():
        for entry in group["all"]:
            choice = sampling(entry["payload"]["body"])
            if choice not in choices:
                choices.append(choice)
    return tuple(choices)


def _by_panel(stations: dict) -> dict:
    """``{area: {panel: [station ids]}}``."""
    there: dict = {}
    for station in sorted(stations):
        one = stations[station]
        there.setdefault(one["area"], {}).setdefault(one["panel"], []).append(station)
    return there


def _ends(record: dict) -> dict:
    """The last panel set on each area that has a seam: the last of all is finished at an edge."""
    ends: dict = {}
    for lot in record["lots"].values():
        if lot["purpose"] == "work" and lot["population"] and lot.get("placed_to") is not None:
            area = lot["population"][0]["area"]
            count = (record["areas"].get(area) or {}).get("panel_count")
            last = lot["placed_to"] if count is None else min(lot["placed_to"], count - 1)
            ends[area] = max(ends.get(area, 0), last)
    return ends


def _failed(lot: dict, there: dict, found: dict, stations: dict, ends: dict) -> list:
    if lot["purpose"] != "work" or not lot["population"]:
        return []
    area = lot["population"][0]["area"]
    own: dict = {}
    for panel in there.get(area, {}):
        here = [one for one in there[area][panel] if stations[one].get("lot") in (None, lot["id"])]
        if here:
            own[panel] = here
    return both_ways(lot, own, found, stations, ends.get(area, 0))


def _changed(lot: dict, found: dict) -> int:
    """Answers at drawn places that once failed and stand as something else now."""
    changed = 0
    for panel in lot["drawn"]:
        for place in panel.get("places") or []:
            for answer in (found.get(place.get("station")) or {}).values():
                if answer["result"] != "fail" and [1 for one in answer["versions"] if one["result"] == "fail"]:
                    changed += 1
    return changed


def _assemblies(record: dict, grouped: dict) -> dict:
    """``{lot id: assembly id}`` by the assembly's entry that the lot names, else by its area as it stands."""
    of = {
        entry["digest"]: subject for subject in grouped.get("assembly", {})
        for entry in grouped["assembly"][subject]["all"]
    }  # fmt: skip
    found = {}
    for lot_id in record["lots"]:
        for row in record["lots"][lot_id]["population"][:1]:
            area = record["areas"].get(row["area"]) or {}
            found[lot_id] = of.get(row.get("assembly_entry")) or area.get("assembly")
    return found


def _say(record: dict) -> None:
    lots = record["lots"]
    decided = {one["lot"]: told["decided"] for told in record["series"].values() for one in told["lots"]}
    for lot_id in sorted(lots):
        for extension in lots[lot_id]["extensions"]:
            if lot_id in decided:
                decided[extension] = decided[lot_id]
    for lot_id in lots:
        lots[lot_id]["says"] = lot_says(lots[lot_id], record["sampling"], decided.get(lot_id))
    for severity in record["to_date"]:
        record["to_date"][severity]["says"] = to_date_says(record["to_date"][severity])
    for audit in record["audits"].values():
        audit["says"] = audit_says(audit)
