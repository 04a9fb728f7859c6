"""Vectors of rules that say how a reading is accepted, and of counts, each with the source of its value.

ILAC: ILAC-G8:09/2019. A guard band of U leaves at most 2.5 % to chance, computed 2.275 %; simple acceptance errs half
of the time at the limit.
"""

from tests.vectors.rules_capacity import HAND, q, vector

TAPE = {"reading": q("29.9", "in"), "at_most": q("30", "in"), "uncertainty": q("0.25", "in")}
SIMPLE = {"acceptance": "simple"}

VECTORS = [
    vector("29.9 read to 1/4 in is too close to 30 under guard (ILAC 4.2)", "limit@2", TAPE,
           {"margin": [0.1, "in"]}, "too_close", "limit_too_close"),
    vector("guard said is guard unsaid (ILAC 4.2)", "limit@2", {**TAPE, "acceptance": "guarded"}, {}, "too_close",
           "limit_too_close"),
    vector("at the limit simple acceptance errs half of the time (ILAC)", "limit@2",
           {**TAPE, **SIMPLE, "reading": q("30", "in")}, {"risk": [0.5, ""]}, "pass", within=1e-9),
    vector("a margin of U leaves 2.275 % (ILAC, below 2.5 %)", "limit@2",
           {**TAPE, **SIMPLE, "reading": q("29.75", "in")}, {"risk": [0.02275, ""]}, "pass", within=1e-5),
    vector("between two limits, one U from each: both sides count, 2 x 2.275 %; " + HAND, "limit@2",
           {**SIMPLE, "reading": q("30", "in"), "at_least": q("29.75", "in"), "at_most": q("30.25", "in"),
            "uncertainty": q("0.25", "in")}, {"risk": [0.0455, ""]}, "pass", within=1e-5),
    vector("simple acceptance of a bad reading fails it", "limit@2", {**TAPE, **SIMPLE, "reading": q("30.1", "in")},
           {}, "fail", "above_limit"),
    vector("a count is exact: nothing is risked", "limit@2", {"reading": 1, "equal": 2, **SIMPLE},
           {"margin": [-1, ""]}, "fail", "below_limit"),
    vector("5 F of doubt is no temperature, also in simple acceptance", "limit@2",
           {**SIMPLE, "reading": q("70", "F"), "at_most": q("75", "F"), "uncertainty": q("5", "dF")},
           {"margin": [5, "dF"], "risk": [0.02275, ""]}, "pass", within=1e-5),
    vector("755 mm against 760 mm (UFC 3-110-03) and 750 mm (UFGS-07416A): the same limit rounded twice", "limit@2",
           {"reading": q("755", "mm"), "at_most": q("750", "mm")}, {"margin": [-5, "mm"]}, "fail", "above_limit"),
    vector("an acceptance of another name", "limit@2", {**TAPE, "acceptance": "generous"}, {}, refused="not_choice"),
    vector("no limit at all", "limit@2", {"reading": 2}, {}, refused="missing"),
    vector("one clip in eight off the leg, none allowed; " + HAND, "count@1", {"count": 1, "of": 8, "at_most": 0},
           {"count": [1, ""], "of": [8, ""], "share": [0.125, ""]}, "fail", "too_many_bad"),
    vector("as many as may be; " + HAND, "count@1", {"count": 2, "of": 32, "at_most": 2}, {"share": [0.0625, ""]},
           "pass"),
    vector("MIL-STD-105E Table II-A, n 32: accept on 1 at AQL 1.5, reject on 2", "count@1",
           {"count": 2, "of": 32, "at_most": 1}, {}, "fail", "too_many_bad"),
    vector("none of none looked at is no pass", "count@1", {"count": 0, "of": 0, "at_most": 0}, {},
           "not_determinable", "none_looked_at"),
    vector("written down without a limit; " + HAND, "count@1", {"count": 3, "of": 12}, {"share": [0.25, ""]}),
    vector("more bad than looked at", "count@1", {"count": 9, "of": 8, "at_most": 0}, {},
           refused="more_than_looked_at"),
    vector("a count without how many were looked at", "count@1", {"count": 1, "at_most": 0}, {}, refused="missing"),
]  # fmt: skip
