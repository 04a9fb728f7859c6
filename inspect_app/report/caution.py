"""What a reader must know before relying on the rest: flags, forks, clocks, choices by hand, limits."""

import unicodedata
from typing import Any

from inspect_app.report.doubtful import doubtful, forks
from inspect_app.report.flagged import flagged
from inspect_app.report.lot_asks import asked_less


def cautions(
    record: dict[str, Any], contents: dict[str, Any], definitions: dict[str, Any], people: dict[str, Any],
    apart: int = 0,
) -> list[dict[str, Any]]:
    """``[{"code", "facts"}]``: first what this very record shows, then the limits that hold for every
    report."""
    told: list[dict[str, Any]] = []
    hand = [one["n"] for one in contents["stations"] if one["chosen"] == "hand"]
    if hand:
        told.append(_fact("chosen_by_hand", stations=hand, count=len(hand)))
    if apart:
        told.append(_fact("kept_apart", count=apart))
    told += forks(record, people) + flagged(record, contents) + doubtful(record, people)
    if less := asked_less(record, definitions):
        told.append(_fact("lot_asks_less", lots=less, count=len(less)))
    for day in contents["days"]:
        reached = [one["n"] for one in contents["stations"] if one["walk"] == day["n"] and one["reached"] == "yes"]
        if day["fall_protection"] == "not_on_roof" and reached:
            told.append(_fact("places_from_the_ground", walk=day["n"], stations=reached, count=len(reached)))
    for signoff in contents["signoffs"]:
        if signoff["signed"] and signoff["uncovered"]:
            told.append(_fact("not_covered", walk=signoff["walk"], count=len(signoff["uncovered"])))
    for answer in contents["answers"]:
        if answer["open_versions"] > 1:
            told.append(_fact("unresolved", answer=answer["id"], station=answer["station"]))
        if answer["recomputed"] in ("different", "not_determinable"):
            told.append(_fact(f"recomputed_{answer['recomputed']}", answer=answer["id"], station=answer["station"]))
    told += _findings(contents)
    told += [
        _fact(f"fit_recomputed_{line['recomputed']}", area=one["name"], line=line["line"])
        for one in contents["fits"] for line in one["lines"] if line["recomputed"] in ("different", "not_determinable")
    ]  # fmt: skip
    for photo in contents["photos"]:
        if photo["undecodable"]:
            told.append(_fact("photo_not_drawn", photo=photo["n"], reason=photo["undecodable"]))
    told += _clocks(contents) + _alone(contents)
    if right_to_left(contents):
        told.append(_fact("right_to_left"))
    always = ("first_principles", "clocks", "personal", "keys")
    return told + [_fact(code) for code in always]


def _findings(contents: dict[str, Any]) -> list[dict[str, Any]]:
    told = []
    for one in contents["findings"]:
        own = one["told"]["severity"]
        if own and one["asked"] and own != one["asked"]:
            told.append(_fact("finding_severity", finding=one["n"], said=own, asked=one["asked"]))
        for judged in one["judged"].values():
            if judged["recomputed"] in ("different", "not_determinable"):
                told.append(_fact(f"finding_recomputed_{judged['recomputed']}", finding=one["n"]))
    return told


def _clocks(contents: dict[str, Any]) -> list[dict[str, Any]]:
    told = []
    differ = [photo["n"] for photo in contents["photos"] if photo["clocks"] == "differ"]
    if differ:
        told.append(_fact("photo_clock", photos=differ, count=len(differ)))
    return told


def _alone(contents: dict[str, Any]) -> list[dict[str, Any]]:
    """Photos of what, without one of where at the same station: illustration, not evidence of the place."""
    alone = []
    for station in contents["stations"]:
        roles = {photo["role"] for photo in contents["photos"] if photo["station"] == station["n"]}
        if "what" in roles and "where" not in roles:
            alone.append(station["n"])
    return [_fact("photo_alone", stations=alone, count=len(alone))] if alone else []


def right_to_left(value: Any) -> bool:
    """Whether any text holds letters that run from right to left: they are printed in the order of typing."""
    if isinstance(value, str):
        return any(unicodedata.bidirectional(letter) in ("R", "AL") for letter in value)
    if isinstance(value, dict):
        return any(right_to_left(one) for one in value.values())
    return isinstance(value, list) and any(right_to_left(one) for one in value)


def _fact(code: str, **facts: Any) -> dict[str, Any]:
    return {"code": code, "facts": facts}
