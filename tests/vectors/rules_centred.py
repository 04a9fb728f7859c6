"""Vectors of the temperatures at which the middle of a slot is right, each worked out by hand.

No published rule exists. Steel 6.5e-6 per °F (AISC), −20…180 °F, half-play (1 − 0.190)/2 = 0.405 in; a crew's 1/8 in
is common practice and leaves 0.280 in.
"""

from tests.vectors.rules_capacity import HAND, q, vector

RANGE = {"expansion": q("6.5e-6", "/F"), "metal_low": q("-20", "F"), "metal_high": q("180", "F"),
         "offset_error": q("0.125", "in")}  # fmt: skip
SLOT = {**RANGE, "slot": q("1", "in"), "shank": q("0.190", "in"), "distance": q("30", "ft")}
TAB = {**RANGE, "travel_outward": q("1", "in"), "travel_inward": q("1", "in"), "distance": q("100", "ft")}
ALUMINIUM = {**SLOT, "expansion": q("13.1e-6", "/F")}
METRIC = {"expansion": q("12e-6", "/K"), "metal_low": q("-30", "C"), "metal_high": q("80", "C"),
          "offset_error": q("3", "mm"), "slot": q("25", "mm"), "shank": q("5", "mm"),
          "distance": q("10", "m")}  # fmt: skip
NEVER = ("fail", "never_centred")


def held(source: str, inputs: dict, least: float, most: float, unit: str = "F") -> dict:
    values = {"from": [least, unit], "to": [most, unit]}
    return vector(f"{source}; {HAND}", "centred@1", inputs, values, within=6e-5)


def refused(source: str, inputs: dict, code: str) -> dict:
    return vector(source, "centred@1", inputs, {}, refused=code)


VECTORS = [
    held("30 ft: 0.280 in is used up by 0.280/0.00234 = 119.6581 F either way", SLOT, 60.3419, 99.6581),
    held("40 ft without any error: 0.405/0.00312 = 129.8077 F, so between 50.2 and 109.8",
         {**SLOT, "distance": q("40", "ft"), "offset_error": q("0", "in")}, 50.1923, 109.8077),
    vector("40 ft with 1/8 in: from 90.3 and only to 69.7; " + HAND, "centred@1",
           {**SLOT, "distance": q("40", "ft")}, {}, *NEVER),
    held("17.9 ft: 0.280/0.0013962 = 200.5 F covers the whole range of 200", {**SLOT, "distance": q("17.9", "ft")},
         -20, 180),
    held("18 ft no longer: 0.280/0.001404 = 199.4302 F", {**SLOT, "distance": q("18", "ft")}, -19.4302, 179.4302),
    held("35.8 ft, near the longest run set at the day's aim: 0.280/0.0027924 = 100.2722 F",
         {**SLOT, "distance": q("35.8", "ft")}, 79.7278, 80.2722),
    vector("35.9 ft: 99.9929 F either way do not meet; " + HAND, "centred@1", {**SLOT, "distance": q("35.9", "ft")},
           {}, *NEVER),
    held("aluminium 13.1e-6: always up to 8.9 ft, 0.280/0.00139908 = 200.1 F",
         {**ALUMINIUM, "distance": q("8.9", "ft")}, -20, 180),
    held("aluminium at 17.8 ft: 0.280/0.00279816 = 100.0658 F", {**ALUMINIUM, "distance": q("17.8", "ft")}, 79.9342,
         80.0658),
    held("on the fixed line nothing moves", {**SLOT, "distance": q("0", "ft")}, -20, 180),
    held("a tab with 1 in each way over 100 ft: 0.875/0.0078 = 112.1795 F", TAB, 67.8205, 92.1795),
    held("a tab with 1 in outward and 1/2 inward over 60 ft: 0.875/0.00468 = 186.9658 F growing, 0.375/0.00468 = "
         "80.1282 F shrinking", {**TAB, "travel_inward": q("0.5", "in"), "distance": q("60", "ft")}, -6.9658, 60.1282),
    vector("inward travel below the error: mid-travel is never right", "centred@1",
           {**TAB, "travel_inward": q("0.1", "in"), "distance": q("1", "ft")}, {}, *NEVER),
    vector("an error over the half-play, on the fixed line too", "centred@1",
           {**SLOT, "offset_error": q("0.5", "in"), "distance": q("0", "ft")}, {}, *NEVER),
    held("10 m at 12e-6 per K, 10 mm of half-play, 3 mm of error: 7/0.12 = 58.3333 K", METRIC, 21.6667, 28.3333, "C"),
    refused("a slot and a clip at once", {**SLOT, **TAB}, "one_of"),
    refused("neither slot nor clip", {**RANGE, "distance": q("30", "ft")}, "missing"),
    refused("a slot without its shank", {key: SLOT[key] for key in SLOT if key != "shank"}, "missing"),
    refused("a clip without its inward travel", {key: TAB[key] for key in TAB if key != "travel_inward"}, "missing"),
    refused("a shank that fills its slot", {**SLOT, "shank": q("1", "in")}, "shank_fills_slot"),
    refused("low above high, of a slot", {**SLOT, "metal_low": q("190", "F")}, "range_reversed"),
    refused("low above high, of a clip", {**TAB, "metal_low": q("190", "F")}, "range_reversed"),
]  # fmt: skip
