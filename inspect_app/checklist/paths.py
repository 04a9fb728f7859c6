"""What a rule's input may be read from: every path into the bodies of entries, with its dimension.

The bodies are those of DEVELOPERS.md, "Kinds"; ``area.panel_length``, ``area.panel_count``,
``area.run`` and ``area.fixed_line.from_high_end`` come from the fold.
"""

ROOTS = ("job", "assembly", "area", "walk", "station", "zone", "reading")

PATHS = {
    "job.metal_low": "temperature",
    "job.metal_high": "temperature",
    "job.placing_error": "length",
    "job.acceptance": "choice",
    "job.instruments.tape.uncertainty": "length",
    "job.instruments.rule.uncertainty": "length",
    "job.instruments.feeler.uncertainty": "length",
    "job.instruments.micrometer.uncertainty": "length",
    "job.instruments.depth_gauge.uncertainty": "length",
    "job.instruments.level.uncertainty": "slope",
    "job.instruments.inclinometer.uncertainty": "slope",
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
    "assembly.slot_width": "length",
    "assembly.tested_gauge": "text",
    "assembly.tested_gauge_system": "choice",
    "assembly.fold_return": "length",
    "assembly.fold_engagement": "length",
    "assembly.penetration": "length",
    "assembly.fixed_clip_run": "length",
    "area.slope": "slope",
    "area.coverage": "length",
    "area.panel_length": "length",
    "area.panel_count": "integer",
    "area.run": "length",
    "area.fixed_line.from_low_end": "length",
    "area.fixed_line.from_high_end": "length",
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

# The metal's temperature when a reading was made, and how many seconds before that it was taken.
_METAL = {"metal_temperature": "temperature", "metal_uncertainty": "difference", "metal_age": "integer"}

# What each instrument leaves in an answer's ``reading``. A number's dimension is that of its unit.
READINGS = {
    "slot_taps": {"taps": "taps", "card": "card", "end_hidden": "choice", "third": "choice", **_METAL},
    "number": {"value": "unit", **_METAL},
    "tab": {"value": "unit", **_METAL},
    "feeler": {"value": "unit", **_METAL},
    "micrometer": {"value": "unit", "coated": "boolean", "coating": "length"},
    "inclinometer": {"value": "slope", "readings": "slopes", "reversed": "slopes"},
    "gaps": {"gaps": "lengths", "count": "integer", "over": "length"},
    "count": {"count": "integer", "of": "integer"},
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
    """Every path an item may use: at a whole walk, or a whole area, there is no station and no zone."""
    readings = [f"reading.{name}" for name in READINGS.get(instrument or "", {})]
    away = () if per == "station" else ("station.", "zone.")
    return sorted(path for path in (*PATHS, *readings) if not path.startswith(away))
