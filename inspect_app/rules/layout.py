"""The layout of one roof area: panels, their lengths, the seams, and how many stations stand in each zone."""

from inspect_app.rules.likeness import likeness
from inspect_app.rules.panel import panel
from inspect_app.rules.roof import survey
from inspect_app.rules.roof_form import Roof
from inspect_app.rules.stations import legs

SAME = 1e-9  # of the longest panel: lengths that close are one length
UNKNOWN = ""  # the zone's name where nobody told the zones


def totals(roof: Roof) -> dict:
    """``{"panels", "seams", "seam_length", "longest", "stations": {zone: count}, "area"}`` in the roof's unit; the
    stations of a zone that nobody told are under ``""``."""
    return _summed(roof, _panels(roof))


def layout(area: dict, assembly: "dict | None") -> dict:
    """``{"unit", "panels", "lengths": [{"from", "to", "length"}], "longest", "seams", "seam_length", "stations":
    {zone: count}, "area", "of": [[number, length, seam, stations]], "faults": [{"code", "field", "value"}]}``.

    ``lengths`` are runs of panels of one length. Never raises for what it is given: where nothing can be laid out the
    figures are None and empty, and ``faults`` says why.
    """
    roof, faults = survey(area, assembly)
    told: dict = {"unit": None, "panels": None, "lengths": [], "longest": None, "seams": None, "seam_length": None,
                  "stations": {}, "area": None, "of": [],
                  "faults": [{"code": one.code, "field": one.field, "value": one.value} for one in faults]}  # fmt: skip
    if roof is None:
        return told
    panels = _panels(roof)
    told.update(_summed(roof, panels))
    told["unit"] = roof.unit
    told["lengths"] = _runs(panels, SAME * told["longest"])
    told["of"] = [[one["number"], one["length"], one["seam"], sum(one["stations"].values())] for one in panels]
    return told


def _panels(roof: Roof) -> list:
    """Every panel with its ``stations`` by zone; one that is like another before it is not worked out again."""
    found: list = []
    alike = likeness(roof)
    for number in range(1, roof.count + 1):
        if alike[number - 1] == number:
            one = panel(roof, number)
            one["stations"] = {}
            for _, _, count, zone in legs(roof, number):
                name = UNKNOWN if zone is None else zone
                one["stations"][name] = one["stations"].get(name, 0) + count
        else:
            one = dict(found[alike[number - 1] - 1])
            one["number"] = number
        found.append(one)
    return found


def _summed(roof: Roof, panels: list) -> dict:
    stations: dict = {}
    for one in panels:
        for name in one["stations"]:
            stations[name] = stations.get(name, 0) + one["stations"][name]
    return {
        "panels": roof.count, "seams": sum([1 for one in panels if one["pieces"]]),
        "seam_length": sum([one["seam"] for one in panels]), "longest": max([one["length"] for one in panels]),
        "stations": stations, "area": roof.area,
    }  # fmt: skip


def _runs(panels: list, same: float) -> list:
    runs: list = []
    for one in panels:
        if runs and abs(runs[-1]["length"] - one["length"]) <= same:
            runs[-1]["to"] = one["number"]
        else:
            runs.append({"from": one["number"], "to": one["number"], "length": one["length"]})
    return runs
