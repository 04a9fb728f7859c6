"""The pieces into which the fixed line parts a panel, and the parts of a piece that a crew can tell apart."""

from inspect_app.record.area import panel_length
from inspect_app.rules.quantity import convert
from inspect_app.rules.refused import Refused
from inspect_app.rules.unit import system_of

GRAIN = {"ft": 1.0, "m": 0.5}  # parts end at whole feet or half metres, which a crew finds on its tape


def pieces_of(area: dict) -> "tuple[str, list]":
    """``(unit, [(side, run), …])``: the longest panel from the fixed line toward the ridge and toward the eave, where
    it moves at all, in feet or metres as the outline is. No pieces where no outline or no fixed line is told.
    Raises Refused ``beyond_panel`` and those of a quantity."""
    length = panel_length(area)
    line = area.get("fixed_line")
    if length is None or not isinstance(line, dict) or line.get("from_low_end") is None:
        return "ft", []
    unit = "ft" if system_of(length["unit"]) == "US" else "m"
    whole = convert(length, unit, "length")
    at = convert(line["from_low_end"], unit, "fixed_line")
    if at < 0.0:
        raise Refused("negative", "fixed_line", None)
    if at > whole * (1.0 + 1e-9):
        raise Refused("beyond_panel", "fixed_line", None)
    least = whole * 1e-9
    return unit, [(side, run) for side, run in (("ridge", whole - at), ("eave", at)) if run > least]


def parts_of(run: float, unit: str) -> list:
    """``[(name, from, to), …]``: near, middle and far from the fixed line, thirds at whole feet where there are some.

    Each part is judged at its far end. Windows lie one inside the other as the distance grows (both movements do), so
    what is inside there is inside everywhere from there back to the fixed line, wherever a part is cut."""
    grain = GRAIN[unit]
    near, middle = run / 3.0, run * 2.0 / 3.0
    if run >= 6.0 * grain:
        near, middle = [int(cut / grain + 0.5 + 1e-9) * grain for cut in (near, middle)]
    return [("near", 0.0, near), ("middle", near, middle), ("far", middle, run)]
