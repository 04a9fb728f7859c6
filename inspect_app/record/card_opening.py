"""What a panel moves in, as its approved assembly names it: a slot under a screw, or the travel of a clip's tab."""

from inspect_app.rules.answer import reason


def opening_of(assembly: dict) -> "tuple[str, dict, dict | None]":
    """``(kind, inputs, reason)``: ``slot`` or ``tab`` with the assembly's own inputs of the rules, or ``none`` with
    the reason why nothing can be drawn. A size that the assembly does not tell is said, never guessed."""
    attachment = assembly.get("attachment")
    if attachment == "fixed_clip":
        return "none", {}, reason("one_piece_clip")
    if attachment == "nail_flange":
        found = _told(assembly, {"slot": "slot_length", "shank": "fastener_diameter"})
        return ("slot", found, None) if len(found) == 2 else ("none", {}, reason("slot_untold"))
    if attachment == "expansion_clip":
        found = _told(assembly, {"travel_outward": "clip_travel_outward", "travel_inward": "clip_travel_inward"})
        return ("tab", found, None) if len(found) == 2 else ("none", {}, reason("travel_untold"))
    return "none", {}, reason("attachment_untold")


def _told(assembly: dict, names: dict) -> dict:
    return {name: assembly[names[name]] for name in names if assembly.get(names[name]) is not None}
