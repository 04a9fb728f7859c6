"""The stations along a panel's seam, by index arithmetic: a count of thousands costs what a count of ten does.

The first stands half a spacing above the low end of each piece of seam; each next one is the spacing of the zone just
left farther up. What is looked at is the first fastener or clip at the station or up-slope of it, so that none stands
at the high end itself.
"""

import math

from inspect_app.rules.inputs import plain
from inspect_app.rules.panel import seam_pieces, strip
from inspect_app.rules.refused import Refused
from inspect_app.rules.roof_form import Roof
from inspect_app.rules.zones import piece_runs

END = 1e-9  # of a spacing: a station that close to the high end is at it


def station_count(roof: Roof, number: int) -> int:
    """Stations of one panel. Raises Refused ``no_such_panel``."""
    return sum([count for _, _, count, _ in legs(roof, number)])


def station(roof: Roof, number: int, index: int) -> dict:
    """``{"index", "from_low_end", "x", "y", "zone"}`` of a panel's station, counted from 0 at its low end.

    ``from_low_end`` is measured along the seam from the low end of its lowest piece. Raises Refused ``no_such_panel``
    and ``no_such_station``.
    """
    found: dict = stations_at(roof, number, [index])[0]
    return found


def stations_at(roof: Roof, number: int, indices: list) -> list:
    """Several stations of one panel, each as ``station`` tells it, in the order asked. Raises as that does."""
    u, along = strip(roof, number)[1], legs(roof, number)
    x = roof.right - u if roof.turned else roof.left + u
    lowest = seam_pieces(roof, number)[0][0] if along else 0.0
    found = []
    for index in indices:
        y, zone = _place(along, index)
        found.append({"index": index, "from_low_end": y - lowest, "y": y, "zone": zone, "x": x})
    return found


def _place(along: list, index: object) -> tuple:
    left: int = index if isinstance(index, int) and index is not True and index >= 0 else -1
    for first, spacing, count, zone in along:
        if 0 <= left < count:
            return first + left * spacing, zone
        left -= count
    raise Refused("no_such_station", "index", plain(index))


def first_from(roof: Roof, number: int, y: float) -> "int | None":
    """The index of a panel's first station at ``y`` or up-slope of it; None where none is. Raises Refused
    ``no_such_panel``."""
    passed: int = 0
    for first, spacing, count, _ in legs(roof, number):
        at: int = max(math.ceil((y - first) / spacing - END), 0)
        if at < count:
            return passed + at
        passed += count
    return None


def legs(roof: Roof, number: int) -> list:
    """``[(y of the first, spacing, count, zone)]``: the stations of a panel as evenly spaced legs, the lowest first.
    None where no spacing is known."""
    if roof.closest is None:
        return []
    found = []
    for _, runs in piece_runs(roof, number):
        y: float | None = None
        for at in range(len(runs)):
            low, high, zone = runs[at]
            spacing = roof.spacings.get(zone, roof.closest)
            if y is None:
                y = low + spacing / 2.0
            last = at == len(runs) - 1
            count = math.ceil((high - y) / spacing - (END if last else 0.0))
            if count > 0:
                found.append((y, spacing, count, zone))
                y += count * spacing
    return found
