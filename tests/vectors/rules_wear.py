"""Vectors of a wear mark against the movement computed at its place, each with its source."""

from tests.vectors.rules_capacity import HAND, q, vector

# Guides and manuals print the movement; a mark is set beside it by plain subtraction.
STEEL = {"expansion": q("6.5e-6", "/F"), "metal_low": q("0", "F"), "metal_high": q("200", "F"),
         "distance": q("100", "ft")}  # fmt: skip
NEAR = {**STEEL, "distance": q("40", "ft"), "metal_low": q("-20", "F"), "metal_high": q("180", "F")}

VECTORS = [
    vector("UFC 3-110-03 (2006) ch. 4: 100 ft of steel over 200 F move 1.560 in; a mark as long", "wear@1",
           {**STEEL, "mark": q("1.56", "in"), "uncertainty": q("0.06", "in")},
           {"movement": [1.560, "in"], "difference": [0, "in"], "bound": [0.06, "in"], "swing": [200, "dF"]}, None,
           "wear_as_computed"),
    vector("40 ft, 200 F: 0.624 in; half an inch of mark is 160.26 F worth; " + HAND, "wear@1",
           {**NEAR, "mark": q("0.5", "in"), "uncertainty": q("0.0625", "in")},
           {"movement": [0.624, "in"], "difference": [-0.124, "in"], "swing": [160.25641025641025, "dF"]}, None,
           "wear_shorter"),
    vector("the same mark read to an eighth may be all of it: 0.5 + 0.125 reaches 0.624; " + HAND, "wear@1",
           {**NEAR, "mark": q("0.5", "in"), "uncertainty": q("0.125", "in")}, {}, None, "wear_as_computed"),
    vector("3/4 in ± 1/16 is longer than 0.624; " + HAND, "wear@1",
           {**NEAR, "mark": q("0.75", "in"), "uncertainty": q("0.0625", "in")}, {"difference": [0.126, "in"]}, None,
           "wear_longer"),
    vector("EN 1993-1-1 3.2.6 (from memory): 10 m over 100 K move 12 mm; a mark of 9 mm is shorter", "wear@1",
           {"expansion": q("12e-6", "/K"), "metal_low": q("-20", "C"), "metal_high": q("80", "C"),
            "distance": q("10", "m"), "mark": q("9", "mm"), "uncertainty": q("1", "mm")},
           {"movement": [12.0, "mm"], "difference": [-3.0, "mm"], "swing": [75.0, "K"]}, None, "wear_shorter"),
    vector("the line unknown: the movement is the most that it can be, and a shorter mark says nothing; " + HAND,
           "wear@1", {**NEAR, "mark": q("0.5", "in"), "fixed": "unknown"}, {"movement": [0.624, "in"]}, None,
           "wear_line_unknown"),
    vector("beyond the most that it can be it is longer, wherever the line lies; " + HAND, "wear@1",
           {**NEAR, "mark": q("0.75", "in"), "fixed": "unknown"}, {}, None, "wear_longer"),
    vector("at the fixed line nothing moves: any mark is longer, none is as computed; " + HAND, "wear@1",
           {**NEAR, "distance": q("0", "ft"), "mark": q("0.1", "in"), "uncertainty": q("0.06", "in")},
           {"movement": [0, "in"], "difference": [0.1, "in"]}, None, "wear_longer"),
    vector("no mark at all where the metal moves", "wear@1", {**NEAR, "mark": q("0", "in")}, {"swing": [0, "dF"]}, None,
           "wear_shorter"),
    vector("a range told the wrong way round", "wear@1", {**NEAR, "mark": q("1", "in"), "metal_low": q("190", "F")}, {},
           refused="range_reversed"),
    vector("a mark of less than nothing", "wear@1", {**NEAR, "mark": q("-1", "in")}, {}, refused="negative"),
]  # fmt: skip
