"""Measures of a roof area's outline, in the outline's own unit: true lengths in the plane of the roof."""

import math

from inspect_app.rules.chord import chords, sides_of
from inspect_app.rules.decimal_text import write_decimal
from inspect_app.rules.outline import read_ring
from inspect_app.rules.panel import panel
from inspect_app.rules.quantity import convert
from inspect_app.rules.refused import Refused
from inspect_app.rules.roof import survey

MOST_PANELS = 1000000  # more is a slip of the hand, and no number for the phone's interpreter


def panel_length(body: dict) -> "dict | None":
    """The longest panel, as a quantity: the longest piece of roof up the slope (y). None without an outline.

    Where panels are cut askew at both ends, each is ordered longer than any line up the slope within it, so that the
    panels themselves are asked. An outline that nobody can build counts by its extent."""
    points = (body.get("outline") or {}).get("points") or []
    typed = {float(point[1]): point[1] for point in points}
    if not typed:
        return None
    low, high = min(typed), max(typed)
    longest = _longest(body)
    if longest is not None and longest < (high - low) * (1.0 - 1e-9):
        return {"value": write_decimal(longest), "unit": body["outline"]["unit"]}
    # What was typed is kept as typed wherever the low end is the origin: no digits are made up.
    value = typed[high] if low == 0 else str(high - low)
    return {"value": value, "unit": body["outline"]["unit"]}


def longest_run(body: dict) -> "dict | None":
    """The longest piece of a panel that moves: from the fixed line to the farther end, the whole panel where no
    fixed line is told. In the outline's unit; None without an outline. A line beyond the panel counts as its end,
    and one that no roof can have as not told."""
    length = panel_length(body)
    line = (body.get("fixed_line") or {}).get("from_low_end")
    if length is None or line is None:
        return length
    whole = float(length["value"])
    try:
        at = min(max(convert(line, length["unit"], "fixed_line"), 0.0), whole)
    except Refused:
        return length
    if at == 0.0 or at == whole:
        return length
    return {"value": str(max(at, whole - at)), "unit": length["unit"]}


def from_high_end(body: dict) -> "dict | None":
    """From the fixed line to the panel's high end, in the outline's unit: what the high end moves by. None where
    either is not told, and for a line beyond the panel."""
    length = panel_length(body)
    line = (body.get("fixed_line") or {}).get("from_low_end")
    if length is None or line is None:
        return None
    try:
        left = float(length["value"]) - convert(line, length["unit"], "fixed_line")
    except Refused:
        return None
    return {"value": str(left), "unit": length["unit"]} if left >= 0.0 else None


def panel_count(body: dict, assembly: "dict | None") -> "int | None":
    """Panels across the area, the last one ripped: the width along the eave over the coverage, rounded up.

    The area's own ``coverage`` wins over the assembly's. None when neither is known. A remainder below a
    millionth of a panel is the rounding of the division, not a panel. None too for a coverage no roof can have: one
    slip in one area must not take the whole record with it.
    """
    coverage = body.get("coverage") or (assembly or {}).get("coverage")
    width = _extent(body, 0)
    if coverage is None or width is None:
        return None
    try:
        module = convert(coverage, body["outline"]["unit"], "coverage")
    except Refused:
        return None
    if not module > 0 or not width / module < MOST_PANELS:
        return None
    return math.ceil(width / module - 1e-6)


def _longest(body: dict) -> "float | None":
    faults: list = []
    ring = read_ring(body["outline"], body["outline"].get("unit"), "outline", faults)
    if faults:
        return None
    sides = sides_of([ring])
    straight: float = max([high - low for x, _ in ring for toward in (-1, 1) for low, high in chords(sides, x, toward)])
    height: float = max([y for _, y in ring]) - min([y for _, y in ring])
    if straight >= height * (1.0 - 1e-9) and not body.get("openings"):
        return height
    roof, _ = survey(body, None)
    if roof is None:
        return straight
    longest: float = max([panel(roof, number)["length"] for number in range(1, roof.count + 1)])
    return longest


def _extent(body: dict, axis: int) -> "float | None":
    points = (body.get("outline") or {}).get("points") or []
    values = [float(point[axis]) for point in points]
    if not values:
        return None
    return max(values) - min(values)
