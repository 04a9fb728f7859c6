"""What was answered on the invented walk. Verdicts are the rulebook's own, as a phone would record them."""

from typing import Any

from inspect_app.rules.rulebook import judge
from tests.report.sample_ground import FOREMAN, base, digest, q
from tests.report.sample_pictures import LOST, TAB, WHAT, WHAT_1, WHERE, WHERE_1

AREAS = {None: None, "s1": "quay", "s2": "quay", "s3": "quay"}
DEFINITIONS = {"nail-flange": "flange", "clip": "clip", "end-of-day": "day"}
METAL = {
    "expansion": q("0.0000065", "/F"), "metal_low": q("-20", "F"), "metal_high": q("180", "F"),
    "metal_now": q("70", "F"),
}  # fmt: skip
GAPS = [q(inches, "in") for inches in ("11.5", "12", "11.75", "12.25", "12")]


def recorded(rule: str, inputs: dict[str, Any]) -> dict[str, Any]:
    """A verdict as an entry keeps it: numbers as decimal strings."""
    found = judge(rule, inputs)
    values = {name: q(repr(one["value"]), one["unit"]) for name, one in found["values"].items()}
    return {
        "result": found["verdict"], "rule": found["rule"], "rulebook": "R" * 43, "reason": found["reason"],
        "inputs": inputs, "values": values,
    }  # fmt: skip


def by_eye(result: str) -> dict[str, Any]:
    return {"result": result, "rule": None, "rulebook": "R" * 43, "reason": None, "inputs": {}, "values": {}}


def slot(station: str, screw: int) -> dict[str, Any]:
    """Three taps on a slot of 600 pixels that begins at 400, the ridge at the left."""
    return recorded("slot@1", METAL | {
        "slot": q("1", "in"), "shank": q("0.190", "in"), "length": q("40", "ft"), "fixed_line": q("40", "ft"),
        "station": q(station, "ft"), "tilt": q("2", "deg"),
        "taps": {"ridge_end": [400, 300], "eave_end": [1000, 300], "screw": [screw, 301]},
    })  # fmt: skip


def clip(tab: str) -> dict[str, Any]:
    return recorded("clip@1", METAL | {
        "travel_outward": q("1", "in"), "travel_inward": q("1", "in"), "tab": q(tab, "in"),
        "station": q("64", "ft"), "fixed_line": q("0", "ft"), "length": q("100", "ft"),
    })  # fmt: skip


def answer(
    station: str | None, definition: str, name: str, verdict: dict[str, Any], minute: int, **more: Any
) -> dict[str, Any]:
    subject = f"{station or 'walk'}/{definition}/{name}"
    result = verdict["result"]
    version = {"digest": digest(subject), "by": FOREMAN, "at": "2026-11-25T16:10:05.120-05:00", "result": result}
    return base(subject, minute) | {
        "walk": "walk", "station": station, "area": AREAS.get(station, "yard"), "item": name, "result": result,
        "note": "", "photos": [], "definition": digest(DEFINITIONS[definition]),
        "choice": None if verdict["rule"] else result, "reading": None, "verdict": verdict, "versions": [version],
    } | more  # fmt: skip


def answers() -> dict[str, Any]:
    taps = {"instrument": "slot_taps"}
    made = [
        answer("s1", "nail-flange", "identity", by_eye("pass"), 10),
        answer("s1", "nail-flange", "slot", slot("10", 725), 11, photos=[WHERE_1, WHAT_1], reading=taps),
        answer("s1", "nail-flange", "flat", by_eye("pass"), 12),
        answer("s2", "nail-flange", "spacing", recorded("spacing@1", {"gaps": GAPS, "limit": q("12", "in")}), 16,
               reading={"gaps": GAPS}, note="Two gaps opened by a knot in the deck; the crew was told at once."),
        answer("s3", "nail-flange", "slot", slot("28.5", 470), 20, photos=[WHERE, WHAT, LOST], reading=taps,
               note="Screw near the ridge end of its slot."),
        answer("s4", "clip", "tab", clip("0.25"), 30, photos=[TAB], reading={"value": q("0.25", "in")}),
        answer(None, "end-of-day", "loose", by_eye("pass"), 40),
        answer(None, "end-of-day", "seal", by_eye("not_determinable"), 41,
               note="The last lap was already covered by the ridge cap."),
    ]  # fmt: skip
    return {one["id"]: one for one in made}
