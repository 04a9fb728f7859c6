"""The place's own panel and its neighbors, two each side: what failed is torn, they still show how it was fastened."""

from inspect_app.record.circle import Circle
from inspect_app.record.ranges import holds

SIDES = 2  # common practice, no source


def beside(record: dict, circle: Circle, days: list) -> list:
    """``[{"panel","state","set" [{"day","crew"}],"looked","not_reached","findings"}]`` from the lowest number to the
    highest, of those that the area has. ``state``: the coverage's word, None where nothing is known; ``looked``: places
    that somebody reached; ``findings``: ids."""
    last = circle.roof(circle.area).count if circle.drawn else circle.panel + SIDES
    runs = (record["coverage"].get(circle.area) or {}).get("runs") or []
    told = []
    for panel in range(max(circle.panel - SIDES, 1), min(circle.panel + SIDES, last) + 1):
        here = [one for one in record["stations"].values() if _is_on(one, circle.area, panel)]
        found = [key for key in sorted(record["findings"]) if _is_on(record["findings"][key], circle.area, panel)]
        states = [run["state"] for run in runs if run["from"] <= panel <= run["to"]]
        told.append({
            "panel": panel, "state": states[0] if states else None,
            "set": [{"day": one["day"], "crew": one["crew"]} for one in days
                    if one["area"] == circle.area and holds(one["panels"], panel)],
            "looked": len([1 for one in here if one["reached"] == "yes"]),
            "not_reached": len([1 for one in here if one["reached"] != "yes"]), "findings": found,
        })  # fmt: skip
    return told


def _is_on(thing: dict, area: str, panel: int) -> bool:
    return thing.get("area") == area and thing.get("panel") == panel
