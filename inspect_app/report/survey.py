"""What a report of a warranty survey says beyond the record's own words: people by name, and the photos it names."""

from typing import Any

from inspect_app.report.person import person

FACTS = ("held", "lost", "copy", "undecodable", "width", "height")


def survey(record: dict[str, Any], people: dict[str, Any], numbers: dict[str, Any], held: dict[str, Any],
           ) -> dict[str, Any] | None:  # fmt: skip
    """``record["survey"]`` as it is, with ``people`` by id and ``pictures`` ``[{"sha256","survey","n" in the photo log
    or None,"held",…}]``; None where the report is of another kind."""
    told = record.get("survey")
    if told is None:
        return None
    named = {event["by"] for event in told["events"]} | {asked["by"] for asked in told["asked"]}
    return told | {
        "people": {one: person(people, one) for one in sorted(named)},
        "pictures": [
            {"sha256": sha256, "survey": asked["id"], "n": numbers["photos"].get(sha256)}
            | {name: (held.get(sha256) or {}).get(name) for name in FACTS}
            | {"held": bool((held.get(sha256) or {}).get("held"))}
            for asked in told["asked"] for sha256 in photos_of(asked)
        ],
    }  # fmt: skip


def named_by_surveys(record: dict[str, Any]) -> list[str]:
    """Every photo that a survey of the place names, once."""
    asked = (record.get("survey") or {}).get("asked") or []
    return list(dict.fromkeys(sha256 for one in asked for sha256 in photos_of(one)))


def photos_of(asked: dict[str, Any]) -> list[str]:
    """Of one survey: its own, its samples', the mark's, and documents of substitutions."""
    named = list(asked["photos"]) + [row["document"] for row in asked["substitutions"] if row["document"]]
    named += [sha256 for row in asked["samples"] for sha256 in row["photos"]]
    return list(dict.fromkeys(named + list((asked["wear"] or {}).get("photos") or [])))


def survey_photos_missing(told: dict[str, Any] | None) -> list[dict[str, Any]]:
    """What of them is not here, as ``missing`` tells it: while it may still come, no final report."""
    found: dict[str, dict[str, Any]] = {}
    for one in told["pictures"] if told else []:
        if one["n"] is None and not one["held"]:
            code = f"survey_photo_{one['lost'] or 'missing'}"
            found.setdefault(one["sha256"], {"code": code, "blocks": True, "facts": {"sha256": one["sha256"]}})
    return list(found.values())
