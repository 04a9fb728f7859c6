"""What is known of every panel of an area, without make-up: looked at, photographed, offered, released or unseen."""

from inspect_app.record.looks import Looks, reworked
from inspect_app.record.lot_days import Days
from inspect_app.record.marks import covered
from inspect_app.record.ranges import holds

# Strongest first: a panel is what stands first here of all that it is.
STATES = ("looked_at", "photographed", "offered", "released", "waiting", "covered_unseen", "open", "to_come", "no_seam")


def coverage(record: dict, told: dict) -> dict:
    """``{area: {"panels": n | None, "runs": [{"from", "to", "state"}], "counts": {state: n}}}`` of every area.

    ``told``: what ``fold_lots`` returned, of a record whose lots are decided. A panel that was drawn or held, and yet
    covered with nobody there, is no part of what its lot's acceptance speaks of: it is covered unseen.
    """
    days: Days = told["days"]
    seen = _seen(record, told["looks"], told["photos"], told["said"], days)
    found = {}
    for area in sorted(record["areas"]):
        count = record["areas"][area].get("panel_count")
        placed = days.placed.get(area, [])
        alone = seen.get(area, {})
        cuts = _cuts(count, placed, alone, days, area)
        runs: list = []
        for at in range(len(cuts) - 1):
            state = alone.get(cuts[at]) or _state(record, area, cuts[at], count, placed, days)
            if runs and runs[-1]["state"] == state:
                runs[-1]["to"] = cuts[at + 1] - 1
            else:
                runs.append({"from": cuts[at], "to": cuts[at + 1] - 1, "state": state})
        counts: dict = {}
        for run in runs:
            counts[run["state"]] = counts.get(run["state"], 0) + run["to"] - run["from"] + 1
        found[area] = {"panels": count, "runs": runs, "counts": counts}
    return found


def _seen(record: dict, looks: Looks, photos: dict, said: dict, days: Days) -> dict:
    """``{area: {panel: state}}`` of the panels that something is said of one by one."""
    told: list = []
    for area, panel in looks.at:
        if looks.seen(area, panel):
            told.append((area, panel, "looked_at"))
    for area in photos:
        told += [(area, panel, "photographed") for panel in photos[area]]
    for lot in record["lots"].values():
        if lot["purpose"] != "work":
            continue
        day = days.day(lot["id"])
        for one in lot["holds"]:
            if one["release"] is not None and not one["unseen"] and one["state"] == "released":
                told.append((day["area"], one["panel"], "looked_at"))
            elif one["state"] == "covered_against" and covered(day["placed"], one["panel"]):
                told.append((day["area"], one["panel"], "covered_unseen"))
        for stop in lot["drawn"]:
            if stop["state"] in ("covered", "unsafe") and covered(day["placed"], stop["panel"]):
                told.append((stop["area"], stop["panel"], "covered_unseen"))
    drawn = {lot_id: [stop.get("panel") for stop in record["lots"][lot_id]["drawn"]] for lot_id in days.of}
    for lot_id, panel in said:  # nobody offers a panel that was not drawn
        if panel not in drawn.get(lot_id, []):
            continue
        if lot_id in days.of and type(panel) is int and holds(days.day(lot_id)["own"], panel):
            told.append((days.day(lot_id)["area"], panel, "offered"))
    found: dict = {}
    for area, panel, state in told:
        own = found.setdefault(area, {})
        if panel not in own or STATES.index(state) < STATES.index(own[panel]):
            own[panel] = state
    return found


def _cuts(count: "int | None", placed: list, alone: dict, days: Days, area: str) -> list:
    """Where a state may begin: between two cuts all panels are alike, so that the work never grows with the panels."""
    cuts = {1: True}
    for panel in alone:
        cuts[panel] = cuts[panel + 1] = True
    for low, high in placed:
        cuts[low] = cuts[high] = cuts[high + 1] = True
    for one in days.lots_at.get(area, []):
        for low, high in days.day(one)["planned"] + days.day(one)["own"]:
            cuts[low] = cuts[high + 1] = True
    if count is None:
        return sorted([cut for cut in cuts if cut >= 1])
    cuts[count] = cuts[count + 1] = True
    return sorted([cut for cut in cuts if 1 <= cut <= count + 1])


def _state(record: dict, area: str, panel: int, count: "int | None", placed: list, days: Days) -> str:
    if panel == count:
        return "no_seam"
    if not holds(placed, panel):
        return "to_come"
    if not covered(placed, panel):
        return "open"
    states = []
    for one in days.lots_at.get(area, []):
        day, (_, low, high) = days.day(one), days.rows[one][0]
        if low <= panel <= high and holds(day["own"], panel):
            states.append(_decided(record["lots"][one]))
    for lot in record["lots"].values():
        if reworked(record["lots"], lot, area, panel) and _decided(lot) == "released":
            return "released"
    for state in ("covered_unseen", "waiting", "released"):
        if state in states:
            return state
    return "covered_unseen"


def _decided(lot: dict) -> str:
    state = (lot.get("decision") or {}).get("state") or "open"
    chosen = lot.get("disposition") or {}
    if state == "accepted" or (chosen.get("stands") and chosen["choice"] == "accept"):
        return "released"
    return "waiting" if state == "open" else "covered_unseen"
