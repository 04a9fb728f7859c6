"""Photos of open legs, by the panel they show."""

from inspect_app.record.first_said import first_said
from inspect_app.record.marks import Marks


def leg_photos(record: dict, grouped: dict, marks: Marks) -> tuple:
    """``({area: {panel: sha256}}, late)``: the photos that show a leg while it was open, and the digests of those that
    their own key's chain proves to have come after the cover."""
    found: dict = {}
    late = []
    for name in sorted(record["photos"]):
        photo = record["photos"][name]
        area, panel = photo.get("area"), photo.get("panel")
        if photo.get("role") != "leg" or area is None or type(panel) is not int:
            continue
        firsts = first_said(grouped["photo"][name]["all"], photo, ("area", "panel"))
        if any(marks.covered_before(area, panel, kid, seq) for kid, seq in firsts):
            late.append(photo["digest"])
        else:
            found.setdefault(area, {}).setdefault(panel, name)
    return found, late
