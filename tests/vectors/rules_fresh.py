"""Vectors of readings with the metal's age and the acceptance said, and of a slot beside a card, each with its source.

CAMERA: a slot of 1.25 in with a head 0.06 in proud and a card in its plane, projected by central projection
(``tests/rules/pinhole.py``), printed to 0.01 px; the value is where the screw was put.
"""

from tests.vectors.rules_capacity import HAND, q, vector

RANGE = {"expansion": q("6.5e-6", "/F"), "metal_low": q("-20", "F"), "metal_high": q("180", "F"),
         "metal_now": q("70", "F")}  # fmt: skip
FOUND = {**RANGE, "slot": q("1", "in"), "shank": q("0.190", "in"), "length": q("40", "ft"), "station": q("0", "ft"),
         "fixed_line": q("40", "ft")}  # fmt: skip
STILL = {**RANGE, "slot": q("1.25", "in"), "shank": q("0.190", "in"), "length": q("40", "ft"), "station": q("0", "ft"),
         "fixed_line": q("0", "ft"), "head_height": q("0.06", "in")}  # fmt: skip
CLIP = {**RANGE, "metal_now": q("130", "F"), "distance": q("100", "ft"), "travel_outward": q("1", "in"),
        "travel_inward": q("1", "in")}  # fmt: skip
STATION = {name: CLIP[name] for name in CLIP if name != "distance"} | {
    "length": q("100", "ft"), "station": q("0", "ft")}  # fmt: skip
HEM = {**RANGE, "distance": q("40", "ft"), "return": q("1.5", "in"), "engagement": q("0.5", "in"),
       "uncertainty": q("0.0625", "in")}  # fmt: skip
BLIND = {name: HEM[name] for name in HEM if not name.startswith("metal")} | {"change": q("100", "dF")}
SIMPLE = {"acceptance": "simple"}
CAMERA = "central projection, screw put at"


def taps(*pixels: tuple[str, str]) -> dict[str, tuple[str, str]]:
    return dict(zip(("ridge_end", "eave_end", "screw"), pixels, strict=True))


LEVEL = {"card": [["1568.45", "1143.94"], ["1568.45", "1952.86"], ["2075.28", "1952.86"], ["2075.28", "1143.94"]],
         "taps": taps(("2210.13", "1627.27"), ("2210.13", "1323.93"), ("2211.11", "1524.19"))}  # fmt: skip
TILTED = {"card": [["2175.23", "2285.62"], ["2842.95", "1452.11"], ["2311.78", "1088.64"], ["1621.38", "1821.26"]],
          "taps": taps(("1920.44", "1264.70"), ("1655.18", "1535.39"), ("1724.68", "1454.20"))}  # fmt: skip
STEEP = {"card": [["1894.67", "1013.72"], ["1168.56", "1563.87"], ["1659.25", "1943.60"], ["2366.82", "1279.62"]],
         "taps": taps(("2122.15", "1744.21"), ("2373.44", "1492.42"), ("2212.65", "1642.28"))}  # fmt: skip
AT = {"ridge_end": [0, 100], "eave_end": [1000, 100]}

VECTORS = [
    vector(f"{CAMERA} 0.2 in toward the ridge, square on from 12 in", "slot@2", {**STILL, **LEVEL},
           {"toward_ridge": [0.2, "in"]}, "pass", within=0.006),
    vector(f"{CAMERA} 0.3 in toward the eave, from 9 in at 25 degrees; a head's parallax alone is 0.028", "slot@2",
           {**STILL, **TILTED}, {"toward_ridge": [-0.3, "in"]}, "pass", within=0.006),
    vector(f"{CAMERA} 0.2 in toward the ridge, at 40 degrees: too far off square", "slot@2", {**STILL, **STEEP}, {},
           "not_determinable", "photo_too_tilted"),
    vector("the card shows a slot of 1.25 in where 1.5 is approved", "slot@2",
           {**STILL, **LEVEL, "slot": q("1.5", "in")}, {}, "not_determinable", "slot_length_differs"),
    vector("four taps crosswise are no card", "slot@2",
           {**STILL, **LEVEL, "card": [LEVEL["card"][at] for at in (0, 2, 1, 3)]}, {}, "not_determinable",
           "card_not_convex"),
    vector("a card of 240 px beside its slot", "slot@2",
           {**STILL, **LEVEL, "card": [[0, 0], [380, 0], [380, 240], [0, 240]]}, {}, "not_determinable",
           "card_too_small"),
    vector("a square is no card", "slot@2",
           {**STILL, **LEVEL, "card": [[0, 0], [900, 0], [900, 900], [0, 900]]}, {}, "not_determinable", "card_shape"),
    vector("three corners", "slot@2", {**STILL, **LEVEL, "card": LEVEL["card"][:3]}, {}, refused="not_card"),
    vector("a card without the slot's taps", "slot@2", {**STILL, "card": LEVEL["card"]}, {}, refused="missing"),
    vector("without a card as slot@1; " + HAND, "slot@2", {**FOUND, "taps": {**AT, "screw": [530, 100]}},
           {"offset": [0.03, "in"], "low": [-0.0618, "in"]}, "pass"),
    vector("metal read 11 minutes ago", "slot@2",
           {**FOUND, "taps": {**AT, "screw": [530, 100]}, "metal_age": 660}, {"low": [-0.0618, "in"]},
           "not_determinable", "metal_too_old"),
    vector("a second more than ten minutes", "clip@2", {**CLIP, "tab": q("0.390", "in"), "metal_age": 601}, {},
           "not_determinable", "metal_too_old"),
    vector("ten minutes are not older than ten", "slot@2",
           {**FOUND, "taps": {**AT, "screw": [530, 100]}, "metal_age": 600}, {}, "pass"),
    vector("a screw at the window's very edge, 0.1242: simple acceptance passes it and errs half of the time (ILAC-G8)",
           "slot@2", {**FOUND, **SIMPLE, "taps": {**AT, "screw": ["624.2", 100]}},
           {"offset": [0.1242, "in"], "risk": [0.5, ""]}, "pass", within=1e-4),
    vector("the same under guard", "slot@2", {**FOUND, "taps": {**AT, "screw": ["624.2", 100]}}, {}, "too_close",
           "slot_too_close"),
    vector("100 ft, tab at the window's end of 0.610, metal 130 F, rule to 1/16 in: too close; " + HAND, "clip@2",
           {**CLIP, "tab": q("0.610", "in")}, {"low": [0.170, "in"], "high": [0.610, "in"]}, "too_close",
           "tab_too_close"),
    vector("the same by simple acceptance: 50 % (ILAC-G8)", "clip@2", {**CLIP, **SIMPLE, "tab": q("0.610", "in")},
           {"risk": [0.5, ""]}, "pass", within=1e-6),
    vector("1/16 in inside it is one U: 2.275 % (ILAC-G8), the other end far away", "clip@2",
           {**CLIP, **SIMPLE, "tab": q("0.5475", "in")}, {"risk": [0.02275, ""]}, "pass", within=1e-5),
    vector("a tab read with metal of a quarter of an hour ago", "clip@2",
           {**CLIP, "tab": q("0.390", "in"), "metal_age": 900}, {"aim": [0.390, "in"]}, "not_determinable",
           "metal_too_old"),
    vector("a tab at the day's aim, metal just read; " + HAND, "clip@2",
           {**CLIP, "tab": q("0.390", "in"), "metal_age": 0}, {"offset": [0.390, "in"]}, "pass"),
    vector("tab of a place toward the eave of the fixed line: signs reverse, 0.390 toward the eave; " + HAND, "clip@2",
           {**STATION, "fixed_line": q("100", "ft"), "tab": q("-0.390", "in"), "metal_age": 300},
           {"offset": [0.390, "in"], "toward_ridge": [-0.390, "in"]}, "pass"),
    vector("tab with the fixed line unknown, |x| within 0.22 at 80 F: simple acceptance makes no known line of it; "
           + HAND, "clip@2",
           {**STATION, **SIMPLE, "metal_now": q("80", "F"), "tab": q("0.9", "in")}, {"high": [0.22, "in"]}, "fail",
           "fixed_line_unknown"),
    vector("hot metal, tab at mid-travel; " + HAND, "clip@2", {**CLIP, "tab": q("0", "in")}, {}, "fail",
           "tab_outside_window"),
    vector("40 ft at 70 F shrinks 0.2808: a gap of 0.30 read to 1/16 in is too close; " + HAND, "end_gap@2",
           {**HEM, "gap": q("0.30", "in")}, {"low": [0.2808, "in"], "high": [0.6568, "in"]}, "too_close",
           "end_gap_too_close"),
    vector("by simple acceptance 0.30 passes: 0.0192 of 0.0625 is 0.6144 deviations, 26.95 % (normal table)",
           "end_gap@2", {**HEM, **SIMPLE, "gap": q("0.30", "in")}, {"risk": [0.2695, ""]}, "pass", within=2e-4),
    vector("a good gap with old metal", "end_gap@2", {**HEM, "gap": q("0.5", "in"), "metal_age": 3600}, {},
           "not_determinable", "metal_too_old"),
    vector("half an inch of gap holds; " + HAND, "end_gap@2", {**HEM, "gap": q("0.5", "in"), "metal_age": 60}, {},
           "pass"),
    vector("three quarters let the return slip off in the heat; " + HAND, "end_gap@2", {**HEM, "gap": q("0.75", "in")},
           {}, "fail", "return_slips_off"),
    vector("metal not known: 100 F either way over 40 ft is 0.312 in; " + HAND, "end_gap@2",
           {**BLIND, "gap": q("0.5", "in")},
           {"low": [0.312, "in"], "high": [0.688, "in"]}, "pass"),
    vector("a change beside the metal's temperatures", "end_gap@2", {**HEM, "change": q("100", "dF")}, {},
           refused="one_of"),
    vector("neither", "end_gap@2", {name: BLIND[name] for name in BLIND if name != "change"}, {}, refused="missing"),
    vector("an age that is none", "end_gap@2", {**HEM, "metal_age": -1}, {}, refused="negative"),
    vector("a third is an interval and no error: simple acceptance does not narrow it; " + HAND, "slot@2",
           {**FOUND, **SIMPLE, "third": "middle"}, {"bound": [0.135, "in"]}, "too_close", "slot_too_close"),
]  # fmt: skip
