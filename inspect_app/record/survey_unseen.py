"""What nobody ever saw around a place: silence is told as plainly as words are."""

from inspect_app.record.circle import Circle
from inspect_app.rules.refused import Refused
from inspect_app.rules.stations import legs

MOST = 20000  # places counted one by one: a survey of more is a survey of the whole roof
NOT_SEEN = ("covered", "unsafe", "not_attended", "dropped", "part")


def unseen(record: dict, part: dict, circle: Circle, kept: dict) -> dict:
    """``{"panels" [{"area","from","to","state"}], "places" {"there","looked_at","left"} or None,
    "drawn" [{"lot","area","panel","state"}], "not_reached" [station ids]}``.

    ``panels``: every panel of the survey by the coverage's word. ``places``: fasteners' places within the radius by the
    drawing as it stands, and how many of them somebody reached; None where the drawing does not tell or they are too
    many. ``drawn``: panels that a lot had drawn and that were not looked at whole.
    """
    panels: list = []
    for area in sorted(kept["panels"]):
        for run in (record["coverage"].get(area) or {}).get("runs") or []:
            for number in kept["panels"][area]:
                if run["from"] <= number <= run["to"]:
                    _go_on(panels, area, number, run["state"])
    drawn = [
        {"lot": key, "area": stop["area"], "panel": stop["panel"], "state": stop["state"]}
        for key in sorted(part["lots"]) for stop in part["lots"][key]["drawn"]
        if stop["state"] in NOT_SEEN and stop.get("panel") in kept["panels"].get(stop.get("area"), [])
    ]  # fmt: skip
    away = [key for key in sorted(part["stations"]) if part["stations"][key]["reached"] != "yes"]
    return {"panels": panels, "places": _places(part, circle, kept), "drawn": drawn, "not_reached": away}


def _go_on(panels: list, area: str, number: int, state: str) -> None:
    last = panels[-1] if panels else None
    if last and last["area"] == area and last["state"] == state and last["to"] == number - 1:
        last["to"] = number
    else:
        panels.append({"area": area, "from": number, "to": number, "state": state})


def _places(part: dict, circle: Circle, kept: dict) -> "dict | None":
    there, seen, total = 0, 0, 0
    looked: dict = {}
    for one in part["stations"].values():
        if one["reached"] == "yes":
            looked.setdefault((one["area"], one["panel"]), []).append(one)
    for area in sorted(kept["panels"]):
        roof = circle.roof(area)
        if roof is None or roof.closest is None:
            return None
        for number in kept["panels"][area]:
            try:
                along = legs(roof, number)
            except Refused:
                continue
            total += sum([count for _, _, count, _ in along])
            if total > MOST:
                return None
            own = [circle.height(area, one) for one in looked.get((area, number), [])]
            for first, spacing, count, _ in along:
                for at in range(count):
                    y = first + at * spacing
                    distance = circle.spot(area, number, y)
                    if distance is not None and circle.holds(distance):
                        there += 1
                        # A look speaks of the first fastener at it or up-slope of it.
                        if [1 for one in own if one is not None and y - spacing < one <= y + spacing * 1e-6]:
                            seen += 1
    return {"there": there, "looked_at": seen, "left": there - seen}
