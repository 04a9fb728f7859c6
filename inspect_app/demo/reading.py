"""What the foreman of the invented job reads off, item by item and instrument by instrument."""

from typing import Any

from inspect_app.demo import picture

METAL = {"value": "74", "unit": "F"}
UNCERTAIN = {"value": "4", "unit": "dF"}
FRESH = {"metal_temperature": METAL, "metal_uncertainty": UNCERTAIN, "metal_by": "contact", "metal_age": 180}
VALUES = {"dimple": "0", "clip_gap": "0.03", "hem_gap": "0.4375", "coil_thickness": "0.026", "slope": "4"}
TIGHT = {"dimple": "0.0625"}
LOOKED_AT = 20


def read(item: dict[str, Any], place: Any) -> dict[str, Any] | None:
    """The reading of ``item`` (compiled) at ``place`` (a ``Place``, or None for the whole walk); None where the
    item is no measured one. A place where screws are over-driven has the dimples to show for it."""
    tight = bool(place) and "over_driven" in place.fails
    made = _made(item, place, tight)
    if made is not None and "reading.metal_temperature" in (item["rule"] or {}).get("inputs", {}).values():
        return {**made, **FRESH}
    return made


def _made(item: dict[str, Any], place: Any, tight: bool) -> dict[str, Any] | None:
    instrument, name = item.get("instrument"), item["id"]
    if instrument == "slot_taps" and place:
        middle, half = picture.SIZE[0] // 2, picture.PER_INCH // 2
        screw = middle - round(place.offset * picture.PER_INCH)
        return {"taps": {"ridge_end": [middle - half, 760], "eave_end": [middle + half, 760], "screw": [screw, 760]}}
    if instrument == "gaps" and place:
        return {"gaps": [{"value": gap, "unit": "in"} for gap in place.gaps]}
    if instrument == "count":
        return _counted(item, tight)
    if name == "tab_place":
        return {"value": {"value": str(place.offset if place else 0), "unit": "in"}}
    value = (TIGHT if tight else {}).get(name, VALUES.get(name))
    if value is None:
        return None
    made = {"value": {"value": value, "unit": item["unit"]["US"]}}
    return {**made, "coated": True} if instrument == "micrometer" else made


def _counted(item: dict[str, Any], tight: bool) -> dict[str, Any]:
    if "reading.of" in (item["rule"] or {}).get("inputs", {}).values():
        return {"count": 3 if tight else 0, "of": LOOKED_AT}
    return {"count": 2 if item["rule"] else 0}  # every place of this walk was chosen by hand, none was drawn
