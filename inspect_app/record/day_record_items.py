"""A day's record under the ten letters of a contractor's daily report: UFGS 01 45 00 (as UFGS-01451A), a to j.

The letters' matter is the guide specification's, their order too; what stands beside them (trades, head count, weather,
delays) it asks for as well. Nothing is made up: what nobody told has ``told`` false.
"""

from inspect_app.rules.day_number import day_number
from inspect_app.rules.refused import Refused

# letter, name, what of an entry says it, what of the record is known of it
ITEMS = (
    ("a", "crew_and_areas", ("crew", "head_count"), ("areas",)),
    ("b", "plant", ("equipment",), ()),
    ("c", "work", ("work", "photos"), ("work_done",)),
    ("d", "checks", (), ("fits", "walks", "holds", "findings", "actions")),
    ("e", "materials", ("materials",), ()),
    ("f", "submittals", ("submittals",), ()),
    ("g", "offsite", ("offsite",), ()),
    ("h", "safety", ("safety", "tied_down"), ()),
    ("i", "instructions", ("instructions",), ()),
    ("j", "statement", ("statement", "name", "role", "by", "at", "objection"), ()),
)
LETTERS = tuple([(letter, name) for letter, name, _, _ in ITEMS])
BESIDE = (("weather", ("weather",), ("metal",)), ("delays", ("delays",), ()))


def day_items(day: dict) -> dict:
    """``{"day","crew","crews","worked","no_work","problems","records" [{"digest","id","versions"}],"items" [{"letter",
    "name","told","said","known"}],"beside" [{"name","told","said","known"}]}`` of one of ``record["days"]``.

    ``said``: one a record, ``{"digest", field: as entered}``, only what is not empty; ``known``: what the record knows,
    by name. ``worked``: whether anybody told or showed that day's work: a record of it, panels set, places looked at.
    """
    worked = len(day["no_work"]) < len(day["entries"]) or bool(day["work_done"] or day["walks"])
    return {
        "day": day["day"], "crew": day["crew"], "crews": day["crews"], "worked": worked, "no_work": day["no_work"],
        "problems": day["problems"],
        "records": [{"digest": one["digest"], "id": one["id"], "heads": len(one["heads"])} for one in day["entries"]],
        "items": [_item({"letter": letter, "name": name}, day, said, known) for letter, name, said, known in ITEMS],
        "beside": [_item({"name": name}, day, said, known) for name, said, known in BESIDE],
    }  # fmt: skip


def _item(told: dict, day: dict, said: tuple, known: tuple) -> dict:
    told["said"] = []
    for entry in day["entries"]:
        row = {name: entry[name] for name in said if entry.get(name) not in (None, "", [])}
        if row:
            row["digest"] = entry["digest"]
            told["said"].append(row)
    told["known"] = {name: day[name] for name in known if day[name]}
    told["told"] = bool(told["said"] or told["known"])
    return told


def silent(days: list) -> list:
    """Stretches of days of which nothing at all is recorded, between the first and the last of ``record["days"]``:
    ``[{"after","before","days"}]``. UFGS 01 45 00 asks for a report at least every seventh day without work."""
    dates = sorted(dict.fromkeys([one["day"] for one in days]))
    found = []
    for at in range(1, len(dates)):
        try:
            between = day_number(dates[at], "day") - day_number(dates[at - 1], "day") - 1
        except Refused:
            continue
        if between > 0:
            found.append({"after": dates[at - 1], "before": dates[at], "days": between})
    return found
