"""What is odd about lots, marks and looks: facts beside the record, which keeps everything all the same."""

from inspect_app.record.looks import Looks
from inspect_app.record.lot_days import Days
from inspect_app.record.lot_plans import as_computed, laxer_than
from inspect_app.record.marks import Marks
from inspect_app.record.places import Roofs, row_of
from inspect_app.record.population import digest_of, size_of
from inspect_app.record.releases import Releases
from inspect_app.record.sampling import sampling
from inspect_app.record.tickets import ticket_flags
from inspect_app.rules.day_number import day_number
from inspect_app.rules.refused import Refused


def lot_flags(
    record: dict, grouped: dict, days: Days, roofs: Roofs, marks: Marks, looks: Looks, releases: Releases, late: list
) -> list:
    """``[(digest, code, facts)]``. ``late``: photos of legs that came after the cover.

    ``ticket_…``: see ``tickets``. ``lot_laxer``: fewer panels or places, or more allowed to be bad, than any version of
    the job asks for (a laxer inspection than the crew's series is flagged where lots are decided). ``draw_differs``:
    population, size, digest, plans or number are not what the rules give. ``same_panels``: two lots of work over panels
    that both may be drawn from. ``panel_beyond_area``. ``mark_taken_back``: a mark corrected downwards, or to another
    lot; what was drawn in between had been shown. ``lot_unknown``. ``looked_after_cover``. ``released_unseen``.
    ``place_not_drawn``: it is said to be drawn, and is not, or is no more. ``day_not_its_own``: a lot of work for a day
    other than the one it was drawn on or the next, which may stand before or after a switch of inspection.
    """
    found = ticket_flags(grouped.get("lot", {}), record["lots"])
    choices = [
        sampling(entry["payload"]["body"])
        for group in grouped.get("job", {}).values() for entry in group["all"]
    ]
    areas = {entry["digest"]: area for area, group in grouped.get("area", {}).items() for entry in group["all"]}
    for subject in sorted(record["lots"]):
        found += _of_lot(record["lots"][subject], days, choices, areas)
        found += _of_day(record["lots"][subject])
    found += _same_panels(record["lots"], days)
    for root in sorted(marks.of):
        found += _of_marks(marks.of[root], days.day(root))
    for digest, other, to in marks.moved:
        found.append((digest, "mark_taken_back", {"other": other, "from": to, "to": 0}))
    found += _unknown(record["lots"], grouped, marks.unknown + releases.unknown)
    found += [(digest, "looked_after_cover", {}) for digest in late]
    for at in looks.at:
        for look in looks.at[at]:
            if look["late"] and look["reached"] == "yes":
                found.append((look["digest"], "looked_after_cover", {"other": look["station"]}))
    for lot_id in looks.claims:
        lot = record["lots"].get(lot_id)
        for look in looks.claims[lot_id] if lot else []:
            known = row_of(lot, look["area"]) == {} or roofs.of(lot, look["area"]) is not None
            if known and not look["placed"]:
                found.append((look["digest"], "place_not_drawn", {"other": lot_id}))
    found += _moved_looks(record, grouped)
    for lot in record["lots"].values():
        for one in lot["holds"]:
            if one["unseen"]:
                found.append((one["release"], "released_unseen", {"other": lot["id"], "panel": one["panel"]}))
    return found


def _of_day(lot: dict) -> list:
    try:
        apart = day_number(str(lot["day"]), "day") - day_number(lot["at"][:10], "at")
    except Refused:
        return []
    if lot["purpose"] != "work" or apart in (0, 1):
        return []
    return [(lot["digest"], "day_not_its_own", {"other": lot["id"], "day": lot["day"], "at": lot["at"][:10]})]


def _of_lot(lot: dict, days: Days, choices: list, areas: dict) -> list:
    found: list = []
    rows = days.rows[lot["id"]]
    for row in lot["population"]:
        if areas.get(row["area_entry"], row["area"]) != row["area"]:
            found.append((lot["digest"], "draw_differs", {"other": row["area"]}))
    same = bool(rows) and lot["size"] == size_of(rows) and lot["population_digest"] == digest_of(rows)
    if not same or not as_computed(lot) or (lot["purpose"] != "audit" and len(rows) != 1):
        found.append((lot["digest"], "draw_differs", {}))
    if lot.get("extends") in days.lots and lot["purpose"] == "work" and days.marks.roots.get(lot["id"]) == lot["id"]:
        found.append((lot["digest"], "draw_differs", {"other": lot["extends"]}))  # of another crew, day or area
    for area, _, high in rows:
        there = days.panels(lot, area)
        if there is not None and high >= there:
            code = "panel_beyond_area" if high > there else "draw_differs"  # the last panel has no seam
            found.append((lot["digest"], code, {"other": area, "panel": high}))
    if choices and all(laxer_than(lot, choice) for choice in choices):
        found.append((lot["digest"], "lot_laxer", {}))
    return found


def _moved_looks(record: dict, grouped: dict) -> list:
    """A look said to be at a drawn place and moved from there since: what was found there left the figures with it."""
    found = []
    for subject in sorted(record["stations"]):
        station = record["stations"][subject]
        for entry in grouped["station"][subject]["all"]:
            body = entry["payload"]["body"]
            if body.get("chosen") == "drawn" and body.get("lot") in record["lots"] and any(
                body.get(name) != station.get(name) for name in ("chosen", "lot", "area", "panel", "from_low_end")
            ):
                found.append((entry["digest"], "place_not_drawn", {"other": body["lot"]}))
    return found


def _of_marks(marks: list, day: dict) -> list:
    found = []
    for mark in marks:
        if day["count"] is not None and mark["to"] > day["count"]:
            found.append((mark["digest"], "panel_beyond_area", {"other": mark["area"], "panel": mark["to"]}))
        for _, _, to, digest in mark["versions"]:
            if to > mark["to"]:
                found.append((mark["digest"], "mark_taken_back", {"other": digest, "from": to, "to": mark["to"]}))
    return found


def _same_panels(lots: dict, days: Days) -> list:
    """A panel that its lot never came to may be planned again on a later day; all else is drawn from twice."""
    found = []
    for area in sorted(days.lots_at):
        here = sorted([(lots[one]["day"], one) for one in days.lots_at[area]])
        for at in range(len(here)):
            for day, later in here[at + 1 :]:
                earlier = here[at][1]
                _, low, high = days.rows[earlier][0]
                if day > here[at][0] and lots[earlier]["placed_to"] is not None:
                    high = min(high, lots[earlier]["placed_to"])
                if max(low, days.rows[later][0][1]) <= min(high, days.rows[later][0][2]):
                    found.append((lots[earlier]["digest"], "same_panels", {"other": later}))
                    found.append((lots[later]["digest"], "same_panels", {"other": earlier}))
    return found


def _unknown(lots: dict, grouped: dict, entries: list) -> list:
    """What speaks of a lot that is not here; it may still come."""
    found = [(entry["digest"], "lot_unknown", {"other": entry["payload"]["body"].get("lot")}) for entry in entries]
    for kind in ("stop", "station", "photo"):
        for group in grouped.get(kind, {}).values():
            for entry in group["all"]:
                named = entry["payload"]["body"].get("lot")
                if named is not None and named not in lots:
                    found.append((entry["digest"], "lot_unknown", {"other": named}))
    for lot in lots.values():
        for name in ("extends", "reworks"):
            if lot.get(name) is not None and lot[name] not in lots:
                found.append((lot["digest"], "lot_unknown", {"other": lot[name]}))
    return found
