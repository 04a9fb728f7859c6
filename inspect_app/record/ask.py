"""The phone's only door to the rulebook and the record: JSON text in, JSON text out."""

import json

from inspect_app.record.authority import MAY
from inspect_app.record.calls_for import calls_for
from inspect_app.record.card import card
from inspect_app.record.day_record_material import compared
from inspect_app.record.fit import fit
from inspect_app.record.fold import fold
from inspect_app.record.judge import judge_item
from inspect_app.record.lot_draw import draw_lot, places
from inspect_app.record.roof_calls import ROOF_CALLS, roof_answer
from inspect_app.record.survey_scope import survey
from inspect_app.record.trends import trends
from inspect_app.rules.refused import Refused
from inspect_app.rules.rulebook import describe, judge

DEEP = 3  # the record, its kinds: each thing below is a short text


def ask(text: str) -> str:
    """Answer one request: ``{"call": "judge", "rule", "inputs", "units"?}``, ``{"call": "judge_item", "item",
    "context"}``, ``{"call": "fold", "entries", "people", "partial"?, "areas"?}``,
    ``{"call": "fit", "job", "assembly", "area", "found", "day"}``, ``{"call": "card", "job", "assembly", "area",
    "metal_now"?}``, ``{"call": "material", "record", "areas", "material"}`` (``day_record_material.py``), ``{"call":
    "survey", "record", "place"}`` (``survey.py``), ``{"call": "authority"}`` (kind of entry -> roles that may say it),
    ``{"call": "describe", "rule"}`` or one of ``roof_calls.py``.

    Gives ``{"ok": answer}``, or ``{"refused": {"code", "field", "value"}}`` for input that cannot be taken.
    """
    request = json.loads(text)
    try:
        return "".join(_pieces({"ok": _answer(request)}, DEEP))
    except Refused as refused:
        return json.dumps({"refused": {"code": refused.code, "field": refused.field, "value": refused.value}})


def _pieces(value: object, deep: int) -> list:
    """JSON text in pieces. Written in one go, the phone's interpreter copies what it has so far for every few letters
    more: a job of 5,000 entries took a minute, and takes seconds so."""
    if deep == 0 or not value or not isinstance(value, (dict, list)):
        return [json.dumps(value)]
    told = []
    if isinstance(value, dict):
        for name in value:
            told += [", ", json.dumps(name), ": "]
            told += _pieces(value[name], deep - 1)
    else:
        for one in value:
            told.append(", ")
            told += _pieces(one, deep - 1)
    told[0] = "{" if isinstance(value, dict) else "["
    told.append("}" if isinstance(value, dict) else "]")
    return told


def _answer(request: dict) -> object:
    call = request["call"]
    if call == "judge":
        return judge(request["rule"], request["inputs"], request.get("units"))
    if call == "judge_item":
        return judge_item(request["item"], request["context"])
    if call == "fold":
        return fold(request["entries"], request["people"], bool(request.get("partial")), request.get("areas"))
    if call == "fit":
        return fit(request["job"], request["assembly"], request["area"], request["found"], request["day"])
    if call == "card":
        return card(request["job"], request["assembly"], request["area"], request.get("metal_now"))
    if call == "material":
        return compared(request["record"], request["areas"], request["material"])
    if call == "draw_lot":
        return draw_lot(request["record"], request)
    if call == "calls_for":
        return calls_for(request["record"], request["crew"], request["area"], request["day"])
    if call == "places":
        asked = request.get("area")
        return places(request["record"], request["lot"], request["panel"], request["count"], asked)
    if call == "authority":
        return MAY
    if call == "trends":
        return trends(request["record"], request.get("filters"))
    if call == "survey":
        return survey(request["record"], request["place"])["survey"]
    if call == "describe":
        return describe(request["rule"])
    if call in ROOF_CALLS:
        return roof_answer(request)
    raise Refused("unknown_call", "call", call)
