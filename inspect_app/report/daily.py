"""Each crew's days as a report prints them: the record's ten items, and the photographs that a day's record names."""

from typing import Any

from inspect_app.record.day_record_items import day_items, silent

FACTS = ("held", "lost", "copy", "undecodable", "width", "height")


def daily(record: dict[str, Any], held: dict[str, Any]) -> dict[str, Any]:
    """``{"daily", "silent"}``: each of ``record["days"]`` under its letters (``day_items``), with its number ``n`` and
    its ``photos`` ``[{"sha256","digest" of the record that names it,"what" it shows or None,"held",…}]``; and the
    stretches without a word (``silent``). ``held``: as ``report_contents`` takes photos."""
    days = record.get("days") or []
    told = [{"n": n, **day_items(day), "photos": _photos(day, held)} for n, day in enumerate(days, 1)]
    return {"daily": told, "silent": silent(days)}


def named_by_days(record: dict[str, Any]) -> list[str]:
    """Every photo that a day's record names, once, in order of the days."""
    named = [sha256 for day in record.get("days") or [] for sha256, _, _ in _named(day)]
    return list(dict.fromkeys(named))


def days_missing(days: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """What of the days' photographs is not here, as ``missing`` tells it: while it may still come, no final report."""
    return [
        {"code": f"day_photo_{photo['lost'] or 'missing'}", "blocks": True,
         "facts": {"day": day["day"], "crew": day["crew"], "sha256": photo["sha256"]}}
        for day in days for photo in day["photos"] if not photo["held"]
    ]  # fmt: skip


def _photos(day: dict[str, Any], held: dict[str, Any]) -> list[dict[str, Any]]:
    told: dict[str, dict[str, Any]] = {}
    for sha256, digest, material in _named(day):
        facts = held.get(sha256) or {}
        told.setdefault(sha256, {"sha256": sha256, "digest": digest, "what": material}
                        | {name: facts.get(name) for name in FACTS} | {"held": bool(facts.get("held"))})  # fmt: skip
    return list(told.values())


def _named(day: dict[str, Any]) -> list[tuple[str, str, str | None]]:
    """``(sha256, digest of the record, what the material is)``, labels first."""
    labels = [(sha256, entry["digest"], row["what"]) for entry in day["entries"] for row in entry["materials"]
              for sha256 in row["photos"]]  # fmt: skip
    return labels + [(sha256, entry["digest"], None) for entry in day["entries"] for sha256 in entry["photos"]]
