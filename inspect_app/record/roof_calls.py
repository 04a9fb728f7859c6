"""What a screen asks of a drawn roof: its layout, one panel, one place, and the zones to draw."""

from inspect_app.record.roof_totals import roof_totals
from inspect_app.rules.layout import layout
from inspect_app.rules.likeness import likeness
from inspect_app.rules.panel import panel, seam_pieces
from inspect_app.rules.quantity import convert
from inspect_app.rules.refused import Refused
from inspect_app.rules.roof import read_roof
from inspect_app.rules.roof_form import Roof
from inspect_app.rules.stations import first_from, legs, station_count
from inspect_app.rules.zones import panel_runs, zone_at, zone_runs

ROOF_CALLS = ("layout", "panel", "place_at", "roof_totals", "stations", "zones")


def roof_answer(request: dict) -> object:
    """``{"call": "layout", "area", "assembly"}``: see ``rules/layout.py``. ``{"call": "panel", …, "number"}``: the
    panel, with ``unit``, ``zone_runs`` and ``station_count``. ``{"call": "place_at", …, "panel", "from_low_end"}``:
    ``{"unit", "zone", "x", "y", "index"}``, ``index`` of the first station there or up-slope, None where none is.
    ``{"call": "zones", …}``: ``[[number, [[low, high, zone]]]]``. ``{"call": "stations", …}``: of every panel
    ``[number, [[y, from_low_end, spacing, count, zone]]]``, its stations as evenly spaced legs with where the first of
    each stands. ``{"call": "roof_totals", "layouts"}``: see ``roof_totals.py``. Raises Refused, but for ``layout`` and
    ``roof_totals``."""
    if request["call"] == "roof_totals":
        return roof_totals(request["layouts"])
    area, assembly = request.get("area") or {}, request.get("assembly")
    if request["call"] == "layout":
        return layout(area, assembly)
    roof = read_roof(area, assembly)
    if request["call"] == "zones":
        return _each(roof, panel_runs)
    if request["call"] == "stations":
        return _each(roof, _legs)
    if request["call"] == "panel":
        told = panel(roof, request.get("number", 0))
        told["unit"] = roof.unit
        told["zone_runs"] = zone_runs(roof, told["number"])
        told["station_count"] = station_count(roof, told["number"])
        return told
    return place_at(roof, request.get("panel", 0), request.get("from_low_end"))


def place_at(roof: Roof, number: int, from_low_end: "dict | None") -> dict:
    """As ``roof_answer`` tells a place, of a roof that was read before: reading it costs more than asking it."""
    own = panel(roof, number)
    along = convert(from_low_end, roof.unit, "from_low_end")
    low, high = (own["pieces"][0][0], own["pieces"][-1][1]) if own["pieces"] else (own["low"], own["high"])
    if along < 0.0 or along > (high - low) * (1.0 + 1e-9):
        raise Refused("beyond_panel", "from_low_end", (from_low_end or {}).get("value"))
    y = low + along
    return {"unit": roof.unit, "zone": zone_at(roof, own["at"], y), "x": own["at"], "y": y,
            "index": first_from(roof, own["number"], y)}  # fmt: skip


def _each(roof: Roof, told) -> list:  # type: ignore[no-untyped-def]  # a function of roof and number
    """``[[number, what is told of it]]``; of panels that are alike the first is asked."""
    found: list = []
    alike = likeness(roof)
    for number in range(1, roof.count + 1):
        like = alike[number - 1]
        found.append([number, told(roof, number) if like == number else found[like - 1][1]])
    return found


def _legs(roof: Roof, number: int) -> list:
    found = legs(roof, number)
    low = seam_pieces(roof, number)[0][0] if found else 0.0
    return [[y, y - low, spacing, count, zone] for y, spacing, count, zone in found]
