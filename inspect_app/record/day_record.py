"""The day's record: what a crew said of its day, beside what its marks, walks and findings already say of it."""

from inspect_app.record.authority import objection
from inspect_app.record.day_record_known import CrewDays, take_findings, take_lots, take_walks
from inspect_app.record.day_record_material import compared
from inspect_app.record.lot_days import Days
from inspect_app.record.ranges import merged, without

LEFT_OUT = ("set_aside", "sent_back")  # what is done with material that nobody sets


def fold_days(record: dict, grouped: dict, people: dict, days: Days, flags: list) -> list:
    """``record["days"]``: one of each day and crew that anything speaks of, in order of the day, then of the crew.

    ``{"day", "crew", "crews" (every spelling of it), "entries", "no_work" [{"why","digest"}], "areas" [ids],
    "work_done" [{"area","from","to","by" (``marks``/``walks``)}], "metal", "walks", "fits", "findings" [ids opened],
    "actions", "holds", "problems" [codes]}``; the known parts as ``day_record_known`` tells them. ``entries``: every
    head of every ``day`` entry, several people's beside each other, its body with ``id, digest, by, at, heads,
    objection`` (a flag code, or empty), each of its materials with ``compared``. A walk is of the day that its phone's
    clock showed; a lot and a day's record name theirs. Appends to ``flags``.
    """
    crew_days = CrewDays()
    _take_entries(crew_days, grouped.get("day", {}), people)
    take_lots(crew_days, record, days)
    take_walks(crew_days, record, days)
    take_findings(crew_days, record)
    return [_whole(crew_days.found[key], record, flags) for key in sorted(crew_days.found)]


def _take_entries(crew_days: CrewDays, subjects: dict, people: dict) -> None:
    for subject in sorted(subjects):
        heads = [entry["digest"] for entry in subjects[subject]["heads"]]
        for entry in subjects[subject]["heads"]:
            payload = entry["payload"]
            told = dict(payload["body"])
            told.update({
                "id": subject, "digest": entry["digest"], "by": payload["by"], "at": payload["at"], "heads": heads,
                "objection": objection(entry, people),
            })  # fmt: skip
            one = crew_days.of(told["day"], told["crew"])
            one["entries"].append(told)
            for row in told["weather"]:
                if row.get("metal") is not None:
                    one["metal"].append({
                        "at": told["day"] + "T" + row["at"], "temperature": row["metal"], "by": row.get("metal_by"),
                        "uncertainty": None, "of": "day", "digest": entry["digest"],
                    })  # fmt: skip


def _whole(one: dict, record: dict, flags: list) -> dict:
    one["crews"] = sorted(one["crews"])
    one["crew"] = one["crews"][0]
    one["work_done"] = _work_done(one.pop("marks"), one.pop("told"))
    there = one["areas"]
    one["areas"] = sorted(there)
    one["entries"].sort(key=lambda entry: entry["digest"])
    one["metal"].sort(key=lambda told: (told["at"][:16], told["digest"], told["at"]))
    one["walks"].sort(key=lambda walk: (walk["at"][:19], walk["walk"]))
    one["findings"].sort()
    one["actions"].sort(key=lambda act: (act["finding"], act["at"], act["digest"], act["kind"]))
    one["holds"].sort(key=lambda hold: (hold["lot"], hold["panel"], hold["why"]))
    one["no_work"] = [{"why": entry["no_work"], "digest": entry["digest"]}
                      for entry in one["entries"] if entry["no_work"] is not None]  # fmt: skip
    one["fits"] = [
        {"area": area, "day": fit["day"], "result": fit["result"], "digest": fit["digest"]}
        for area, fit in sorted(record["fits"].items())
        if area in there and fit["day"] <= one["day"]
    ]
    alike: dict = {}
    for entry in one["entries"]:
        entry["materials"] = [_material(entry, row, one, record, flags, alike) for row in entry["materials"]]
    one["problems"] = _problems(one)
    if one["work_done"]:
        for told in one["no_work"]:
            flags.append({"digest": told["digest"], "code": "no_work_but_set", "facts": {"day": one["day"]}})
    return one


def _work_done(marks: list, told: list) -> list:
    """Panels set, area by area: what marks say, and what walks say beyond it."""
    rows = []
    there: dict = {}
    for at, said in ((0, marks), (1, told)):
        for area, low, high in said:
            there.setdefault(area, ([], []))[at].append([low, high])
    for area in sorted(there):
        marked, walked = merged(there[area][0]), merged(there[area][1])
        for by, ranges in (("marks", marked), ("walks", without(walked, marked))):
            rows += [{"area": area, "from": low, "to": high, "by": by} for low, high in ranges]
    return rows


def _material(entry: dict, row: dict, one: dict, record: dict, flags: list, alike: dict) -> dict:
    """``alike``: what labels that say the same came to, since a day's coils are mostly of one kind."""
    told = dict(row)
    label = tuple([row.get(name) for name in ("what", "gauge", "gauge_system", "coating")])
    if label not in alike:
        alike[label] = compared(record, one["areas"], row)
    told["compared"] = alike[label]
    lighter = [each for each in told["compared"] if each["gauge"]["because"] == "lighter"]
    if lighter and row["accepted"] not in LEFT_OUT:
        facts = {"assembly": lighter[0]["assembly"], "gauge": row.get("gauge")}
        flags.append({"digest": entry["digest"], "code": "material_lighter", "facts": facts})
    return told


def _problems(one: dict) -> list:
    """What the day's own records do not agree on, among each other or with what was set."""
    codes = []
    if one["no_work"] and one["work_done"]:
        codes.append("no_work_but_set")
    if one["no_work"] and len(one["no_work"]) < len(one["entries"]):
        codes.append("no_work_and_work")
    heads = [entry["head_count"] for entry in one["entries"] if entry["head_count"] is not None]
    if heads and min(heads) != max(heads):
        codes.append("head_counts_differ")
    return codes
