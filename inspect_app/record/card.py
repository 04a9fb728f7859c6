"""The morning's card for one area: when the middle of the slot is right, and else where in it the screw belongs.

Asked of the rulebook (``centred@1``, ``window@1`` or ``clip@1``, ``longest_run@1``, ``limit@1``, ``movement@1``);
nothing here or on the phone works out a window. Cold, mild and hot metal are a quarter, a half and three quarters of
the way up the job's range: the aim moves evenly with temperature and distance, so that between two columns or parts it
lies between their places. The touch of the metal (gloves from 120 °F, no bare skin from 140 °F, frost at 32 °F) is
common practice.
"""

import math

from inspect_app.record.card_cell import cell, judged
from inspect_app.record.card_mark import exact_text
from inspect_app.record.card_opening import opening_of
from inspect_app.record.card_run import parts_of, pieces_of
from inspect_app.rules.answer import measured, reason
from inspect_app.rules.inputs import plain
from inspect_app.rules.quantity import convert
from inspect_app.rules.refused import Refused
from inspect_app.rules.rulebook import judge
from inspect_app.rules.unit import SI_UNITS

COLUMNS = (("cold", 0.25), ("mild", 0.5), ("hot", 0.75))
NEEDED = ("metal_low", "metal_high", "placing_error")


def card(job: dict, assembly: dict, area: dict, metal_now: "dict | None" = None) -> dict:
    """``{"kind", "reason", "unit", "error", "columns", "pieces", "lead", "together", "longest", "approved",
    "drift"}``.

    ``kind``: ``slot``, ``tab`` or ``none``. ``reason``: why there is no card, with everything else empty.
    ``columns``: ``{"name", "metal", "touch"}`` of ``cold mild hot`` and ``now``, where ``metal_now`` is given.
    ``pieces``: ``{"side", "run", "hole", "parts"}`` toward the ridge and toward the eave; ``hole``: its ends toward
    the ridge of the middle; a part: ``{"name", "from", "to", "cells"}``, cells in the order of the columns.
    ``lead``: ``{"holds", "side", "run", "from", "to"}`` of the longest piece, at whole degrees that hold.
    ``together``: whether the crew's error goes in at every part; ``longest``: the runs that would, rounded down.
    ``drift``: ``{"change", "movement"}``, how far a metal temperature that is wrong puts the longest run's end off.
    Raises Refused for bodies that are none and for ``metal_now``; what is wrong with the job's own values is the
    ``reason``, with its field.
    """
    for name, body in (("job", job), ("assembly", assembly), ("area", area)):
        if not isinstance(body, dict):
            raise Refused("not_inputs", name, None)
    if metal_now is not None:
        convert(metal_now, "F", "metal_now")
    told: dict = {"kind": "none", "reason": None, "unit": None, "error": None, "columns": [], "pieces": [],
                  "lead": None, "together": None, "longest": None, "approved": None, "drift": None}  # fmt: skip
    try:
        told.update(_filled(job, assembly, area, metal_now))
    except Refused as refused:
        told["reason"] = reason(refused.code, {"field": refused.field, "value": plain(refused.value)})
    return told


def _filled(job: dict, assembly: dict, area: dict, metal_now: "dict | None") -> dict:
    kind, opening, why = opening_of(assembly)
    if why is not None:
        return {"reason": why}
    far_unit, pieces = pieces_of(area)
    if not pieces:
        return {"reason": reason("no_fixed_line" if area.get("outline") else "no_outline")}
    for name in NEEDED:
        if job.get(name) is None:
            return {"reason": reason("missing_input", {"input": name, "path": "job." + name})}
    if assembly.get("expansion") is None:
        return {"reason": reason("missing_input", {"input": "expansion", "path": "assembly.expansion"})}
    first = opening["slot" if kind == "slot" else "travel_outward"]
    unit = "mm" if isinstance(first, dict) and first.get("unit") in SI_UNITS else "in"
    heat = {"expansion": assembly["expansion"], "metal_low": job["metal_low"], "metal_high": job["metal_high"]}
    columns = _columns(job, metal_now)
    error = job["placing_error"]
    number = convert(error, unit, "placing_error")
    drawn = [_piece(kind, side, run, far_unit, unit, dict(heat, **opening), columns, error) for side, run in pieces]
    run, side = max([(run, side) for side, run in pieces])
    return {
        "kind": kind, "unit": unit, "error": {"value": number, "unit": unit, "text": exact_text(number, unit)},
        "columns": [{"name": name, "metal": {"value": float(metal["value"]), "unit": metal["unit"]},
                     "touch": _touch(metal)} for name, metal in columns],
        "pieces": drawn, "lead": _lead(side, run, far_unit, dict(heat, **opening), error),
        "together": all(one["verdict"] == "pass" for piece in drawn for part in piece["parts"]
                        for one in part["cells"][:len(COLUMNS)]),
        "longest": _longest(far_unit, dict(heat, **opening), error), "approved": _approved(assembly, run, far_unit),
        "drift": _drift(job, assembly, _quantity(run, far_unit), unit),
    }  # fmt: skip


def _columns(job: dict, metal_now: "dict | None") -> list:
    """``[(name, quantity), …]`` in the unit of the job's coldest metal, the metal now as it was given."""
    unit = job["metal_low"].get("unit") if isinstance(job["metal_low"], dict) else None
    unit = "C" if unit == "C" else "F"
    low, high = convert(job["metal_low"], unit, "metal_low"), convert(job["metal_high"], unit, "metal_high")
    columns = [(name, {"value": str(low + share * (high - low)), "unit": unit}) for name, share in COLUMNS]
    if metal_now is not None:
        columns.append(("now", metal_now))
    return columns


def _piece(kind: str, side: str, run: float, far_unit: str, unit: str, inputs: dict, columns: list,
           error: dict) -> dict:  # fmt: skip
    hole, reach = _ends(kind, side, unit, inputs)
    parts = []
    for name, start, end in parts_of(run, far_unit):
        asked = dict(inputs, distance=_quantity(end, far_unit))
        cells = [cell(judged(kind, dict(asked, metal_now=metal), error, unit), side, reach, error, unit)
                 for _, metal in columns]  # fmt: skip
        parts.append({"name": name, "from": measured(start, far_unit), "to": measured(end, far_unit), "cells": cells})
    return {"side": side, "run": measured(run, far_unit), "parts": parts,
            "hole": {"eave": measured(hole[0], unit), "ridge": measured(hole[1], unit)}}  # fmt: skip


def _ends(kind: str, side: str, unit: str, inputs: dict) -> tuple:
    """``(ends of what is seen, ends of where the middle of the screw or tab can lie)``, toward the ridge."""
    if kind == "slot":
        slot, shank = convert(inputs["slot"], unit, "slot"), convert(inputs["shank"], unit, "shank")
        return (-slot / 2.0, slot / 2.0), (-(slot - shank) / 2.0, (slot - shank) / 2.0)
    out, back = [convert(inputs[name], unit, name) for name in ("travel_outward", "travel_inward")]
    ends = (-back, out) if side == "ridge" else (-out, back)
    return ends, ends


def _lead(side: str, run: float, far_unit: str, inputs: dict, error: dict) -> dict:
    found = judge("centred@1", dict(inputs, distance=_quantity(run, far_unit), offset_error=error))
    told = {"holds": found["understood"]["holds"], "side": side, "run": measured(run, far_unit),
            "from": found["values"].get("from"), "to": found["values"].get("to")}  # fmt: skip
    if told["holds"] == "between":  # at whole degrees, inward: what is printed must hold
        least, most = math.ceil(told["from"]["value"] - 1e-9), math.floor(told["to"]["value"] + 1e-9)
        if least <= most:
            heat = told["from"]["unit"]
            told["from"], told["to"] = measured(float(least), heat), measured(float(most), heat)
    return told


def _longest(far_unit: str, inputs: dict, error: dict) -> dict:
    """``{"aimed", "centred"}``, whole feet or tenths of a metre that hold."""
    found = judge("longest_run@1", dict(inputs, offset_error=error), "US" if far_unit == "ft" else "SI")["values"]
    size, steps = (12.0, 1.0) if far_unit == "ft" else (1000.0, 10.0)
    return {name: measured(math.floor(found[name]["value"] / size * steps + 1e-9) / steps, far_unit)
            for name in ("aimed", "centred")}  # fmt: skip


def _approved(assembly: dict, run: float, far_unit: str) -> "dict | None":
    """The approved longest run beside this one: ``{"run", "verdict"}``. It stands whatever the slot would hold."""
    most = assembly.get("longest_run")
    if most is None:
        return None
    found = judge("limit@1", {"reading": _quantity(run, far_unit), "at_most": most})
    return {"run": most, "verdict": found["verdict"]}


def _drift(job: dict, assembly: dict, run: dict, unit: str) -> dict:
    """Ten degrees Fahrenheit, or five Celsius: what an infrared thermometer is off by easily (common practice)."""
    metric = job["metal_low"]["unit"] == "C"
    change = {"value": "5", "unit": "dC"} if metric else {"value": "10", "unit": "dF"}
    found = judge("movement@1", {"distance": run, "expansion": assembly["expansion"], "change": change},
                  "US" if unit == "in" else "SI")  # fmt: skip
    return {"change": change, "movement": found["values"]["movement"]}


def _touch(metal: dict) -> "str | None":
    degrees = convert(metal, "F", "metal")
    if degrees >= 140.0:
        return "no_skin"
    if degrees >= 120.0:
        return "gloves"
    return "frost" if degrees <= 32.0 else None


def _quantity(number: float, unit: str) -> dict:
    return {"value": str(number), "unit": unit}
