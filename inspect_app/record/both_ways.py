"""From a failed panel both ways: how many good panels running stand on each side of it."""

from inspect_app.record.panel_result import SEVERITIES, panel_result, severity_of

WANTED = 3  # good panels running on each side; common practice, no source


def both_ways(lot: dict, there: dict, found: dict, stations: dict, end: int) -> list:
    """``[{"panel", "severity", "toward_start", "toward_end", "bounded"}]`` for every panel of a lot of work on which
    something failed, by panel and severity.

    ``there``: ``{panel: [station ids]}`` of the lot's area, of looks by this lot or by none; ``found``: as ``given_at``
    tells; ``end``: the last panel set on the area that has a seam. From the failed panel outward, until three panels
    running are good, a panel that nobody looked at is met, or all that is set is passed: another failed panel begins
    the count anew. Looks count that were taken for this (``both_ways``), and drawn panels that were good. ``bounded``:
    each side has its three, or no panel left to look at.
    """
    if lot["purpose"] != "work" or not lot["population"]:
        return []
    row = lot["population"][0]
    drawn = {panel["panel"]: panel["results"] for panel in lot["drawn"] if panel.get("panel") is not None}
    told = []
    for panel in sorted(there):
        if not row["from"] <= panel <= row["to"]:
            continue
        for severity in _failed(there[panel], found, lot["asks"] or {}):
            sides = [
                _running(panel, step, end, severity, lot, there, drawn, found, stations) for step in (-1, 1)
            ]
            told.append({
                "panel": panel, "severity": severity, "toward_start": sides[0][0], "toward_end": sides[1][0],
                "bounded": sides[0][1] and sides[1][1],
            })  # fmt: skip
    return told


def _failed(here: list, found: dict, asks: dict) -> list:
    failed: dict = {}
    for station in here:
        given = found.get(station) or {}
        for name in given:
            if given[name]["result"] == "fail":
                failed[severity_of(name, given[name], asks)] = True
    return [severity for severity in SEVERITIES if severity in failed]


def _running(panel: int, step: int, end: int, severity: str, lot: dict, there: dict, drawn: dict, found: dict,
             stations: dict) -> tuple:  # fmt: skip
    """``(good panels running, whether nothing is left to look at on this side)``."""
    running, at = 0, panel + step
    while 1 <= at <= end and running < WANTED:
        result = _result(at, severity, lot, there, drawn, found, stations)
        if result not in ("good", "bad"):
            return running, False
        running = running + 1 if result == "good" else 0
        at += step
    return running, True


def _result(panel: int, severity: str, lot: dict, there: dict, drawn: dict, found: dict,
            stations: dict) -> "str | None":  # fmt: skip
    asks = lot["asks"] or {}
    if severity in _failed(there.get(panel, []), found, asks):
        return "bad"
    taken = [one for one in there.get(panel, []) if stations[one].get("chosen") == "both_ways"]
    results = panel_result([{"station": one} for one in taken], asks, found, stations) if taken else {}
    for told in (results, drawn.get(panel) or {}):
        # A severity that nobody is asked about is good where all else is.
        values = [told[severity]] if severity in told else [told[one] for one in told]
        if values and values.count("good") == len(values):
            return "good"
    return None
