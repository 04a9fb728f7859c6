"""How many panels go across an area: its width along the eave over the coverage, the last one ripped."""

import math

from inspect_app.rules.inputs import plain
from inspect_app.rules.quantity import convert
from inspect_app.rules.refused import Refused

MOST_PANELS = 2000  # more is a slip of the hand, and too many for a plan
SLACK = 1e-6  # of a panel: less than that is the rounding of a division, not a panel


def panels_across(area: dict, assembly: "dict | None", unit: "str | None", ring: list, found: list) -> tuple:
    """``(coverage, count)``: the area's own coverage wins over the assembly's."""
    told = area.get("coverage")
    if told is None and isinstance(assembly, dict):
        told = assembly.get("coverage")
    if told is None:
        found.append(Refused("missing", "coverage", None))
        return 0.0, 0
    try:
        coverage = convert(told, unit if unit is not None else "m", "coverage")
    except Refused as refused:
        found.append(Refused(refused.code, "coverage", plain(refused.value)))
        return 0.0, 0
    if not coverage > 0.0:
        found.append(Refused("not_above_zero", "coverage", plain(told)))
        return 0.0, 0
    if not ring:
        return coverage, 0
    panels = (max([x for x, _ in ring]) - min([x for x, _ in ring])) / coverage
    if panels > MOST_PANELS:
        found.append(Refused("too_many_panels", "coverage", plain(told)))
        return coverage, 0
    return coverage, max(math.ceil(panels - SLACK), 1)


def lines_of(coverage: float, count: int, width: float, corners: list) -> list:
    """How far from the starting edge each panel begins and the last one ends. A line that all but meets a corner, of
    ``corners`` in order, runs through it."""
    lines, at, slack = [0.0], 0, SLACK * coverage
    for number in range(1, count):
        line = number * coverage
        while at < len(corners) and corners[at] < line - slack:
            at += 1
        lines.append(corners[at] if at < len(corners) and corners[at] <= line + slack else line)
    lines.append(width)
    return lines
