"""What the drawn places of one panel show, by severity. Places chosen by hand are never among them."""

SEVERITIES = ("critical", "major", "minor")
DECIDED = ("pass", "fail", "not_applicable")
NOT_SEEN = ("covered", "unsafe")


def given_at(answers: dict) -> dict:
    """``{station id: {"definition id/item id": answer}}`` of all answers given at a station."""
    found: dict = {}
    for subject in sorted(answers):
        station = answers[subject].get("station")
        if station is not None and subject[: len(station) + 1] == station + "/":
            found.setdefault(station, {})[subject[len(station) + 1 :]] = answers[subject]
    return found


def panel_result(places: list, asks: dict, found: dict, stations: dict) -> dict:
    """``{severity: "good" | "bad" | "unknown"}`` of one panel; a severity of which nothing is asked and nothing failed
    is left out.

    ``places``: the panel's drawn places, each with ``station`` (id or None) and ``state``. ``asks``: ``{severity:
    ["definition id/item id"]}`` of the lot. ``found``: as ``given_at`` tells. Bad: anything of that severity failed at
    any place. Good: every place was looked at and everything asked there decided. Unknown: all else, with a place not
    reached, an item unanswered, not determinable or too close, and a place where nothing asked applied.
    """
    results = {}
    for severity in SEVERITIES:
        at_places = [_at_place(place, severity, asks, found, stations) for place in places]
        if "bad" in at_places:
            results[severity] = "bad"
        elif asks.get(severity):
            results[severity] = "unknown" if "unknown" in at_places or not places else "good"
    return results


def _at_place(place: dict, severity: str, asks: dict, found: dict, stations: dict) -> str:
    given = found.get(place.get("station")) or {}
    asked = asks.get(severity) or []
    unplaced = False
    for name in given:
        if given[name]["result"] == "fail":
            own = severity_of(name, given[name], asks)
            if own == severity:
                return "bad"
            unplaced = unplaced or own is None
    if unplaced or not _looked_at(place, stations):
        return "unknown"
    results = [given[name]["result"] if name in given else None for name in asked]
    if [result for result in results if result not in DECIDED]:
        return "unknown"
    return "good" if not asked or "pass" in results else "unknown"


def severity_of(name: str, answer: dict, asks: dict) -> "str | None":
    """That under which the draw asked for the item, else the answer's own; None where neither tells."""
    for severity in SEVERITIES:
        if name in (asks.get(severity) or []):
            return severity
    own: str | None = answer.get("severity")
    return own


def _looked_at(place: dict, stations: dict) -> bool:
    station = stations.get(place.get("station"))
    return station is not None and station.get("reached") == "yes" and place.get("state") not in NOT_SEEN
