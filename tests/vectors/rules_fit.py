"""Vectors of the fit of an assembly to a roof, each with the source of its value."""

from typing import Any

from tests.vectors.rules_capacity import HAND, q, vector

RANGE = {"expansion": q("6.5e-6", "/F"), "metal_low": q("-20", "F"), "metal_high": q("180", "F")}
SLOT = {**RANGE, "slot": q("1", "in"), "shank": q("0.190", "in"), "offset_error": q("0.125", "in")}
DATES = {"day": "2026-11-25", "issued": "2025-03-01", "expires": "2028-03-01"}
SCREW = {"fastener": q("5", "in"), "build_up": q("4.25", "in"), "least": q("0.5", "in")}
WALL = {**RANGE, "distance": q("40", "ft"), "metal_now": q("70", "F"), "clearance": q("0.5", "in")}
FOLD = {**RANGE, "distance": q("40", "ft"), "return": q("1", "in"), "engagement": q("0.375", "in")}
SEAM = {"seam": "snap_lock", "seams": ["snap_lock", "single_lock"]}


def approved(source: str, days: int | None, verdict: str, reason: str | None, **dates: Any) -> dict[str, Any]:
    values = {} if days is None else {"days_left": [days, ""]}
    return vector(source, "in_force@1", {**DATES, **dates}, values, verdict, reason)


VECTORS = [
    vector("1 in slot, 200 F, 40 ft: aimed 430.77 in, so 49.23 in too long; " + HAND, "longest_run@2",
           {**SLOT, "run": q("40", "ft")}, {"run": [480, "in"], "margin": [-49.2308, "in"]}, "fail", "run_too_long"),
    vector("30 ft is within 35.9 ft aimed and beyond 17.9 ft centred; " + HAND, "longest_run@2",
           {**SLOT, "run": q("30", "ft")}, {"aimed": [430.7692, "in"], "centred": [215.3846, "in"],
                                           "margin": [70.7692, "in"]}, "pass", "aim_needed"),
    vector("17 ft holds centred at any temperature; " + HAND, "longest_run@2", {**SLOT, "run": q("17", "ft")}, {},
           "pass"),
    vector("without a run only the two lengths; " + HAND, "longest_run@2", SLOT, {"aimed": [430.7692, "in"]}),
    vector("a clip with 1 in each way takes 112.2 ft aimed, 100 ft has 146.15 in to spare; " + HAND, "longest_run@2",
           {**RANGE, "travel_outward": q("1", "in"), "travel_inward": q("1", "in"), "offset_error": q("0.125", "in"),
            "run": q("100", "ft")}, {"margin": [146.1538, "in"]}, "pass", "aim_needed"),
    vector("a slot without its shank", "longest_run@2", {key: SLOT[key] for key in SLOT if key != "shank"}, {},
           refused="missing"),
    approved("from 2026-11-25 to 2028-03-01: 36 + 365 + 31 + 29 + 1; " + HAND, 462, "pass", None),
    approved("its last day counts (common practice)", 0, "pass", None, day="2028-03-01"),
    approved("the day after", -1, "fail", "expired", day="2028-03-02"),
    approved("its first day counts (common practice)", 1096, "pass", None, day="2025-03-01"),
    approved("the day before it was issued", 1097, "fail", "not_yet_in_force", day="2025-02-28"),
    approved("a century that is no leap year: 1900-02-28 to 1900-03-01 is one day (Gregorian calendar)", 1, "pass",
             None, day="1900-02-28", issued=None, expires="1900-03-01"),
    approved("a century that is one: 2000-02-28 to 2000-03-01 is two days (Gregorian calendar)", 2, "pass", None,
             day="2000-02-28", issued=None, expires="2000-03-01"),
    approved("no expiry on record", None, "not_determinable", "expiry_unknown", expires=None),
    vector("a day that no calendar has", "in_force@1", {**DATES, "day": "2026-02-29"}, {}, refused="not_date"),
    vector("words in place of a date", "in_force@1", {**DATES, "expires": "March 2028"}, {}, refused="not_date"),
    vector("expired before it was issued", "in_force@1", {**DATES, "expires": "2024-03-01"}, {},
           refused="dates_reversed"),
    vector("5 in through 4 in of board and 1/4 in of plate: 0.75 in reaches; " + HAND, "penetration@1", SCREW,
           {"penetration": [0.75, "in"], "margin": [0.25, "in"]}, "pass"),
    vector("4 3/4 in just reaches the least; " + HAND, "penetration@1", {**SCREW, "fastener": q("4.75", "in")},
           {"margin": [0, "in"]}, "pass"),
    vector("4 in ends in the board; " + HAND, "penetration@1", {**SCREW, "fastener": q("4", "in")},
           {"penetration": [-0.25, "in"], "margin": [-0.75, "in"]}, "fail", "fastener_too_short"),
    vector("in SI: 120 mm through 95 mm leaves 25, 20 wanted; " + HAND, "penetration@1",
           {"fastener": q("120", "mm"), "build_up": q("95", "mm"), "least": q("20", "mm")}, {"margin": [5, "mm"]},
           "pass"),
    vector("no fastener", "penetration@1", {**SCREW, "fastener": q("0", "in")}, {}, refused="not_above_zero"),
    vector("40 ft at 70 F still grows 0.3432 in; " + HAND, "clearance@1", WALL,
           {"needed": [0.3432, "in"], "margin": [0.1568, "in"]}, "pass"),
    vector("eleven minutes are too old for thin metal (common practice, no source)", "clearance@1",
           {**WALL, "metal_age": 660}, {}, "not_determinable", "metal_too_old"),
    vector("a quarter inch is closed by the heat; " + HAND, "clearance@1", {**WALL, "clearance": q("0.25", "in")},
           {"margin": [-0.0932, "in"]}, "fail", "clearance_too_small"),
    vector("0.36 in read to 1/16 in and 10 F of doubt: 0.0625 + 0.0312 either way; " + HAND, "clearance@1",
           {**WALL, "clearance": q("0.36", "in"), "uncertainty": q("0.0625", "in"),
            "metal_uncertainty": q("10", "dF")}, {"bound": [0.0937, "in"]}, "too_close", "end_gap_too_close"),
    vector("the same as it stands; the chance of a wrong pass is that of a margin of 0.0168 in 0.0937/2: z 0.3586, "
           "0.36 from a table of the normal", "clearance@1",
           {**WALL, "clearance": q("0.36", "in"), "uncertainty": q("0.0625", "in"), "acceptance": "simple",
            "metal_uncertainty": q("10", "dF")}, {"risk": [0.36, ""]}, "pass", within=0.005),
    vector("metal unknown: 5/8 in holds all of 0.624; " + HAND, "clearance@1",
           {**{key: WALL[key] for key in WALL if key != "metal_now"}, "clearance": q("0.625", "in")},
           {"needed": [0.624, "in"]}, "pass"),
    vector("metal unknown: half an inch holds at some temperatures only; " + HAND, "clearance@1",
           {key: WALL[key] for key in WALL if key != "metal_now"}, {"margin": [-0.124, "in"]}, "not_determinable",
           "metal_needed"),
    vector("metal above the job's range", "clearance@1", {**WALL, "metal_now": q("190", "F")}, {},
           "not_determinable", "metal_outside_range"),
    vector("low above high", "clearance@1", {**WALL, "metal_low": q("190", "F")}, {}, refused="range_reversed"),
    vector("40 ft: 0.624 in of movement and 3/8 in kept (common practice) are 0.999, a 1 in return holds; " + HAND,
           "fold_return@1", FOLD, {"needed": [0.999, "in"], "movement": [0.624, "in"], "margin": [0.001, "in"]},
           "pass"),
    vector("half an inch kept needs 1.124 in; " + HAND, "fold_return@1", {**FOLD, "engagement": q("0.5", "in")},
           {"margin": [-0.124, "in"]}, "fail", "return_too_short"),
    vector("low above high", "fold_return@1", {**FOLD, "metal_low": q("190", "F")}, {}, refused="range_reversed"),
    vector("12 in approved, slots every 6 in: every second one; " + HAND, "zone_spacing@1",
           {"spacing": q("12", "in"), "pitch": q("6", "in")}, {"reached": [12, "in"], "margin": [0, "in"]}, "pass"),
    vector("10 in approved, slots every 6 in: every one, 4 in closer; " + HAND, "zone_spacing@1",
           {"spacing": q("10", "in"), "pitch": q("6", "in")}, {"reached": [6, "in"], "margin": [4, "in"]}, "pass"),
    vector("4 in approved cannot be had with slots every 6 in; " + HAND, "zone_spacing@1",
           {"spacing": q("4", "in"), "pitch": q("6", "in")}, {"margin": [-2, "in"]}, "fail", "slots_too_far_apart"),
    vector("a clip stands anywhere", "zone_spacing@1", {"spacing": q("24", "in")}, {"spacing": [24, "in"]}, "pass"),
    vector("a zone without a spacing", "zone_spacing@1", {"pitch": q("6", "in")}, {}, refused="missing"),
    vector("the approval names the seam", "clip_seam@1", SEAM, {"seams_named": [2, ""]}, "pass"),
    vector("a clip approved for snap-lock on a double-lock panel", "clip_seam@1", {**SEAM, "seam": "double_lock"}, {},
           "fail", "seam_not_named"),
    vector("an approval that names no seam", "clip_seam@1", {**SEAM, "seams": []}, {}, refused="not_choices"),
]  # fmt: skip
