"""The panel a station stands on, where the area's fixed line follows an end of every panel."""

from inspect_app.record.area import panel_length
from inspect_app.rules.decimal_text import write_decimal
from inspect_app.rules.fixed_end import own_line
from inspect_app.rules.panel import panel
from inspect_app.rules.quantity import convert
from inspect_app.rules.refused import Refused
from inspect_app.rules.roof import read_roof


def with_own_panel(context: dict) -> dict:
    """The context of a verdict with the area as the station's own panel has it: ``panel_length``, ``run``, and the
    fixed line from its own two ends. Where that panel is not to be found the line counts as unknown, which is the
    worst case and never an advantage. Any other context is given back as it is."""
    area, station = context.get("area"), context.get("station")
    line = area.get("fixed_line") if isinstance(area, dict) else None
    if not isinstance(station, dict) or not isinstance(line, dict) or line.get("end") not in ("low", "high"):
        return context
    assert isinstance(area, dict)
    own, changed = dict(area), dict(context)
    own["fixed_line"] = {name: line[name] for name in line if name not in ("from_low_end", "from_high_end")}
    try:
        own.update(_measures(area, context.get("assembly"), line, station))
        own["fixed_line"].update({"from_low_end": own["at"], "from_high_end": own["left"]})
    except Refused:
        own["run"] = own.get("panel_length")
    changed["area"] = {name: own[name] for name in own if name not in ("at", "left")}
    return changed


def _measures(area: dict, assembly: "dict | None", line: dict, station: dict) -> dict:
    roof = read_roof(area, assembly)
    length = panel(roof, station.get("panel", 0))["length"]
    longest = panel_length(area)
    at = convert(line.get("from_low_end"), roof.unit, "fixed_line")
    own = own_line(at, line["end"], convert(longest, roof.unit, "length"), length)
    return {
        "panel_length": _quantity(length, roof.unit), "run": _quantity(max(own, length - own), roof.unit),
        "at": _quantity(own, roof.unit), "left": _quantity(length - own, roof.unit),
    }  # fmt: skip


def _quantity(number: float, unit: str) -> dict:
    return {"value": write_decimal(number), "unit": unit}
