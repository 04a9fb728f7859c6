"""The fixed line of one panel, where the line follows an end of every panel, as at a hip or along a valley.

The line is told once, from the low end of the area's longest panel. Without an ``end`` it runs level across the area;
with ``low`` it is that far from every panel's low end, with ``high`` as far from every high end as it is there.
"""

from inspect_app.rules.inputs import plain
from inspect_app.rules.quantity import convert
from inspect_app.rules.refused import Refused


def fixed_line_faults(area: dict, unit: str, height: float) -> list:
    """What is wrong with the line that an area tells: no length, or off the roof, whose extent up the slope is
    ``height``."""
    line = area.get("fixed_line")
    if line is None:
        return []
    try:
        at = convert(line.get("from_low_end") if isinstance(line, dict) else line, unit, "fixed_line")
    except Refused as refused:
        return [Refused(refused.code, "fixed_line", plain(refused.value))]
    if at < 0.0 or at > height * (1.0 + 1e-9):
        return [Refused("beyond_panel", "fixed_line", plain(line["from_low_end"]))]
    return []


def own_line(at: float, end: str, longest: float, length: float) -> float:
    """From the low end of a panel of ``length`` to its fixed line, told as ``at`` on the ``longest`` panel. Below zero
    or beyond the panel where the line passes it by."""
    found = at if end == "low" else length - (longest - at)
    for whole in (0.0, length):
        if abs(found - whole) <= 1e-9 * longest:
            return whole
    return found
