"""Vectors of fasteners, clips, zones and decision rules, each with the source of its value.

AISI: a city's public record of S100 values at Fu = 33 ksi and Ω = 3 (screws of CFSEI F701-12), printed to the pound.
"""

from typing import Any

HAND = "derived by hand"
AISI = "AISI S100 table at 33 ksi, Ω 3"
POUNDS = 0.6  # printed to the whole pound


def q(value: str, unit: str) -> dict[str, str]:
    return {"value": value, "unit": unit}


def vector(source: str, rule: str, inputs: dict[str, Any], values: dict[str, Any], verdict: str | None = None,
           reason: str | None = None, refused: str | None = None, within: float | None = None,
           ) -> dict[str, Any]:  # fmt: skip
    told = {"source": source, "rule": rule, "inputs": inputs, "values": values, "verdict": verdict,
            "reason": reason, "refused": refused}  # fmt: skip
    return told if within is None else told | {"within": within}


def pulled(rule: str, thickness: str, size: str, pounds: float) -> dict[str, Any]:
    name = "diameter" if rule == "pull_out@1" else "head"
    inputs = {"thickness": q(thickness, "in"), name: q(size, "in"), "tensile": q("33", "ksi")}
    return vector(f"{AISI}: {thickness} in, {size} in", rule, inputs, {"allowable": [pounds, "lbf"]}, within=POUNDS)


def drawn(source: str, gravity: str, diameter: str, per_inch: float, within: float) -> dict[str, Any]:
    inputs = {"specific_gravity": gravity, "diameter": q(diameter, "in"), "penetration": q("1", "in")}
    return vector(source, "withdrawal@1", inputs, {"per_length": [per_inch, "lbf/in"], "force": [per_inch, "lbf"]},
                  within=within)  # fmt: skip


def edge(least: str, height: str, feet: float) -> dict[str, Any]:
    inputs = {"least_width": q(least, "ft"), "height": q(height, "ft"), "edition": "ASCE 7-10"}
    return vector("ASCE 7-02 note 5 as a designer's handbook prints it", "edge_width@1", inputs,
                  {"width": [feet * 12, "in"]})  # fmt: skip


def risk(source: str, reading: str, limits: dict[str, Any], bound: str, chance: float, within: float, verdict: str,
         reason: str | None = None, rule: str = "guarded") -> dict[str, Any]:  # fmt: skip
    inputs = {"reading": q(reading, "in"), "uncertainty": q(bound, "in"), "rule": rule, **limits}
    return vector(source, "guard@1", inputs, {"risk": [chance, ""]}, verdict, reason, within=within)


CLIP = {"pressure": q("45", "psf"), "basis": "ASD", "width": q("16", "in"), "spacing": q("30", "in"), "fasteners": 2}
HEAD = {"specified": q("0.430", "in"), "found": q("0.430", "in"), "slot_width": q("0.22", "in")}
THICK = {"thickness": q("0.0283", "in"), "tensile": q("33", "ksi")}

VECTORS = [
    pulled("pull_out@1", "0.0188", "0.138", 24), pulled("pull_out@1", "0.0188", "0.164", 29),
    pulled("pull_out@1", "0.0188", "0.216", 38), pulled("pull_out@1", "0.0188", "0.25", 44),
    pulled("pull_out@1", "0.0283", "0.138", 37), pulled("pull_out@1", "0.0283", "0.164", 43),
    pulled("pull_out@1", "0.0283", "0.19", 50), pulled("pull_out@1", "0.0283", "0.216", 57),
    pulled("pull_over@1", "0.0188", "0.272", 84), pulled("pull_over@1", "0.0188", "0.34", 105),
    pulled("pull_over@1", "0.0283", "0.272", 127), pulled("pull_over@1", "0.0283", "0.34", 159),
    vector("the same in SI: 0.71882 mm, 4.826 mm, 227.527 MPa give 50.4 lb; " + HAND, "pull_out@1",
           {"thickness": q("0.71882", "mm"), "diameter": q("4.826", "mm"), "tensile": q("227.527", "MPa")},
           {"allowable": [50.277 * 4.4482216, "N"]}, within=0.05),
    vector("another factor: Ω 2.5 of 150.8 lb; " + HAND, "pull_out@1",
           {**THICK, "diameter": q("0.19", "in"), "omega": "2.5"},
           {"nominal_force": [150.82, "lbf"], "allowable": [60.33, "lbf"]}, within=0.01),
    vector("AISI S100-12 E4.4.2 counts no head over 1/2 in (limit from memory): 700.4 of a 3/4 in head; " + HAND,
           "pull_over@1", {**THICK, "head": q("0.75", "in")},
           {"bearing": [0.5, "in"], "nominal_force": [700.425, "lbf"]}, within=0.01),
    vector("over a slot the tests of round holes say nothing", "pull_over@1",
           {**THICK, "head": q("0.43", "in"), "hole": "slot"}, {}, "not_determinable", "head_over_slot"),
    drawn("NDS 12.2.2, worked example: No. 10, G 0.45, 109 lb per inch", "0.45", "0.19", 109.65, 0.7),
    drawn("NDS 12.2.2, table from memory: No. 6, 98", "0.50", "0.138", 98.3, 0.06),
    drawn("NDS 12.2.2, table from memory: No. 8, 117", "0.50", "0.164", 116.9, 0.06),
    drawn("NDS 12.2.2, table from memory: No. 10, 135", "0.50", "0.190", 135.4, 0.06),
    drawn("NDS 12.2.2, table from memory: No. 12, 154", "0.50", "0.216", 153.9, 0.06),
    drawn("NDS 12.2.2, table from memory: No. 14, 172", "0.50", "0.242", 172.4, 0.06),
    vector("an inch and a half of No. 10 in SI; " + HAND, "withdrawal@1",
           {"specific_gravity": "0.5", "diameter": q("4.826", "mm"), "penetration": q("38.1", "mm")},
           {"per_length": [135.375 * 4.4482216 / 25.4, "N/mm"], "force": [203.0625 * 4.4482216, "N"]}, within=0.001),
    vector("no wood is so heavy: G in kg/m3", "withdrawal@1",
           {"specific_gravity": 500, "diameter": q("0.19", "in"), "penetration": q("1", "in")}, {},
           refused="out_of_range"),
    vector("the head that was specified", "head_compared@1", HEAD, {"ratio": [1, ""]}, "pass"),
    vector("lips of 0.34 against 0.43 over 0.22: 0.02160 of 0.05493 in2, by summing two million strips",
           "head_compared@1", {**HEAD, "found": q("0.340", "in")}, {"ratio": [0.39328, ""]}, "fail", "head_smaller",
           within=1e-4),
    vector("a larger head was not tested either", "head_compared@1",
           {**HEAD, "found": q("0.5", "in"), "tolerance": q("0.015", "in")}, {}, "fail", "head_larger"),
    vector("within what was said to be the same head", "head_compared@1",
           {**HEAD, "found": q("0.42", "in"), "tolerance": q("0.015", "in")}, {}, "pass"),
    vector("a head that its slot lets through", "head_compared@1", {**HEAD, "found": q("0.2", "in")},
           {"ratio": [0, ""]}, "fail", "head_falls_through"),
    vector("a specified head that its slot lets through", "head_compared@1", {**HEAD, "specified": q("0.2", "in")},
           {}, refused="head_through_slot"),
    vector("UFGS-07416A 1.4.5: 45 psf, 16 by 30 in, two fasteners", "clip_force@1", CLIP,
           {"force": [150, "lbf"], "ultimate_needed": [337.5, "lbf"]}, within=0.01),
    vector("UFGS-07416A 1.4.5: the same with one fastener", "clip_force@1", {**CLIP, "fasteners": 1},
           {"ultimate_needed": [450, "lbf"]}, within=0.01),
    vector("75 psf at strength level is 45 in ASD (0.6 W); uplift by its size; " + HAND, "clip_force@1",
           {**CLIP, "pressure": q("-75", "psf"), "basis": "strength"}, {"force": [150, "lbf"]}, within=0.01),
    vector("gaps of 20 and 40 in load their clip as one spacing of 30; " + HAND, "clip_force@1",
           {key: CLIP[key] for key in CLIP if key != "spacing"} | {"gaps": [q("20", "in"), q("40", "in")]},
           {"force": [150, "lbf"]}, within=0.01),
    vector("a clip has two neighbours", "clip_force@1", {**CLIP, "gaps": [q("20", "in")]}, {}, refused="two_gaps"),
    vector("no fastener holds nothing", "clip_force@1", {**CLIP, "fasteners": 0}, {}, refused="too_few"),
    edge("100", "30", 10), edge("200", "20", 8), edge("20", "10", 3), edge("60", "15", 6),
    vector("an edition whose zones are others", "edge_width@1",
           {"least_width": q("100", "ft"), "height": q("30", "ft"), "edition": "ASCE 7-16"}, {},
           refused="unknown_edition"),
    risk("ILAC-G8:09/2019: at the limit, simple acceptance errs half of the time", "30", {"at_most": q("30", "in")},
         "0.25", 0.5, 1e-4, "pass", rule="simple"),
    risk("ILAC-G8:09/2019: the same reading under guard is too close to call", "30", {"at_most": q("30", "in")},
         "0.25", 0.5, 1e-4, "too_close", "limit_too_close"),
    risk("ILAC-G8:09/2019: a guard band of U leaves 2.275 %", "29.75", {"at_most": q("30", "in")}, "0.25", 0.02275,
         1e-5, "pass"),
    risk("multiplier 1.5 (table from memory): 0.135 %", "29.625", {"at_most": q("30", "in")}, "0.25", 0.00135, 1e-5,
         "pass"),
    risk("JCGM 106:2012 (from memory): 509.7 with u 8.6 conforms to at least 490 by 0.99", "509.7",
         {"at_least": q("490", "in")}, "17.2", 0.01, 0.005, "pass"),
    risk("beyond the limit by more than its uncertainty", "30.5", {"at_most": q("30", "in")}, "0.25", 0.99997, 1e-4,
         "fail", "above_limit"),
    vector("a guard for one limit", "guard@1",
           {"reading": 2, "at_least": 1, "at_most": 3, "uncertainty": 1}, {}, refused="one_of"),
]  # fmt: skip
