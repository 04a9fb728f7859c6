"""What opens a finding: a failed answer by itself, so that nobody can forget to write it down, or somebody by hand."""

from inspect_app.record.authority import objection
from inspect_app.record.moment import moment
from inspect_app.record.panel_result import SEVERITIES, severity_of
from inspect_app.record.roof_calls import place_at
from inspect_app.rules.refused import Refused
from inspect_app.rules.roof import read_roof


def from_answers(record: dict, grouped: dict) -> dict:
    """``{answer subject: finding}`` for each answer that was ever ``fail``.

    An answer that is no longer ``fail`` keeps its finding: ``withdrawn`` says who changed it, ``{"digest", "by",
    "at"}``, else None. ``severities``: those of every failing version and of the draw that asked for it; None among
    them where nobody told. ``required`` is ``{"rule", "inputs", "values", "reason"}`` of the verdict as it was shown,
    ``found`` ``{"choice", "reading", "note"}``."""
    found = {}
    for subject in sorted(record["answers"]):
        answer = record["answers"][subject]
        if "fail" in [one["result"] for one in answer["versions"]]:
            found[subject] = _from_answer(record, answer, grouped["answer"][subject]["all"])
    return found


def by_hand(record: dict, grouped: dict, people: dict) -> dict:
    """``{finding id: finding}`` of the ``finding`` entries, in the same shape; ``required`` and ``found`` are the words
    of whoever opened it. Of several heads by people who may, the severest lends its body (of none, any); ``heads`` is
    how many they are."""
    found = {}
    roofs: dict = {}
    for subject in sorted(grouped.get("finding", {})):
        group = grouped["finding"][subject]
        first = _first(group["all"])
        may = [one for one in group["heads"] if not objection(one, people)]
        heads = [
            (-_rank(one["payload"]["body"].get("severity")), one["digest"], one) for one in may or group["heads"]
        ]  # fmt: skip
        body = max(heads)[2]["payload"]["body"]
        station = record["stations"].get(body.get("station")) or {}
        place = {name: body.get(name, station.get(name)) for name in ("area", "panel", "from_low_end", "zone")}
        if place["area"] is None:
            place["area"] = station.get("area")
        if place["zone"] is None:
            place["zone"] = _zone(record, place, roofs)
        found[subject] = {
            "id": subject, "source": "hand", "opened": _told(first), "walk": body.get("walk"),
            "station": body.get("station"), "area": place["area"], "panel": place["panel"],
            "from_low_end": place["from_low_end"], "zone": place["zone"], "definition": None, "item": None,
            "severity": body.get("severity"), "result": "fail", "required": body.get("required"),
            "found": body.get("found"), "photos": list(body.get("photos") or []), "withdrawn": None, "rule": None,
            "severities": [one["payload"]["body"].get("severity") for one in group["all"]], "versions": group["all"],
            "heads": len(may),
        }  # fmt: skip
    return found


def _from_answer(record: dict, answer: dict, versions: list) -> dict:
    failing = [entry for entry in versions if _result(entry) == "fail"]
    live = answer["result"] == "fail"
    body = answer if live else _last(failing)["payload"]["body"]
    station = record["stations"].get(answer.get("station")) or {}
    verdict = body.get("verdict") or {}
    severities = [entry["payload"]["body"].get("severity") for entry in failing]
    lot = record["lots"].get(station.get("lot"))
    if lot:  # the draw asked for the item under a severity that no answer can lower
        severities.append(severity_of("/".join(answer["id"].split("/")[1:]), body, lot["asks"]))
    told = [one for one in severities if one in SEVERITIES]
    return {
        "id": answer["id"], "source": "answer", "opened": _told(_first(failing)), "walk": answer["walk"],
        "station": answer["station"], "area": answer["area"], "panel": station.get("panel"),
        "from_low_end": station.get("from_low_end"), "zone": station.get("zone"), "definition": answer["definition"],
        "item": answer["item"], "severity": SEVERITIES[min([_rank(one) for one in told])] if told else None,
        "result": answer["result"],
        "required": {name: verdict.get(name) for name in ("rule", "inputs", "values", "reason")},
        "found": {name: body.get(name) for name in ("choice", "reading", "note")},
        "photos": list(body.get("photos") or []), "rule": verdict.get("rule"), "severities": severities,
        "withdrawn": None if live else {name: answer[name] for name in ("digest", "by", "at")}, "versions": versions,
    }  # fmt: skip


def _result(entry: dict) -> "str | None":
    result: str | None = (entry["payload"]["body"].get("verdict") or {}).get("result")
    return result


def _first(entries: list) -> dict:
    """Of the versions that correct none of the others, the one said first."""
    digests = {entry["digest"] for entry in entries}
    roots = [entry for entry in entries if not any(old in digests for old in entry["payload"]["replaces"])]
    found: dict = min([(moment(entry["payload"]["at"]), entry["digest"], entry) for entry in roots or entries])[2]
    return found


def _last(entries: list) -> dict:
    """Of the versions that none of the others corrects, the one said last."""
    gone = {old for entry in entries for old in entry["payload"]["replaces"]}
    tips = [entry for entry in entries if entry["digest"] not in gone]
    found: dict = max([(moment(entry["payload"]["at"]), entry["digest"], entry) for entry in tips or entries])[2]
    return found


def _told(entry: dict) -> dict:
    return {"digest": entry["digest"], "by": entry["payload"]["by"], "at": entry["payload"]["at"]}


def _rank(severity: "str | None") -> int:
    return SEVERITIES.index(severity) if severity in SEVERITIES else len(SEVERITIES)


def _zone(record: dict, place: dict, roofs: dict) -> "str | None":
    """The zone at a place somebody named by panel and distance; None where the roof does not tell. ``roofs``: those
    read so far."""
    area = record["areas"].get(place["area"])
    if area is None or place["panel"] is None or place["from_low_end"] is None:
        return None
    try:
        if area["id"] not in roofs:
            roofs[area["id"]] = None
            roofs[area["id"]] = read_roof(area, record["assemblies"].get(area.get("assembly")))
        roof = roofs[area["id"]]
        zone: str | None = place_at(roof, place["panel"], place["from_low_end"])["zone"] if roof else None
    except Refused:
        return None
    return zone
