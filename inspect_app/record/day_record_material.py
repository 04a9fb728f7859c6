"""Material received, against the approved assembly of the areas that the crew works on: agree, other, or not told.

A gauge is compared by the least base metal it may be delivered with (``rules/thickness.py``), never by its number: a
gauge is a number of a named system. A coating's name is compared as text, blanks, signs and letters' size apart.
"""

from inspect_app.record.crew import CAPITALS, SMALL
from inspect_app.rules.refused import Refused
from inspect_app.rules.rulebook import full_name, judge

SHEET = ("coil", "panels", "flashing")  # a gauge and a coating are expected; of others only what is told counts
DIGITS = "0123456789"
PAIRS = (("approved", "gauge", "gauge_system"), ("tested", "tested_gauge", "tested_gauge_system"))
WORST = {"lighter": 0, "unknown": 1, "heavier": 2, "": 3}


def compared(record: dict, areas: list, material: dict) -> list:
    """One for each approved assembly of ``areas`` (ids; of all the job's areas where none is told), in order of its id:
    ``[{"assembly","areas","gauge" {"state","because","told","system","approved","approved_system","against","rule",
    "values"},"coating" {"state","because","told","approved"}}]``.

    ``state``: ``agree``, ``other``, ``not_told``. ``because`` of a gauge: ``lighter`` (it voids what was tested),
    ``heavier``, ``unknown`` (no such gauge of that system), ``no_gauge``, ``no_system``, ``not_approved_told``; of a
    coating ``differs``, ``no_coating``, ``not_approved_told``; empty where they agree. ``against``: whether the
    approved or the tested gauge is meant, where the approval tells them apart. Empty for what has neither.
    """
    if material.get("what") not in SHEET and not material.get("gauge") and not material.get("coating"):
        return []
    known = [one for one in areas if one in record["areas"]] or sorted(record["areas"])
    by: dict = {}
    for one in sorted(known):
        by.setdefault(record["areas"][one].get("assembly"), []).append(one)
    return [
        {"assembly": one, "areas": by[one], "gauge": _gauge(record["assemblies"][one], material),
         "coating": _coating(record["assemblies"][one], material)}
        for one in sorted([key for key in by if key in record["assemblies"]])
    ]  # fmt: skip


def _gauge(assembly: dict, material: dict) -> dict:
    gauge = material.get("gauge")  # as it was typed: "24" or 24
    told: dict = {
        "state": "not_told", "because": "", "told": str(gauge) if gauge else None,
        "system": material.get("gauge_system"), "approved": assembly.get("gauge"),
        "approved_system": assembly.get("gauge_system"), "against": "approved", "rule": None, "values": {},
    }  # fmt: skip
    for name, because in (("told", "no_gauge"), ("system", "no_system"), ("approved", "not_approved_told"),
                          ("approved_system", "not_approved_told")):  # fmt: skip
        if not told[name]:
            told["because"] = because
            return told
    worst = None
    for against, gauge, system in PAIRS:
        if assembly.get(gauge) and assembly.get(system):
            found = _against(told, assembly[gauge], assembly[system])
            if worst is None or WORST[found["because"]] < WORST[worst["because"]]:
                worst = found
                worst.update({"against": against, "approved": assembly[gauge], "approved_system": assembly[system]})
    told.update(worst or {})
    return told


def _against(told: dict, gauge: str, system: str) -> dict:
    rule = full_name("thickness")
    try:
        answer = judge(rule, {"gauge": told["told"], "system": told["system"], "tested_gauge": gauge,
                              "tested_system": system})  # fmt: skip
    except Refused:
        return {"state": "other", "because": "unknown", "rule": rule, "values": {}}
    code = answer["reason"]["code"] if answer["reason"] else ""
    because = {"lighter_voids": "lighter", "heavier_stands": "heavier"}.get(code, "")
    return {"state": "other" if because else "agree", "because": because, "rule": rule, "values": answer["values"]}


def _coating(assembly: dict, material: dict) -> dict:
    told = {"state": "not_told", "because": "", "told": material.get("coating"), "approved": assembly.get("coating")}
    if not _letters(told["told"]):
        told["because"] = "no_coating"
    elif not _letters(told["approved"]):
        told["because"] = "not_approved_told"
    elif _letters(told["told"]) == _letters(told["approved"]):
        told["state"] = "agree"
    else:
        told.update({"state": "other", "because": "differs"})
    return told


def _letters(text: object) -> str:
    """Letters and digits alone: of letters the 26 of ASCII without their size, any other as it is."""
    if not isinstance(text, str):
        return ""
    kept = []
    for letter in text:
        if letter in CAPITALS:
            kept.append(SMALL[CAPITALS.find(letter)])
        elif letter in SMALL or letter in DIGITS or ord(letter) > 191:
            kept.append(letter)
    return "".join(kept)
