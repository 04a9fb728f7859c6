"""Vectors of the longest run and the folded end, each with the source of its value."""

from tests.vectors.rules_capacity import HAND, q, vector

RANGE = {"expansion": q("6.5e-6", "/F"), "metal_low": q("-20", "F"), "metal_high": q("180", "F")}
SLOT = {**RANGE, "slot": q("1", "in"), "shank": q("0.190", "in"), "offset_error": q("0.125", "in")}
TRAVEL = {**RANGE, "travel_outward": q("1", "in"), "travel_inward": q("1", "in"), "offset_error": q("0.125", "in")}
HEM = {**RANGE, "distance": q("40", "ft"), "metal_now": q("70", "F"), "return": q("1.5", "in"),
       "engagement": q("0.5", "in")}  # fmt: skip

VECTORS = [
    vector("1 in slot, 0.190 in shank, 200 F: aimed 35.9 ft, centred 17.9 ft with the crew's 1/8 in (common "
           "practice); " + HAND, "longest_run@1", SLOT, {"aimed": [430.7692, "in"], "centred": [215.3846, "in"]}),
    vector("without any error: 0.81 in over 0.0013; " + HAND, "longest_run@1", {**SLOT, "offset_error": q("0", "in")},
           {"aimed": [623.0769, "in"], "centred": [311.5385, "in"]}),
    vector("expansion clip with 1 in each way (common practice): 1.75 and 0.875 over 0.0013; " + HAND,
           "longest_run@1", TRAVEL, {"aimed": [1346.1538, "in"], "centred": [673.0769, "in"]}),
    vector("a clip with unequal travel: the shorter way decides at the middle; " + HAND, "longest_run@1",
           {**TRAVEL, "travel_inward": q("0.5", "in")}, {"aimed": [961.5385, "in"], "centred": [288.4615, "in"]}),
    vector("40 ft needs more than the slot gives a crew good to 1/8 in; " + HAND, "longest_run@1",
           {**SLOT, "run": q("40", "ft")}, {}, "fail", "run_too_long"),
    vector("30 ft holds at the day's aim only; " + HAND, "longest_run@1", {**SLOT, "run": q("30", "ft")}, {}, "pass",
           "set_at_aim"),
    vector("17 ft holds centred at any temperature; " + HAND, "longest_run@1", {**SLOT, "run": q("17", "ft")}, {},
           "pass"),
    vector("an error over the half-play leaves no run at all", "longest_run@1",
           {**SLOT, "offset_error": q("0.5", "in"), "run": q("1", "in")}, {"aimed": [0, "in"], "centred": [0, "in"]},
           "fail", "run_too_long"),
    vector("a slot and a clip at once", "longest_run@1", {**SLOT, **TRAVEL}, {}, refused="one_of"),
    vector("neither slot nor clip", "longest_run@1", {**RANGE, "offset_error": q("0.125", "in")}, {},
           refused="missing"),
    vector("a slot without its shank", "longest_run@1", {key: SLOT[key] for key in SLOT if key != "shank"}, {},
           refused="missing"),
    vector("40 ft at 70 F: shrinks 0.2808, grows 0.3432, 1.5 in return, 0.5 in kept; " + HAND, "end_gap@1", HEM,
           {"low": [0.2808, "in"], "high": [0.6568, "in"]}),
    vector("half an inch of gap holds; " + HAND, "end_gap@1", {**HEM, "gap": q("0.5", "in")}, {}, "pass"),
    vector("a quarter closes in the cold; " + HAND, "end_gap@1", {**HEM, "gap": q("0.25", "in")}, {}, "fail",
           "gap_closes"),
    vector("three quarters let the return slip off in the heat; " + HAND, "end_gap@1", {**HEM, "gap": q("0.75", "in")},
           {}, "fail", "return_slips_off"),
    vector("0.30 in read to 1/16 in is too close to 0.2808; " + HAND, "end_gap@1",
           {**HEM, "gap": q("0.30", "in"), "uncertainty": q("0.0625", "in")}, {"bound": [0.0625, "in"]}, "too_close",
           "end_gap_too_close"),
    vector("5 F of doubt in the metal is 0.0156 in over 40 ft; " + HAND, "end_gap@1",
           {**HEM, "gap": q("0.5", "in"), "metal_uncertainty": q("5", "dF")}, {"bound": [0.0156, "in"]}, "pass"),
    vector("a return too short for the run", "end_gap@1", {**HEM, "return": q("1", "in")}, {}, "fail", "no_gap_holds"),
    vector("metal above the job's range", "end_gap@1", {**HEM, "metal_now": q("190", "F")}, {}, "not_determinable",
           "metal_outside_range"),
    vector("low above high", "end_gap@1", {**HEM, "metal_low": q("190", "F")}, {}, refused="range_reversed"),
]  # fmt: skip
