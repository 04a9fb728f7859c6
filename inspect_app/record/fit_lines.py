"""What a fit check compares, line by line, in its fixed order: the rule of each line and where its inputs come from.

A line is ``{"line", "rule", "inputs": {name: path}, "wanted": [names that must be known, first asked first]}``; paths
are those of ``paths.follow``, with ``found`` for what was found on this roof.
"""

from inspect_app.rules.rulebook import describe, full_name

METAL = {"expansion": "assembly.expansion", "metal_low": "job.metal_low", "metal_high": "job.metal_high"}
METAL_WANTED = "expansion metal_low metal_high"
MOVES = {"distance": "area.run", "expansion": "assembly.expansion", "metal_low": "job.metal_low",
         "metal_high": "job.metal_high"}  # fmt: skip
MOVES_WANTED = "distance " + METAL_WANTED
CLIPS = ("fixed_clip", "expansion_clip")


def lines(assembly: dict, found: dict) -> list:
    """The lines that a rule settles, but for the zones'. A clip that does not move has a run of its own and no slot;
    an attachment that nobody named leaves the question standing."""
    attachment = assembly.get("attachment")
    told = [
        _line("approval", "in_force", {"day": "found.day", "issued": "assembly.approval.issued",
                                       "expires": "assembly.approval.expires"}, "day"),
        _line("slope_drawn", "slope", {"slope": "area.slope", "minimum": "assembly.minimum_slope"},
              "minimum slope"),
        _line("slope_found", "slope", {"slope": "found.slope", "minimum": "assembly.minimum_slope",
                                       "uncertainty": "job.instruments." + _slope_by(found) + ".uncertainty"},
              "minimum slope"),
        _line("longest_panel", "limit", {"reading": "area.panel_length", "at_most": "assembly.longest_run"},
              "at_most reading"),
        _run(attachment),
        _line("fixed_count", "limit", {"reading": "found.fixed_lines", "equal": 1}, "reading"),
        _line("fold_return", "fold_return", _with(MOVES, {
            "return": "assembly.fold_return", "engagement": "assembly.fold_engagement"}),
              "return engagement " + MOVES_WANTED),
        _line("fold_gap", "end_gap", _with(MOVES, {
            "return": "assembly.fold_return", "engagement": "assembly.fold_engagement", "gap": "found.fold_gap",
            "metal_now": "found.metal_now", "uncertainty": "job.instruments.rule.uncertainty",
            "metal_uncertainty": "job.instruments." + _metal_by(found) + ".uncertainty"}),
              "return engagement " + MOVES_WANTED + " gap metal_now"),
        _line("clearance", "clearance", _with(MOVES, {
            "clearance": "found.clearance", "metal_now": "found.metal_now",
            "uncertainty": "job.instruments.tape.uncertainty",
            "metal_uncertainty": "job.instruments." + _metal_by(found) + ".uncertainty"}), MOVES_WANTED + " clearance"),
        _thickness(assembly),
    ]  # fmt: skip
    if attachment in CLIPS:
        told.append(_line("clip_seam", "clip_seam", {"seam": "assembly.seam", "seams": "assembly.clip_seams"},
                          "seams seam"))  # fmt: skip
    # The approved one, while nobody looked; one that was looked at and is not told is unknown.
    fastener = "found.fastener_length" if "fastener_length" in found else "assembly.fastener_length"
    told.append(_line("penetration", "penetration", {
        "fastener": fastener, "build_up": "found.build_up", "least": "assembly.penetration"},
                      "least build_up fastener"))  # fmt: skip
    return told


def zone_line(name: str, spacing: object, attachment: object) -> dict:
    """The line of one zone of the area, with the spacing that the approval gives for it, None for none."""
    inputs = {"spacing": spacing}
    if attachment == "nail_flange":
        inputs["pitch"] = "assembly.slot_pitch"
    return _line("zone:" + name[:190], "zone_spacing", inputs, "spacing")


def _line(name: str, rule: str, inputs: dict, wanted: str) -> dict:
    full = full_name(rule)
    inputs = dict(inputs)
    if "uncertainty" in inputs and "acceptance" in describe(full):
        inputs["acceptance"] = "job.acceptance"
    return {"line": name, "rule": full, "inputs": inputs, "wanted": wanted.split(" ")}


def _run(attachment: object) -> dict:
    """What the slot or the clip takes; with no word of which it is, the slot's inputs are what is asked for."""
    if attachment == "fixed_clip":
        return _line("fixed_clip_run", "limit", {"reading": "area.run", "at_most": "assembly.fixed_clip_run"},
                     "at_most reading")  # fmt: skip
    ways = {"slot": "assembly.slot_length", "shank": "assembly.fastener_diameter"}
    asked = "slot shank "
    if attachment == "expansion_clip":
        ways = {"travel_outward": "assembly.clip_travel_outward", "travel_inward": "assembly.clip_travel_inward"}
        asked = "travel_outward travel_inward "
    inputs = _with(_with(METAL, ways), {"offset_error": "job.placing_error", "run": "area.run"})
    return _line("run", "longest_run", inputs, asked + METAL_WANTED + " offset_error run")


def _thickness(assembly: dict) -> dict:
    """Against the gauge that was tested; where the approval tells none apart, the approved one is the one tested."""
    apart = assembly.get("tested_gauge") is not None or assembly.get("tested_gauge_system") is not None
    tested = "assembly.tested_gauge" if apart else "assembly.gauge"
    inputs = {"gauge": "found.gauge", "system": "found.gauge_system", "tested_gauge": tested,
              "tested_system": tested + "_system"}  # fmt: skip
    return _line("thickness", "thickness", inputs, "tested_gauge tested_system gauge system")


def _metal_by(found: dict) -> str:
    """How the metal's temperature was had: where nobody says, as if estimated."""
    by = found.get("metal_now_by")
    return by if by in ("contact", "infrared") else "estimate"


def _slope_by(found: dict) -> str:
    """The instrument whose uncertainty counts: where nobody says which it was, the coarser of the two."""
    return "level" if found.get("slope_by") == "level" else "inclinometer"


def _with(some: dict, more: dict) -> dict:
    both = dict(some)
    both.update(more)
    return both


def settled_by(line: str) -> "tuple[str, dict] | None":
    """``(rule without its version, {input: its path, or what it always is})`` by which a line of that name is settled,
    whatever the attachment; None where it is by no rule."""
    if line.startswith("zone:"):
        return "zone_spacing", {"spacing": "assembly.zones", "pitch": "assembly.slot_pitch"}
    rule, inputs = "", {}
    for attachment in ("nail_flange", "fixed_clip", "expansion_clip"):
        for one in lines({"attachment": attachment}, {}):
            if one["line"] == line:
                rule = one["rule"].split("@")[0]
                inputs.update(one["inputs"])
    return (rule, inputs) if rule else None
