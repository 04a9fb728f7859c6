"""What a rule's input may be read from: every path into the bodies of entries, with its dimension.

The bodies are those of DEVELOPERS.md, "Kinds"; ``area.panel_length``, ``area.panel_count`` and
``area.run`` come from the fold.
"""

ROOTS = ("job", "assembly", "area", "walk", "station", "zone", "reading")

PATHS = {
    "job.metal_low": "temperature",
    "job.metal_high": "temperature",
    "job.placing_error": "length",
    "assembly.seam_height": "length",
    "assembly.coverage": "length",
    "assembly.expansion": "expansion",
    "assembly.gauge": "text",
    "assembly.gauge_system": "choice",
    "assembly.slot_length": "length",
    "assembly.slot_pitch": "length",
    "assembly.clip_travel_outward": "length",
    "assembly.clip_travel_inward": "length",
    "assembly.fastener_diameter": "length",
    "assembly.fastener_head_diameter": "length",
    "assembly.fastener_length": "length",
    "assembly.fasteners_per_clip": "integer",
    "assembly.minimum_slope": "slope",
    "assembly.longest_run": "length",
    "area.slope": "slope",
    "area.coverage": "length",
    "area.panel_length": "length",
    "area.panel_count": "integer",
    "area.run": "length",
    "area.fixed_line.from_low_end": "length",
    "area.fixed_line.fasteners": "integer",
    "walk.metal_temperature": "temperature",
    "walk.metal_uncertainty": "difference",
    "walk.weather.air": "temperature",
    "walk.head_count": "integer",
    "station.from_low_end": "length",
    "station.panel": "integer",
    "zone.spacing": "length",
    "zone.pressure": "pressure",
}

# What each instrument leaves in an answer's ``reading``. A number's dimension is that of its unit.
READINGS = {
    "slot_taps": {"taps": "taps", "end_hidden": "choice", "third": "choice"},
    "number": {"value": "unit"},
    "gaps": {"gaps": "lengths", "count": "integer", "over": "length"},
    "count": {"count": "integer"},
}


def is_path(text: str) -> bool:
    """Whether a word of a rule's inputs is meant as a path; any other word stands for itself."""
    return "." in text


def dimension(path: str, instrument: str | None, unit_dimension: str | None) -> str | None:
    """The dimension of what lies at ``path``; None where nothing ever does."""
    root, _, rest = path.partition(".")
    if root == "reading":
        found = READINGS.get(instrument or "", {}).get(rest)
        return unit_dimension if found == "unit" else found
    return PATHS.get(path)


def paths_for(instrument: str | None, per: str) -> list[str]:
    """Every path an item may use: at a whole walk there is no station and no zone."""
    readings = [f"reading.{name}" for name in READINGS.get(instrument or "", {})]
    away = ("station.", "zone.") if per == "walk" else ()
    return sorted(path for path in (*PATHS, *readings) if not path.startswith(away))
