"""``clip@1``: where the tab of a two-piece expansion clip belongs.

The tab moves with the panel and the base stays, so the signs are the reverse of a screw in a slot: with o of travel
outward (toward the free end) and i inward, s − i ≤ x ≤ o − g for the tab's offset x from mid-travel; the aim is
(s − g + o − i)/2. Hot metal: tab toward the free end. First principles; no published rule.
"""

from inspect_app.rules.acceptance import accept
from inspect_app.rules.answer import all_measured, answer, measured, reason
from inspect_app.rules.compare import at_most
from inspect_app.rules.fixed_line import place
from inspect_app.rules.inputs import wanted
from inspect_app.rules.refused import Refused
from inspect_app.rules.thermal import grow_and_shrink, movement_of, outside_range
from inspect_app.rules.unit import SYSTEMS, change_unit

INPUTS = {
    "distance": wanted("length", required=False),
    "expansion": wanted("expansion"),
    "metal_low": wanted("temperature", least=None),
    "metal_high": wanted("temperature", least=None),
    "metal_now": wanted("temperature", least=None),
    "travel_outward": wanted("length", most_mm=300.0),
    "travel_inward": wanted("length", most_mm=300.0),
    "tab": wanted("length", required=False, least=None),
    "length": wanted("length", required=False, above_zero=True),
    "station": wanted("length", required=False),
    "fixed_line": wanted("length", required=False),
    "uncertainty": wanted("length", required=False, most_mm=50.0),
    "metal_uncertainty": wanted("difference", required=False),
}
ORDER = ("distance", "travel_outward", "length", "station", "expansion", "metal_now")
SIXTEENTH = 0.0625  # of an inch: what a steel rule is read to (common practice, no source)


def judge(given: dict, system: str) -> dict:
    """``low high aim grow shrink``, and with a ``tab`` reading from mid-travel ``offset bound`` and, where the side is
    known, ``toward_ridge``. The window is positive toward the free end, and so is ``tab`` with a ``distance``;
    with a ``station`` the tab is toward the ridge. With the fixed line unknown either direction must hold: what
    passes passes for any fixed line, what fails fails with ``fixed_line_unknown``."""
    return judged(given, system, None, False)


def judged(given: dict, system: str, unknown_metal: "dict | None", simple: bool) -> dict:
    """As :func:`judge`; with the reason why the metal's temperature does not count, not determinable with the
    window; by simple acceptance of the tab where ``simple``."""
    if not given["metal_low"] < given["metal_high"]:
        raise Refused("range_reversed", "metal_high", None)
    length = SYSTEMS[system]["length"]
    distance, side = place(given)
    grow, shrink = grow_and_shrink(given, distance)
    outward, inward = given["travel_outward"], given["travel_inward"]
    low, high = shrink - inward, outward - grow
    if side is None and given["distance"] is None:
        high = min(outward, inward) - max(grow, shrink)
        low = -high
    scale = outward + inward
    shown = all_measured({"low": low, "high": high, "aim": (low + high) / 2.0, "grow": grow, "shrink": shrink}, length)
    known = {"distance": measured(distance, length), "free_end": {1: "ridge", -1: "eave", None: "unknown"}[side]}
    if outside_range(given) or unknown_metal is not None:
        return answer(shown, "not_determinable", unknown_metal or reason("metal_outside_range"), known)
    unknown = side is None and given["distance"] is None
    if not at_most(low, high, scale):
        return answer(shown, "fail", reason("fixed_line_unknown" if unknown else "no_travel"), known)
    if given["tab"] is None:
        return answer(shown, None, None, known)
    bound = given["uncertainty"]
    if bound is None:
        bound = change_unit(SIXTEENTH, "in", length)
    bound = bound + movement_of(given["expansion"], distance, given["metal_uncertainty"] or 0.0)
    offset = -given["tab"] if side == -1 else given["tab"]
    shown.update(all_measured({"offset": offset, "bound": bound}, length))
    if given["distance"] is None or side is not None:
        shown["toward_ridge"] = measured(given["tab"], length)
    verdict = accept(offset, offset, bound, (low, high), simple, shown, scale)
    if unknown and verdict == "fail":
        return answer(shown, "fail", reason("fixed_line_unknown"), known)
    why = {"pass": None, "fail": reason("tab_outside_window"), "too_close": reason("tab_too_close")}[verdict]
    return answer(shown, verdict, why, known)
