"""Vectors of a screw found in its window, of tested points and of one gauge against another, each with its source."""

from tests.vectors.rules_capacity import HAND, q, vector

WINDOW = {"expansion": q("6.5e-6", "/F"), "metal_low": q("-20", "F"), "metal_high": q("180", "F"),
          "metal_now": q("70", "F"), "distance": q("40", "ft"), "slot": q("1", "in"),
          "shank": q("0.190", "in")}  # fmt: skip
POINTS = [[q("24", "in"), q("60", "psf")], [q("12", "in"), q("110", "psf")]]
TESTED = {"tested": POINTS, "pressure": q("85", "psf")}
GAUGE = {"gauge": "24", "system": "MSG"}

VECTORS = [
    vector("fixed line unknown: |x| within 0.405 − 0.3432; " + HAND, "window@1", {**WINDOW, "fixed": "unknown"},
           {"low": [-0.0618, "in"], "high": [0.0618, "in"], "aim": [0, "in"]}, "pass"),
    vector("a screw at the day's aim; " + HAND, "window@1", {**WINDOW, "offset": q("0.03", "in")},
           {"offset": [0.03, "in"], "bound": [0, "in"]}, "pass"),
    vector("heat and cold are not the same: 0.1 toward the free end holds, toward the fixed line it does not; " + HAND,
           "window@1", {**WINDOW, "offset": q("-0.1", "in")}, {}, "fail", "outside_window"),
    vector("5 F of doubt in the metal is 0.0156 in over 40 ft; " + HAND, "window@1",
           {**WINDOW, "offset": q("0.12", "in"), "metal_uncertainty": q("5", "dF")}, {"bound": [0.0156, "in"]},
           "too_close", "slot_too_close"),
    vector("a screw beyond its slot is a wrong reading; " + HAND, "window@1", {**WINDOW, "offset": q("0.5", "in")}, {},
           "not_determinable", "outside_slot"),
    vector("a 0.46 in head over an end: at least 0.27 from the middle, the window ends at 0.1242; " + HAND,
           "window@1", {**WINDOW, "hidden_under": q("0.46", "in")}, {}, "fail", "outside_window"),
    vector("near the fixed line the same head may hide a good screw: the window ends at 0.405; " + HAND, "window@1",
           {**WINDOW, "distance": q("0", "ft"), "hidden_under": q("0.46", "in")}, {}, "too_close", "slot_too_close"),
    vector("two readings of one screw", "window@1",
           {**WINDOW, "hidden_under": q("0.46", "in"), "offset": q("0", "in")}, {}, refused="one_of"),
    vector("85 psf: the next closer tested spacing holds (insurer's test data: no straight line); " + HAND,
           "spacing_tested@1", {**TESTED, "gaps": [q("13", "in")]}, {"limit": [12, "in"]}, "fail", "gap_too_wide"),
    vector("85 psf with interpolation allowed, in 1/spacing: 16.0 in, not 18 (ASTM E1592-05 5.2 allows it); " + HAND,
           "spacing_tested@1", {**TESTED, "interpolate": "reciprocal"}, {"limit": [16, "in"]}),
    vector("at a tested point its own spacing; uplift by its size; " + HAND, "spacing_tested@1",
           {**TESTED, "pressure": q("-110", "psf"), "interpolate": "reciprocal"}, {"limit": [12, "in"]}),
    vector("below the weakest point nothing wider than was tested; " + HAND, "spacing_tested@1",
           {**TESTED, "pressure": q("20", "psf"), "interpolate": "reciprocal"}, {"limit": [24, "in"]}),
    vector("above the strongest point nothing is known", "spacing_tested@1",
           {**TESTED, "pressure": q("111", "psf")}, {}, "not_determinable", "beyond_tested"),
    vector("a closer spacing that tested weaker", "spacing_tested@1",
           {**TESTED, "tested": [POINTS[0], [q("12", "in"), q("50", "psf")]]}, {}, refused="tested_contradict"),
    vector("tested points without a pressure", "spacing_tested@1", {"tested": POINTS}, {}, refused="missing"),
    vector("a count of 11 over 10 ft is a mean of 12 in: the widest gap is still to be measured; " + HAND,
           "spacing_tested@1", {**TESTED, "count": 11, "over": q("10", "ft")}, {"mean": [12, "in"]},
           "not_determinable", "widest_gap_needed"),
    vector("26 for a tested 24 is lighter (CSSBI Facts 10-12: 0.0170 below 0.0227)", "thickness@1",
           {"gauge": "26", "system": "MSG", "tested_gauge": "24", "tested_system": "MSG"},
           {"minimum": [0.0170, "in"], "tested_minimum": [0.0227, "in"]}, "fail", "lighter_voids"),
    vector("22 for a tested 24 is heavier and stands (common practice)", "thickness@1",
           {"gauge": "22", "system": "MSG", "tested_gauge": "24", "tested_system": "MSG"}, {}, "pass",
           "heavier_stands"),
    vector("27 mil is below 22 MSG by its base metal (AISI S100 A2.4; CSSBI Facts 10-12)", "thickness@1",
           {"gauge": "27", "system": "mil", "tested_gauge": "22", "tested_system": "MSG"}, {}, "fail",
           "lighter_voids"),
    vector("a reading is judged against what was tested, not against what was ordered", "thickness@1",
           {"gauge": "26", "system": "MSG", "tested_gauge": "24", "tested_system": "MSG", "coated": False,
            "reading": q("0.0175", "in")}, {}, "fail", "metal_too_thin"),
    vector("a tested gauge without its system", "thickness@1", {**GAUGE, "tested_gauge": "24"}, {}, refused="missing"),
]  # fmt: skip
