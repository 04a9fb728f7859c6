"""One panel of a roof: what is ordered for it, and the seam at its leading side that hides its fasteners."""

from inspect_app.rules.chord import both_sides, pieces
from inspect_app.rules.refused import Refused
from inspect_app.rules.roof_form import Roof


def panel_count(roof: Roof) -> int:
    """Panels across the area."""
    count: int = roof.count
    return count


def panel(roof: Roof, number: int) -> dict:
    """``{"number", "from", "to", "length", "low", "high", "seam", "pieces", "at"}``, lengths in the roof's unit.

    ``from`` and ``to``: from the starting edge along the eave. ``length``: what is ordered, the longest piece of roof
    in the panel's strip from its lowest point ``low`` to its highest ``high`` (y). ``seam``: the length in all of its
    leading side where there is roof on both sides of it; ``pieces``: ``[[low, high]]`` of that, the lowest first,
    interrupted by openings; ``at``: its x. The last panel is finished at an edge and has none.
    Raises Refused ``no_such_panel``.
    """
    start, end = strip(roof, number)
    own = pieces(roof.sides, roof.corners, start, end)
    low, high = max(own, key=lambda piece: (piece[1] - piece[0], -piece[0])) if own else (0.0, 0.0)
    seam = seam_pieces(roof, number)
    return {
        "number": number, "from": start, "to": end, "length": high - low, "low": low, "high": high,
        "seam": sum([piece[1] - piece[0] for piece in seam]), "pieces": [[piece[0], piece[1]] for piece in seam],
        "at": roof.right - end if roof.turned else roof.left + end,
    }  # fmt: skip


def strip(roof: Roof, number: int) -> tuple:
    """``(from, to)`` of a panel from the starting edge. Raises Refused ``no_such_panel``."""
    if not isinstance(number, int) or number is True or not 1 <= number <= roof.count:
        raise Refused("no_such_panel", "panel", number if isinstance(number, int) else None)
    return roof.lines[number - 1], roof.lines[number]


def seam_pieces(roof: Roof, number: int) -> list:
    """``[(low, high)]`` of a panel's seam, the lowest first."""
    if number == roof.count:
        return []
    found = both_sides(roof.sides, strip(roof, number)[1])
    return [piece for piece in found if piece[1] - piece[0] > roof.near]
