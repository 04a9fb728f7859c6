"""The rolling photo: one lengthwise picture of the open leg of every fifth panel, and of the first and the last panel
of each zone across the area."""

from inspect_app.record.marks import covered
from inspect_app.record.ranges import holds
from inspect_app.rules.refused import Refused
from inspect_app.rules.zones import zone_runs

EVERY = 5  # common practice, no source


def zone_ends(roof) -> list:  # type: ignore[no-untyped-def]
    """The panels where a zone of the area is met first and last, in order."""
    if roof is None:
        return []
    ends: dict = {}
    for panel in range(1, roof.count):
        try:
            runs = zone_runs(roof, panel)
        except Refused:
            continue
        for _, _, zone in runs:
            ends.setdefault(zone, [panel, panel])[1] = panel
    return sorted({panel: True for zone in ends for panel in ends[zone]})


def rolling(wanted: list, taken: dict, day: dict) -> dict:
    """``{"due", "taken", "missed"}`` of the panels that want a photo. ``taken``: panels with a photo of their open leg;
    ``day``: ``own``, ``placed`` and ``reached`` as of ``stops``."""
    found: dict = {"due": [], "taken": [], "missed": []}
    for panel in wanted:
        if panel in taken:
            found["taken"].append(panel)
        elif not holds(day["own"], panel):
            if panel == day["reached"] + 1:
                found["due"].append(panel)
        else:
            found["missed" if covered(day["placed"], panel) else "due"].append(panel)
    return found


def wanting(planned: list, ends: list) -> list:
    """The panels of a day's plan that want a photo: every fifth from its first, and the ends of the zones."""
    found = {panel: True for panel in ends if holds(planned, panel)}
    first = planned[0][0]
    for low, high in planned:
        for panel in range(low + (first - low) % EVERY, high + 1, EVERY):
            found[panel] = True
    return sorted(found)
