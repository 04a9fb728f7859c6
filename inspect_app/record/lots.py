"""Lots: a crew's panels of one area and day, what was set of them, what is held, and what was drawn from them."""

from inspect_app.record.crew import crew_of
from inspect_app.record.holds import held, hold
from inspect_app.record.leg_photos import leg_photos
from inspect_app.record.looks import Looks
from inspect_app.record.lot_days import Days
from inspect_app.record.lot_flags import lot_flags
from inspect_app.record.marks import Marks
from inspect_app.record.places import Roofs, lot_seed, places_of
from inspect_app.record.population import rows_of
from inspect_app.record.releases import Releases, unseen
from inspect_app.record.rolling import rolling, wanting, zone_ends
from inspect_app.record.sampling import sampling
from inspect_app.record.stops import offered, stops
from inspect_app.record.tickets import drawn_by


def fold_lots(record: dict, grouped: dict, people: dict, flags: list) -> dict:
    """Set ``lots`` and ``layouts`` of the record; what a lot holds is told in ``DEVELOPERS.md``. Returns ``{"days",
    "looks", "photos", "said"}``, from which the coverage is told once the lots are decided."""
    record["lots"] = lots = {one: _lot(one, grouped["lot"][one]) for one in sorted(grouped.get("lot", {}))}
    rows = {one: rows_of(lots[one]["population"]) or [] for one in lots}
    bodies = _bodies(grouped)
    record["layouts"] = _named(record, bodies)
    marks = Marks(grouped.get("mark", {}), lots, rows, _roots(lots, rows))
    looks = Looks(record, grouped, people, marks)
    photos, late = leg_photos(record, grouped, marks)
    releases = Releases(grouped.get("release", {}), people, marks.roots)
    said = offered(grouped.get("stop", {}), people)
    roofs = Roofs(bodies)
    days = Days(record, rows, marks, roofs)
    for one in sorted(lots):
        _hold(lots[one], days, releases, marks, looks, record, grouped)
    chosen = [sampling(entry["payload"]["body"]) for group in grouped.get("job", {}).values() for entry in group["all"]]
    least = min([choice["places"] for choice in chosen]) if chosen else 0
    for one in sorted(lots):
        lot = lots[one]
        days.tell(lot)
        _tell_marks(lot, marks)
        lot["extensions"] = [other for other in marks.families.get(one, []) if other != one]
        lot["closed"] = one in days.of and days.over(lots[marks.roots[one]])
        lot["drawn"] = stops(lot, rows[one], days.day(one), roofs, looks, said, least)
        if lot["purpose"] != "work":
            lot["closed"] = not [stop for stop in lot["drawn"] if stop["state"] == "due"]
        _tell_places(lot, days.day(one), roofs, looks, photos)
    for digest, code, facts in lot_flags(record, grouped, days, roofs, marks, looks, releases, late):
        flags.append({"digest": digest, "code": code, "facts": facts})
    return {"days": days, "looks": looks, "photos": photos, "said": said}


def _lot(subject: str, group: dict) -> dict:
    entry = drawn_by(subject, group)
    payload = entry["payload"]
    lot = dict(payload["body"])
    lot.update({
        "id": subject, "digest": entry["digest"], "by": payload["by"], "at": payload["at"], "clock": payload["clock"],
        "heads": [one["digest"] for one in group["heads"]],
    })  # fmt: skip
    return lot


def _bodies(grouped: dict) -> dict:
    """Every version of every area and assembly: a lot names those it was drawn on."""
    return {
        entry["digest"]: entry["payload"]["body"]
        for kind in ("area", "assembly") for group in grouped.get(kind, {}).values() for entry in group["all"]
    }


def _named(record: dict, bodies: dict) -> dict:
    """The bodies that lots were drawn on and that are the newest no more."""
    newest = [thing["digest"] for name in ("areas", "assemblies") for thing in record[name].values()]
    found = {}
    for lot in record["lots"].values():
        for row in lot["population"]:
            for digest in (row["area_entry"], row["assembly_entry"]):
                if digest in bodies and digest not in newest:
                    found[digest] = bodies[digest]
    return found


def _roots(lots: dict, rows: dict) -> dict:
    """``{lot of work: the lot that it extends in the end}``, itself where it extends none of its crew's day here."""
    roots = {}
    for one in lots:
        if lots[one]["purpose"] != "work" or not rows[one]:
            continue
        passed = [one]
        while True:
            before = lots[passed[-1]].get("extends")
            if before in passed:  # lots that extend each other in a ring
                roots[one] = min(passed[passed.index(before) :])
                break
            if before not in lots or lots[before]["purpose"] != "work" or not rows[before]:
                roots[one] = passed[-1]
                break
            if rows[before][0][0] != rows[one][0][0] or not _one_day(lots[before], lots[one]):
                roots[one] = passed[-1]
                break
            passed.append(before)
    return roots


def _one_day(lot: dict, other: dict) -> bool:
    """Whether two lots are of one crew's day: another crew's work is no part of it, nor of its series."""
    return crew_of(lot) == crew_of(other) and lot["day"] == other["day"]


def _hold(lot: dict, days: Days, releases: Releases, marks: Marks, looks: Looks, record: dict, grouped: dict) -> None:
    lot["holds"] = []
    if marks.roots.get(lot["id"]) != lot["id"]:
        return
    day = days.day(lot["id"])
    first = drawn_by(lot["id"], grouped["lot"][lot["id"]])
    begun = {"kid": first["kid"], "seq": first["payload"]["seq"]}
    for panel, why in held(lot["id"], day, marks, looks):
        one = hold(lot["id"], panel, why, day, releases, marks, looks)
        given = [each for each in releases.of.get((lot["id"], panel, why), []) if each["digest"] == one["release"]]
        if given:
            seen = looks.seen(day["area"], panel)
            one["unseen"] = unseen(given[0], seen, day["area"], begun, record, grouped)
        lot["holds"].append(one)


def _tell_marks(lot: dict, marks: Marks) -> None:
    """``marks``, ``changes`` and ``metal`` of one lot."""
    lot["marks"], lot["changes"], lot["metal"] = [], [], None
    for mark in marks.of.get(lot["id"], []):
        body = mark["body"]
        lot["marks"].append(mark["digest"])
        lot["changes"] += [{"panel": mark["to"] + 1, "change": change} for change in body.get("change") or []]
        if body.get("metal_temperature") is not None:
            lot["metal"] = dict(body["metal_temperature"])
            lot["metal"].update({
                "by": body.get("metal_temperature_by"), "uncertainty": body.get("metal_uncertainty"), "at": mark["at"],
            })  # fmt: skip


def _tell_places(lot: dict, day: dict, roofs: Roofs, looks: Looks, photos: dict) -> None:
    """``night`` and ``rolling`` of one lot."""
    lot["night"], lot["rolling"] = None, {"due": [], "taken": [], "missed": []}
    if day["area"] is None or not day["planned"]:
        return
    roof = roofs.of(lot, day["area"])
    nights = [one["panel"] for one in lot["holds"] if one["why"] == "night"]
    if nights:
        found = places_of(roof, lot_seed(lot["id"], lot) or b"", nights[-1], lot["night_places"])
        looks.fill(lot, day["area"], nights[-1], found)
        lot["night"] = {"panel": nights[-1], "places": found}
    if lot["holds"]:  # an extension's photos are asked for with the lot it extends
        wanted = wanting(day["planned"], roofs.once(lot, day["area"], zone_ends))
        lot["rolling"] = rolling(wanted, photos.get(day["area"], {}), day)
