"""``slot@1``: a screw found in its slot, against the window of its place (see ``window.py``).

With the fixed line unknown the full length and either direction are assumed, the worst case, so that an unknown is
never an advantage. What passes then passes for any fixed line; what fails fails with ``fixed_line_unknown``, because
it may stand well enough once the line is told.

Three readings: taps on a square-on photo, a slot end hidden under the head, or the third of the slot in which the
screw stands. Each is an interval for the offset; it passes only when wholly inside the window and fails only when
wholly outside (guard band, ILAC-G8:09/2019 4.2). First principles; no published rule for the place in a slot.

The bound of three taps is an uncertainty of at least 95 % (``tests/rules/test_slot_photos.py`` measures it through a
pinhole camera): 2·√(2/3)·e/S of the slot's length L for a tap error of e pixels over S; with the tilt's own share, its
perspective L²·sin(tilt)/4D and the parallax h·tan(tilt) of a head standing h above the flange; and its lean h·L/2D
square on, D the least distance of a camera. They go together as independent ones do; α·d·U(T) for the metal's
temperature is added.
"""

from inspect_app.rules.acceptance import accept
from inspect_app.rules.answer import all_measured, answer, measured, reason
from inspect_app.rules.compare import at_most
from inspect_app.rules.fixed_line import place
from inspect_app.rules.inputs import wanted
from inspect_app.rules.slot_reading import beside, read_offset, usable
from inspect_app.rules.thermal import grow_and_shrink, movement_of, outside_range
from inspect_app.rules.unit import SYSTEMS
from inspect_app.rules.window import half_play

INPUTS = {
    "expansion": wanted("expansion"),
    "metal_low": wanted("temperature", least=None),
    "metal_high": wanted("temperature", least=None),
    "metal_now": wanted("temperature", least=None),
    "slot": wanted("length", most_mm=300.0, above_zero=True),
    "shank": wanted("length", most_mm=50.0, above_zero=True),
    "head": wanted("length", required=False, most_mm=100.0, above_zero=True),
    "length": wanted("length", above_zero=True),
    "station": wanted("length"),
    "fixed_line": wanted("length", required=False),
    "taps": wanted("taps", required=False),
    "end_hidden": wanted("choice", required=False, choices=("ridge", "eave")),
    "third": wanted("choice", required=False, choices=("toward_ridge", "middle", "toward_eave")),
    "tap_error": wanted("pixels", required=False),
    "head_height": wanted("length", required=False, most_mm=25.0),
    "tilt": wanted("slope", required=False),
    "metal_uncertainty": wanted("difference", required=False),
}
ORDER = ("slot", "shank", "length", "station", "expansion", "metal_now")


def judge(given: dict, system: str) -> dict:
    """``offset bound low high aim toward_ridge grow shrink play``: ``offset`` and the window are positive toward
    the free end, ``toward_ridge`` toward the ridge. With the fixed line unknown the window is the same either
    way and ``offset`` is toward the ridge."""
    here = window_here(given, system)
    unusable = usable(given)
    if unusable is not None:
        return answer(here["shown"], "not_determinable", unusable, here["known"])
    toward_ridge, bound = read_offset(given, here["play"])
    return settled(given, here, {"toward_ridge": toward_ridge, "bound": bound, "beside": beside(given)})


def window_here(given: dict, system: str) -> dict:
    """The window of the screw's place: numbers in the system's length, ``side`` as of ``place``, and what of it is
    ``shown`` and ``known`` in every answer."""
    length = SYSTEMS[system]["length"]
    play = half_play(given)
    distance, side = place(given)
    grow, shrink = grow_and_shrink(given, distance)
    low, high = grow - play, play - shrink
    if side is None:
        high = play - max(grow, shrink)
        low = -high
    values = {"low": low, "high": high, "aim": (low + high) / 2.0, "grow": grow, "shrink": shrink, "play": play}
    known = {"distance": measured(distance, length), "free_end": {1: "ridge", -1: "eave", None: "unknown"}[side]}
    here: dict = {"low": low, "high": high, "play": play, "side": side, "distance": distance, "length": length}
    here["shown"], here["known"] = all_measured(values, length), known
    return here


def settled(given: dict, here: dict, seen: dict, simple: bool = False) -> dict:
    """The answer for what was seen: ``toward_ridge`` within ``bound``, ``beside`` the slot's axis. By simple acceptance
    only ``known``, what of the bound is the sight's own and no error, still counts. ``astray``: how far a tap may be
    off the axis, where that is not the whole bound."""
    shown, known, play, side = here["shown"], here["known"], here["play"], here["side"]
    doubt = movement_of(given["expansion"], here["distance"], given["metal_uncertainty"] or 0.0)
    bound = seen["bound"] + doubt
    offset = -seen["toward_ridge"] if side == -1 else seen["toward_ridge"]
    found = {"offset": offset, "toward_ridge": seen["toward_ridge"], "bound": bound}
    shown.update(all_measured(found, here["length"]))
    if outside_range(given):
        return answer(shown, "not_determinable", reason("metal_outside_range"), known)
    off_axis = not at_most(seen["beside"], given["shank"] + seen.get("astray", bound))
    if off_axis or not at_most(abs(offset) - bound, play, play):
        return answer(shown, "not_determinable", reason("outside_slot"), known)
    low, high = here["low"], here["high"]
    if not at_most(low, high, play):
        code = "no_window" if side is not None else "fixed_line_unknown"
        return answer(shown, "fail", reason(code), known)
    sure = seen["known"] if simple else 0.0
    verdict = accept(offset - sure, offset + sure, bound - sure, (low, high), simple, shown, play)
    if side is None and verdict == "fail":
        return answer(shown, "fail", reason("fixed_line_unknown"), known)
    why = {"pass": None, "fail": reason("outside_window"), "too_close": reason("slot_too_close")}[verdict]
    return answer(shown, verdict, why, known)
