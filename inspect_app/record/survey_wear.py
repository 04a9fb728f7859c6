"""How far the metal moves at a place, for a wear mark to be held against: from the panel's own fixed line."""

from inspect_app.record.own_panel import with_own_panel
from inspect_app.rules.decimal_text import write_decimal
from inspect_app.rules.panel import panel
from inspect_app.rules.quantity import convert
from inspect_app.rules.refused import Refused
from inspect_app.rules.roof import read_roof
from inspect_app.rules.rulebook import judge


def wear(record: dict, place: dict) -> dict:
    """``{"fixed" (``known``/``unknown``),"inputs","answer" (of ``movement@1``) or None,"refused" or None}``.

    ``inputs``: what ``wear@1`` takes beside the mark itself. With the fixed line unknown the distance is to the farther
    end of the panel, the most that it can be."""
    told: dict = {"fixed": "unknown", "inputs": {}, "answer": None, "refused": None}
    area = record["areas"][place["area"]]
    assembly = record["assemblies"].get(area.get("assembly")) or {}
    job = record["job"] or {}
    try:
        distance, known = _from_fixed_line(area, assembly or None, place)
        told["fixed"] = "known" if known else "unknown"
        told["inputs"] = {
            "distance": distance, "expansion": assembly.get("expansion"), "metal_low": job.get("metal_low"),
            "metal_high": job.get("metal_high"),
        }  # fmt: skip
        told["answer"] = judge("movement@1", told["inputs"])
    except Refused as refused:
        told["refused"] = {"code": refused.code, "field": refused.field, "value": refused.value}
    return told


def _from_fixed_line(area: dict, assembly: "dict | None", place: dict) -> tuple:
    roof = read_roof(area, assembly)
    own = panel(roof, place.get("panel"))  # type: ignore[arg-type]  # refused where it is no number
    at = convert(place.get("from_low_end"), roof.unit, "from_low_end")
    context = with_own_panel({"area": area, "assembly": assembly, "station": place})
    line = (context["area"].get("fixed_line") or {}).get("from_low_end")
    if line is None:
        return {"value": write_decimal(max(at, own["length"] - at, 0.0)), "unit": roof.unit}, False
    held = convert(line, roof.unit, "fixed_line")
    return {"value": write_decimal(abs(at - held)), "unit": roof.unit}, True
