"""A warranty survey: what the record tells of one place on a roof, years later. It blames nobody and decides nothing.

    {"place": {"area","panel","from_low_end","radius","unit","zone" | None,"drawn"},
     "panels": {area: [numbers]},
     "events": [...] (``survey_events``), "set": [...] (``survey_set``), "beside": [...] (``survey_beside``),
     "unseen": {...} (``survey_unseen``), "wear": {...} (``survey_wear``), "asked": [...]}

``asked``: every survey of a place within, by the clocks, its body with ``id digest by at``: what people were told, kept
as it was told.
"""

from inspect_app.record.circle import KEYS, Circle
from inspect_app.record.moment import moment
from inspect_app.record.roof_calls import place_at
from inspect_app.record.survey_beside import beside
from inspect_app.record.survey_events import events
from inspect_app.record.survey_set import set_days
from inspect_app.record.survey_unseen import unseen
from inspect_app.record.survey_wear import wear
from inspect_app.rules.refused import Refused


def survey_of(record: dict, part: dict, circle: Circle, kept: dict) -> dict:
    """``record``: the whole; ``part``: what ``survey_scope`` kept of it; ``kept``: the ids, ``panels``, ``where`` and
    the ``place`` that was asked for."""
    place = {name: kept["place"][name] for name in KEYS}
    place.update({"unit": circle.unit, "zone": _zone(circle, place), "drawn": circle.drawn})
    days = set_days(record, kept["panels"])
    asked = [record["surveys"][key] for key in kept["surveys"]]
    return {
        "place": place,
        "panels": kept["panels"],
        "events": events(record, part, kept),
        "set": days,
        "beside": beside(record, circle, days),
        "unseen": unseen(record, part, circle, kept),
        "wear": wear(record, place),
        "asked": sorted(asked, key=lambda one: (moment(one["at"]), one["digest"])),
    }


def _zone(circle: Circle, place: dict) -> "str | None":
    if not circle.drawn:
        return None
    try:
        zone: str | None = place_at(circle.roof(circle.area), place["panel"], place["from_low_end"])["zone"]
    except Refused:
        return None
    return zone
