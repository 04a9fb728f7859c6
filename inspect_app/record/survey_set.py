"""When the panels around a place were set, by whom, and what was approved on that day."""

from inspect_app.record.crew import crew_of
from inspect_app.record.moment import moment
from inspect_app.record.ranges import merged
from inspect_app.rules.refused import Refused
from inspect_app.rules.rulebook import judge

# What makes an assembly another one; its name and where its numbers come from do not.
NOT_OF_IT = ("id", "digest", "by", "at", "clock", "heads", "name", "expansion_source")


def set_days(record: dict, panels: dict) -> list:
    """``[{"day","crew","area","panels" [[from, to]],"by" (``marks``/``walks``),"lots","metal","materials",
    "assembly"}]`` in order of the day; empty where no entry tells when.

    ``assembly``: ``{"id","digest","from","name","approval","in_force","changed"}``. ``from``: ``lot`` (signed by the
    lot of that day), ``clock`` (the newest that a clock shows by then), ``later`` (said only afterwards), None (nobody
    told). ``in_force``: the rule's answer for that day, or ``{"refused"}`` with its code. ``changed``: the members in
    which the assembly as it stands differs. ``materials``: of the crew's day, those whose label says something else.
    """
    found = []
    for day in record["days"]:
        by_area: dict = {}
        for row in day["work_done"]:
            there = [number for number in panels.get(row["area"], []) if row["from"] <= number <= row["to"]]
            if there:
                told = by_area.setdefault((row["area"], row["by"]), [])
                told += [[number, number] for number in there]
        for area, by in sorted(by_area):
            lots = [key for key in sorted(record["lots"]) if _planned(record["lots"][key], day, area)]
            found.append({
                "day": day["day"], "crew": day["crew"], "area": area, "panels": merged(by_area[area, by]), "by": by,
                "lots": lots, "metal": day["metal"], "materials": _others(day, record["areas"][area].get("assembly")),
                "assembly": _approved(record, area, day["day"], lots),
            })  # fmt: skip
    return found


def _planned(lot: dict, day: dict, area: str) -> bool:
    if lot["purpose"] == "audit" or lot["day"] != day["day"] or crew_of(lot) != crew_of({"crew": day["crew"]}):
        return False
    return area in [row["area"] for row in lot["population"]]


def _others(day: dict, assembly: "str | None") -> list:
    """Materials of which a label says something else than the approval."""
    found = []
    for entry in day["entries"]:
        for row in entry["materials"]:
            for one in row["compared"]:
                if one["assembly"] == assembly and "other" in (one["gauge"]["state"], one["coating"]["state"]):
                    found.append({
                        "digest": entry["digest"], "what": row["what"], "accepted": row["accepted"],
                        "gauge": one["gauge"], "coating": one["coating"],
                    })  # fmt: skip
    return found


def _approved(record: dict, area: str, day: str, lots: list) -> dict:
    name = record["areas"][area].get("assembly")
    newest = record["assemblies"].get(name) or {}
    versions = [(newest["at"], newest["digest"], newest)] if newest else []
    for one in record.get("earlier") or []:
        if one["kind"] == "assembly" and one["subject"] == name:
            versions.append((one["at"], one["digest"], one["body"]))
    body, source, digest = None, None, None
    for lot in lots:
        for row in record["lots"][lot]["population"]:
            signed = [one for one in versions if one[1] == row.get("assembly_entry")]
            if row["area"] == area and signed:
                body, source, digest = signed[0][2], "lot", signed[0][1]
    if body is None and versions:
        ordered = sorted([(moment(at), entry, at, told) for at, entry, told in versions], key=lambda one: one[:2])
        by_then = [one for one in ordered if one[2][:10] <= day]
        chosen = by_then[-1] if by_then else ordered[0]
        body, source, digest = chosen[3], "clock" if by_then else "later", chosen[1]
    body = body or {}
    approval = body.get("approval") or {}
    return {
        "id": name, "digest": digest, "from": source, "name": body.get("name"), "approval": approval,
        "in_force": _in_force(day, approval) if body else None, "changed": _changed(body, newest) if body else [],
    }  # fmt: skip


def _in_force(day: str, approval: dict) -> dict:
    inputs = {"day": day}
    inputs.update({member: approval[member] for member in ("issued", "expires") if approval.get(member)})
    try:
        return judge("in_force", inputs)
    except Refused as refused:
        return {"refused": refused.code, "field": refused.field, "value": refused.value}


def _changed(body: dict, newest: dict) -> list:
    names = sorted(dict.fromkeys(list(body) + list(newest), True))
    return [name for name in names if name not in NOT_OF_IT and body.get(name) != newest.get(name)]
