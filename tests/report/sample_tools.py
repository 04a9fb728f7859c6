"""Answers read with the finer instruments, and a walk from the ground: invented, judged by the rulebook itself."""

from typing import Any

from tests.report.sample_answers import METAL, answer, by_eye, recorded
from tests.report.sample_definitions import DEFINITIONS, both, item
from tests.report.sample_ground import base, digest, q

WARM = {"metal_temperature": q("96", "F"), "metal_uncertainty": q("5", "dF"), "metal_by": "infrared", "metal_age": 245}
# A slot of 1.25 in with a card in its plane by central projection, square on from 12 in; the screw 0.2 in toward the
# ridge (tests/vectors/rules_fresh.py).
CARD = [["1568.45", "1143.94"], ["1568.45", "1952.86"], ["2075.28", "1952.86"], ["2075.28", "1143.94"]]
TAPS = {"ridge_end": ["2210.13", "1627.27"], "eave_end": ["2210.13", "1323.93"], "screw": ["2211.11", "1524.19"]}
ONE_WAY = [q(f"1.0{at % 5}", "deg") for at in range(21)]
TURNED = [q(f"1.4{at % 5}", "deg") for at in range(22)]
GAPS = [q(inches, "in") for inches in ("11.5", "11.97", "11.75")]
DEFINITION = {
    "id": "papers", "version": 1, "title": both("Papers and boxes", "Papeles y cajas"), "performed_by": ["foreman"],
    "applies": {}, "per": "area", "hold": True, "sampling": None,
    "items": [
        item("approval", "Is the approval here?", "¿Está la aprobación?"),
        item("slots", "Are the slots the approved ones?", "¿Son las ranuras aprobadas?",
             applies={"attachment": ["nail_flange"]}),
        item("clips", "Are the clips the approved ones?", "¿Son los clips aprobados?",
             applies={"attachment": ["expansion_clip", "fixed_clip"]}),
    ],
}  # fmt: skip
DEFINITIONS[digest("papers")] = DEFINITION
FINE = {
    "card_slot": (recorded("slot@2", METAL | {
        "slot": q("1.25", "in"), "shank": q("0.190", "in"), "length": q("40", "ft"), "station": q("10", "ft"),
        "fixed_line": q("10", "ft"), "taps": TAPS, "card": CARD, "metal_age": 245,
    }), {"taps": TAPS, "card": CARD} | WARM, "slot_taps"),
    "sheet": (recorded("thickness@2", {
        "gauge": "24", "system": "MSG", "reading": q("0.0262", "in"), "coated": True,
        "coating_thickness": q("0.0016", "in"), "uncertainty": q("0.0004", "in"),
    }), {"value": q("0.0262", "in"), "coated": True, "coating": q("0.0016", "in")}, "micrometer"),
    "phone_slope": (recorded("slope@2", {
        "readings": ONE_WAY, "reversed": TURNED, "minimum": q("0.25", "/12"), "uncertainty": q("0.5", "deg"),
        "acceptance": "simple",
    }), {"readings": ONE_WAY, "reversed": TURNED}, "inclinometer"),
    "loose": (recorded("count@1", {"count": 2, "of": 20, "at_most": 3}), {"count": 2, "of": 20}, "count"),
    "crack": (recorded("limit@2", {"reading": q("0", "in"), "at_most": q("0.055", "in"),
                                   "uncertainty": q("0.001", "in")}), {"value": q("0", "in")}, "feeler"),
    "gap": (recorded("limit@2", {"reading": q("0.03", "in"), "at_most": q("0.055", "in")}),
            {"value": q("0.03", "in")}, "feeler"),
    "row": (recorded("spacing@2", {"gaps": GAPS, "limit": q("12", "in"), "uncertainty": q("0.0625", "in")}),
            {"gaps": GAPS}, "gaps"),
}  # fmt: skip


def with_tools(rec: dict[str, Any]) -> dict[str, Any]:
    """The record with the finer readings at place 1."""
    for at, (name, (verdict, reading, _)) in enumerate(FINE.items()):
        one = answer("s1", "nail-flange", name, verdict, 11 + at, reading=reading)
        rec["answers"][one["id"]] = one
    return rec


def from_the_ground(rec: dict[str, Any], area: str = "yard") -> dict[str, Any]:
    """The record with a second walk, of one area and from the ground: one item of it answered."""
    walk = base("papers walk", 45) | {
        "definition": digest("papers"), "areas": [area], "crew": "crew 2", "weather": {"sky": "clear"},
        "placed": [], "fall_protection": "not_on_roof", "stations": [], "answers": [], "photos": [],
        "signoff": rec["walks"]["walk"]["signoff"],
    }  # fmt: skip
    rec["walks"][walk["id"]] = walk
    one = answer(None, "end-of-day", "approval", by_eye("pass"), 46, area=area)
    one |= {"walk": walk["id"], "id": f"{walk['id']}/papers/approval", "definition": digest("papers")}
    rec["answers"][one["id"]] = one
    return rec
