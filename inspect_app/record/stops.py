"""The drawn panels of a lot: sealed until one panel ahead, then offered, looked at, or covered."""

from inspect_app.record.authority import objection
from inspect_app.record.looks import Looks
from inspect_app.record.marks import covered
from inspect_app.record.places import Roofs, lot_seed, places_of
from inspect_app.record.population import member, size_of
from inspect_app.record.ranges import holds
from inspect_app.rules.draw import draw


def drawn_panels(lot_id: str, body: dict, rows: "list | None") -> list:
    """``[(area, panel)]`` in the order drawn, from what the lot itself says; empty for a lot that says nothing to draw
    from."""
    seed, n = lot_seed(lot_id, body), body.get("n")
    if not rows or seed is None or type(n) is not int or n < 0:
        return []
    there = size_of(rows)
    return [member(rows, index) for index in draw(there, min(n, there), seed)]


def offered(grouped: dict, people: dict) -> dict:
    """``{(lot, panel): "attended" | "not_attended"}`` by those who may say so; of two, that somebody came."""
    found: dict = {}
    for subject in sorted(grouped):
        for entry in grouped[subject]["heads"]:
            body = entry["payload"]["body"]
            if not objection(entry, people) and found.get((body.get("lot"), body.get("panel"))) != "attended":
                found[(body.get("lot"), body.get("panel"))] = body.get("outcome")
    return found


def stops(lot: dict, rows: "list | None", day: dict, roofs: Roofs, looks: Looks, said: dict,
          least: int) -> list:  # fmt: skip
    """The record's ``drawn`` of one lot, ``results`` still to be told; on each panel the places that the lot states,
    and ``least`` at least: what every version of the job asks for is not the lot's to choose.

    ``day``: ``own`` ranges set under this lot, ``placed`` under any of its area, ``reached`` the last panel set (the
    one before the first where none is). ``said``: as of :func:`offered`.
    """
    seed = lot_seed(lot["id"], lot) or b""
    drawn: list = []
    for area, panel in drawn_panels(lot["id"], lot, rows):
        stop: dict = {"order": len(drawn), "state": "sealed", "results": {}}
        drawn.append(stop)
        # Who looked at a leg has shown that it was set, whatever the marks say that have arrived.
        there = lot["purpose"] != "work" or holds(day["own"], panel) or looks.drawn_at(lot["id"], area, panel)
        if not there and not lot["closed"] and panel > day["reached"] + 1:
            continue
        stop["area"], stop["panel"] = area, panel
        stop["places"] = places_of(roofs.of(lot, area), seed, panel, max(lot["places"], least))
        looks.fill(lot, area, panel, stop["places"])
        if lot["purpose"] != "work":
            stop["state"] = _audited(stop["places"])
        elif there:
            stop["state"] = _state(stop["places"], covered(day["placed"], panel), said.get((lot["id"], panel)))
        else:
            stop["state"] = "dropped" if lot["closed"] else "next"
    return drawn


def _state(places: list, hidden: bool, told: "str | None") -> str:
    states = [place["state"] for place in places]
    if states and all(state == "looked" for state in states):
        return "looked"
    if "looked" in states or "part" in states:
        return "part" if hidden else "due"
    if states and all(state == "unsafe" for state in states):
        return "unsafe"
    if told == "not_attended":
        return "not_attended"
    if not hidden:
        return "due"
    return "unsafe" if "unsafe" in states else "covered"


def _audited(places: list) -> str:
    """What can still be seen waits for nobody: a place nobody has come to is due."""
    states = [place["state"] for place in places]
    if "open" in states:
        return "due"
    if states and all(state == "looked" for state in states):
        return "looked"
    if "looked" in states or "part" in states:
        return "part"
    return "unsafe" if "unsafe" in states else "covered"
