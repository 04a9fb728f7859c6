"""What the audit and the daily looks said of the same item on the same panel, pair by pair."""

from inspect_app.record.trend_filter import Filter, crew_key
from inspect_app.record.trend_rows import crews_at, who_set

CHANGED = ("corrected", "closed", "conceded", "withdrawn")
APART = ("same_person", "mended", "undecided")


def pairs(record: dict, wanted: Filter) -> dict:
    """``{"pairs": [pair], "apart": {reason: [pair]}}``, by area, panel and item.

    A pair: ``{"area", "panel", "item" (``definition id/item id``), "day" (of the audit's last answer), "foreman" and
    "audit": {"result" (``good`` ``bad``), "answers" [ids], "digests", "by"}}``. On each side it is bad if it failed
    anywhere on the panel, good if it passed and nothing was left undecided. The audit's looks are those of its lots and
    of walks that call themselves independent; all others but those after rework are the foreman's, drawn or chosen.

    Set apart, and counted in nothing: ``same_person`` (somebody on both sides: no second opinion), ``mended`` (the
    foreman's finding was taken up before, or the panel was worked over: the audit saw something else), ``undecided``
    (one side could not tell, or it did not apply).
    """
    seen: dict = {}
    reworked = _reworked(record)
    for subject in sorted(record["answers"]):
        answer = record["answers"][subject]
        station = record["stations"].get(answer.get("station"))
        name = subject[len(answer["station"]) + 1 :] if station else ""
        if station is None or answer.get("severity") == "record" or station["reached"] != "yes":
            continue
        if wanted.takes("item", name) and wanted.takes("severity", answer.get("severity")):
            side = _side(record, station)
            if side:
                both = seen.setdefault((station["area"], station["panel"], name), {"foreman": [], "audit": []})
                both[side].append(answer)
    setters = crews_at(record)
    told: dict = {"pairs": [], "apart": {reason: [] for reason in APART}}
    for area, panel, name in sorted(seen):
        both = seen[(area, panel, name)]
        if not both["foreman"] or not both["audit"]:
            continue
        pair = {
            "area": area, "panel": panel, "item": name, "day": max([one["at"] for one in both["audit"]])[:10],
            "foreman": _said(both["foreman"]), "audit": _said(both["audit"]),
        }  # fmt: skip
        if not _wanted(record, pair, setters, wanted):
            continue
        again = [1 for there, low, high in reworked if there == area and low <= panel <= high]
        reason = _apart(record, pair, both["foreman"], bool(again))
        (told["apart"][reason] if reason else told["pairs"]).append(pair)
    return told


def _side(record: dict, station: dict) -> "str | None":
    lot = record["lots"].get(station.get("lot"))
    walk = record["walks"].get(station["walk"]) or {}
    if (lot and lot["purpose"] == "audit") or walk.get("independent") is True:
        return "audit"
    return None if lot and lot["purpose"] == "rework" else "foreman"


def _said(answers: list) -> dict:
    results = [one["result"] for one in answers]
    left = [one for one in results if one not in ("pass", "fail", "not_applicable")]
    result = "bad" if "fail" in results else "good" if "pass" in results and not left else None
    return {
        "result": result, "answers": [one["id"] for one in answers], "digests": [one["digest"] for one in answers],
        "by": sorted({one["by"]: True for one in answers}),
    }  # fmt: skip


def _wanted(record: dict, pair: dict, setters: dict, wanted: Filter) -> bool:
    area = record["areas"].get(pair["area"]) or {}
    crew = crew_key(who_set(setters, pair["area"], pair["panel"]))
    return (
        wanted.in_days(pair["day"]) and wanted.takes("area", pair["area"]) and wanted.takes("crew", crew)
        and wanted.takes("assembly", area.get("assembly"))
    )  # fmt: skip


def _apart(record: dict, pair: dict, foreman: list, reworked: bool) -> "str | None":
    if [1 for one in pair["audit"]["by"] if one in pair["foreman"]["by"]]:
        return "same_person"
    for answer in foreman:
        finding = record["findings"].get(answer["id"])
        if reworked or (finding and finding["state"] in CHANGED):
            return "mended"
    if pair["foreman"]["result"] is None or pair["audit"]["result"] is None:
        return "undecided"
    return None


def _reworked(record: dict) -> list:
    """``[(area, from, to)]`` of the panels that a lot of rework speaks of."""
    return [
        (row["area"], row["from"], row["to"])
        for lot in record["lots"].values() if lot["purpose"] == "rework" for row in lot["population"]
    ]  # fmt: skip
