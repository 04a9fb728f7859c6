"""Write ``rules.json``: what every released rule must answer for ever, with the source of each value.

The expected values come from the published examples and hand arithmetic named beside them, not from the rules.
Run again only to add; a vector of a released version never changes.
"""

import json
from pathlib import Path
from typing import Any

from tests.vectors import (
    rules_accepted,
    rules_agreement,
    rules_capacity,
    rules_centred,
    rules_fit,
    rules_found,
    rules_fresh,
    rules_run,
    rules_sampling,
    rules_slopes,
    rules_wear,
)

STEEL = {"value": "0.0000065", "unit": "/F"}  # AISC, structural steel
ALUMINIUM = {"value": "0.0000131", "unit": "/F"}  # 6061 and 1100, materials table


def q(value: str, unit: str) -> dict[str, str]:
    return {"value": value, "unit": unit}


def vector(source: str, rule: str, inputs: dict[str, Any], values: dict[str, Any], verdict: str | None = None,
           reason: str | None = None, refused: str | None = None) -> dict[str, Any]:  # fmt: skip
    return {"source": source, "rule": rule, "inputs": inputs, "values": values, "verdict": verdict,
            "reason": reason, "refused": refused}  # fmt: skip


RANGE = {"metal_low": q("-20", "F"), "metal_high": q("180", "F")}
SLOT = {"expansion": STEEL, **RANGE, "slot": q("1", "in"), "shank": q("0.190", "in")}
TRAVELLER = {**SLOT, "distance": q("40", "ft"), "metal_now": q("70", "F")}
FOUND = {**SLOT, "metal_now": q("70", "F"), "length": q("40", "ft"), "station": q("0", "ft")}
CLIP = {"distance": q("100", "ft"), "expansion": STEEL, **RANGE, "travel_outward": q("1", "in"),
        "travel_inward": q("1", "in")}  # fmt: skip


def taps(x: int) -> dict[str, list[int]]:
    """A slot of 1000 px, ridge end at 0, screw at x."""
    return {"ridge_end": [0, 100], "eave_end": [1000, 100], "screw": [x, 100]}


def moved(source: str, expansion: dict[str, str], change: str, inches: float) -> dict[str, Any]:
    inputs = {"distance": q("100", "ft"), "expansion": expansion, "change": q(change, "dF")}
    return vector(source, "movement@1", inputs, {"movement": [inches, "in"]})


def gauge(source: str, number: str, system: str, nominal: float, minimum: float) -> dict[str, Any]:
    return vector(source, "thickness@1", {"gauge": number, "system": system},
                  {"nominal": [nominal, "in"], "minimum": [minimum, "in"]})  # fmt: skip


def sloped(source: str, slope: dict[str, str], rise: float, degrees: float, percent: float) -> dict[str, Any]:
    return vector(source, "slope@1", {"slope": slope},
                  {"rise": [rise, "/12"], "degrees": [degrees, "deg"], "percent": [percent, "%"]})  # fmt: skip


HAND = "derived by hand"
VECTORS = [
    moved("AISC coefficient, 100 ft at 100 F", STEEL, "100", 0.780),
    moved("UFGS-07416A 1.4.6 note, uninsulated building, 160 F", STEEL, "160", 1.248),
    moved("UFC 3-110-03 (2006) ch. 4, 200 F", STEEL, "200", 1.560),
    moved("UFGS-07416A 1.4.6 note, insulated building, 220 F", STEEL, "220", 1.716),
    moved("materials table, aluminium 13.1e-6 per F", ALUMINIUM, "100", 1.572),
    vector("association article quoting a roofing manual: 40 ft, 160 F, 6.7e-6, printed 0.51 in", "movement@1",
           {"distance": q("40", "ft"), "expansion": q("6.7e-6", "/F"), "change": q("160", "dF")},
           {"movement": [0.51456, "in"]}),
    vector("a difference never meets the offset of 32: 200 F is 111.111 K; two guides print 93", "movement@1",
           {"distance": q("30.48", "m"), "expansion": q("11.7e-6", "/K"), "change": q("200", "dF")},
           {"movement": [39.624, "mm"]}),
    vector("EN 1993-1-1 3.2.6 (from memory): 10 m steel over 100 K", "movement@1",
           {"distance": q("10", "m"), "expansion": q("12e-6", "/K"), "change": q("100", "K")},
           {"movement": [12.0, "mm"]}),
    vector("40 ft steel set at 70 F in -20..180 F; " + HAND, "window@1", TRAVELLER,
           {"grow": [0.3432, "in"], "shrink": [0.2808, "in"], "play": [0.405, "in"], "low": [-0.0618, "in"],
            "high": [0.1242, "in"], "aim": [0.0312, "in"]}, "pass"),
    vector("a run too long for the slot: 60 ft moves 0.936 in, the slot gives 0.81; " + HAND, "window@1",
           {**TRAVELLER, "distance": q("60", "ft")}, {"grow": [0.5148, "in"], "shrink": [0.4212, "in"]}, "fail",
           "no_window"),
    vector("a crew's 1/8 in (common practice) does not go into a half-window of 0.093; " + HAND, "window@1",
           {**TRAVELLER, "placing_error": q("0.125", "in")}, {}, "too_close", "window_below_placing_error"),
    vector("metal above the job's range", "window@1", {**TRAVELLER, "metal_now": q("190", "F")}, {},
           "not_determinable", "metal_outside_range"),
    vector("slot end hidden under a 0.46 in head: at least 0.27 in from the middle; " + HAND, "slot@1",
           {**FOUND, "fixed_line": q("40", "ft"), "head": q("0.46", "in"), "end_hidden": "ridge"},
           {"toward_ridge": [0.3375, "in"]}, "fail", "outside_window"),
    vector("three taps, free end toward the eave, screw 0.03 toward the eave; " + HAND, "slot@1",
           {**FOUND, "fixed_line": q("40", "ft"), "taps": taps(530)},
           {"offset": [0.03, "in"], "toward_ridge": [-0.03, "in"], "low": [-0.0618, "in"]}, "pass"),
    vector("the same taps with the fixed line at the eave: the station does not move; " + HAND, "slot@1",
           {**FOUND, "fixed_line": q("0", "ft"), "taps": taps(530)},
           {"offset": [-0.03, "in"], "low": [-0.405, "in"], "high": [0.405, "in"]}, "pass"),
    vector("fixed line in the middle, station up-slope of it: free end toward the ridge; " + HAND, "slot@1",
           {**FOUND, "station": q("40", "ft"), "fixed_line": q("20", "ft"), "taps": taps(150)},
           {"offset": [0.35, "in"], "low": [-0.2334, "in"], "high": [0.2646, "in"], "bound": [0.0368, "in"]}, "fail",
           "outside_window"),
    vector("fixed line unknown: either direction must hold, |x| <= 0.405 - 0.3432; " + HAND, "slot@1",
           {**FOUND, "taps": taps(500)}, {"high": [0.0618, "in"], "low": [-0.0618, "in"]}, "pass"),
    vector("the middle third is 0.135 either side, the window smaller; " + HAND, "slot@1",
           {**FOUND, "fixed_line": q("40", "ft"), "third": "middle"}, {"bound": [0.135, "in"]}, "too_close",
           "slot_too_close"),
    vector("a slot of 200 px decides nothing", "slot@1",
           {**FOUND, "taps": {"ridge_end": [0, 0], "eave_end": [200, 0], "screw": [100, 0]}}, {},
           "not_determinable", "photo_too_small"),
    vector("100 ft, tab, metal 130 F; " + HAND, "clip@1", {**CLIP, "metal_now": q("130", "F")},
           {"low": [0.170, "in"], "high": [0.610, "in"], "aim": [0.390, "in"]}),
    vector("100 ft, tab, metal 70 F; " + HAND, "clip@1", {**CLIP, "metal_now": q("70", "F")},
           {"low": [-0.298, "in"], "high": [0.142, "in"], "aim": [-0.078, "in"]}),
    vector("100 ft, tab, metal 20 F; " + HAND, "clip@1", {**CLIP, "metal_now": q("20", "F")},
           {"low": [-0.688, "in"], "high": [-0.248, "in"], "aim": [-0.468, "in"]}),
    vector("hot metal with the tab toward the fixed end; " + HAND, "clip@1",
           {**CLIP, "metal_now": q("130", "F"), "tab": q("0", "in")}, {}, "fail", "tab_outside_window"),
    sloped("IBC 1507.4.2 item 3, printed 2 percent; " + HAND, q("0.25", "/12"), 0.25, 1.1935, 2.0833),
    sloped("IBC 1507.4.2 item 1, printed 25 percent; " + HAND, q("3", "/12"), 3, 14.0362, 25.0),
    sloped(HAND, q("4", "/12"), 4, 18.4349, 33.3333),
    sloped(HAND, q("7", "deg"), 1.4734, 7, 12.2785),
    sloped(HAND, q("12.5", "%"), 1.5, 7.1250, 12.5),
    vector("two printed percents of the code let through less: 2 percent is below 1/4:12", "slope@1",
           {"slope": q("2", "%"), "minimum": q("0.25", "/12")}, {}, "fail", "slope_too_low"),
    vector("at the limit passes", "slope@1", {"slope": q("25", "%"), "minimum": q("3", "/12")}, {}, "pass"),
    vector("755 mm against 760 mm (UFC 3-110-03)", "spacing@1",
           {"gaps": [q("755", "mm")], "limit": q("760", "mm")}, {"longest": [755, "mm"]}, "pass"),
    vector("755 mm against 750 mm (UFGS-07416A)", "spacing@1",
           {"gaps": [q("755", "mm")], "limit": q("750", "mm")}, {}, "fail", "gap_too_wide"),
    vector("a good count alone decides nothing: 11 fasteners over 10 ft; " + HAND, "spacing@1",
           {"count": 11, "over": q("10", "ft"), "limit": q("12", "in")}, {"mean": [12, "in"]}, "not_determinable",
           "widest_gap_needed"),
    gauge("CSSBI Facts 10-12", "24", "MSG", 0.0239, 0.0227),
    gauge("CSSBI Facts 10-12", "26", "MSG", 0.0179, 0.0170),
    gauge("CSSBI Facts 10-12", "28", "MSG", 0.0149, 0.0142),
    gauge("AISI S100 A2.4", "33", "mil", 0.0346, 0.0329),
    gauge("AISI S100 A2.4", "118", "mil", 0.1242, 0.1180),
    gauge("15 U.S.C. 206", "22", "USS", 0.03125, 0.0296875),
    vector("bare 0.0230 against 95 % of 0.0239 (AISI S100 A2.4)", "thickness@1",
           {"gauge": "24", "system": "MSG", "reading": q("0.0230", "in"), "coated": False}, {}, "pass"),
    vector("painted 0.0230 cannot be judged without the coating", "thickness@1",
           {"gauge": "24", "system": "MSG", "reading": q("0.0230", "in"), "coated": True}, {}, "not_determinable",
           "coating_unknown"),
    vector("a coated reading below the bare minimum fails", "thickness@1",
           {"gauge": "24", "system": "MSG", "reading": q("0.0220", "in"), "coated": True}, {}, "fail",
           "metal_too_thin"),
    vector("two fasteners a clip (UFGS-07416A 1.4.9)", "limit@1", {"reading": 1, "equal": 2},
           {"margin": [-1, ""]}, "fail", "below_limit"),
    gauge("CSSBI Facts 10-12, minimum as printed", "22", "MSG", 0.0299, 0.0284),
    gauge("CSSBI Facts 10-12, minimum as printed", "20", "MSG", 0.0359, 0.0341),
    *[gauge("AISI S100 A2.4", number, "mil", nominal, least)
      for number, nominal, least in [("18", 0.0188, 0.0179), ("43", 0.0451, 0.0428), ("54", 0.0566, 0.0538),
                                     ("97", 0.1017, 0.0966)]],
    gauge("15 U.S.C. 206 (3/80 in), 95 % of it " + HAND, "20", "USS", 0.0375, 0.035625),
    gauge("galvanized gauge 24 with its zinc (from memory), least of the same MSG base", "24", "GSG", 0.0276, 0.0227),
    vector("a bare reading at the published minimum passes (CSSBI Facts 10-12: 0.0227)", "thickness@1",
           {"gauge": "24", "system": "MSG", "reading": q("0.0227", "in"), "coated": False}, {}, "pass"),
    vector("the base of a galvanized sheet, zinc taken off, is not too thin; " + HAND, "thickness@1",
           {"gauge": "24", "system": "GSG", "reading": q("0.0272", "in"), "coated": True,
            "coating_thickness": q("0.0036", "in")}, {"base": [0.0236, "in"]}, "pass"),
    vector("a micrometer good to 0.0005 in cannot tell 0.0230 from 0.0227; guard band, ILAC-G8:09/2019 4.2",
           "thickness@1", {"gauge": "24", "system": "MSG", "reading": q("0.0230", "in"), "coated": False,
                           "uncertainty": q("0.0005", "in")}, {}, "too_close", "thickness_too_close"),
    vector("heavier stands (common practice, no source)", "thickness@1",
           {"gauge": "24", "system": "MSG", "reading": q("0.0299", "in"), "coated": False}, {}, "pass",
           "heavier_stands"),
    vector("copper C11000, 9.4e-6 per F (materials table): 100 ft, 100 F", "movement@1",
           {"distance": q("100", "ft"), "expansion": q("9.4e-6", "/F"), "change": q("100", "dF")},
           {"movement": [1.128, "in"]}),
    vector("common practice: a 100 ft steel run moves 5/8 in; 6.5e-6 gives 0.624 at 80 F", "movement@1",
           {"distance": q("100", "ft"), "expansion": q("6.5e-6", "/F"), "metal_low": q("0", "F"),
            "metal_high": q("80", "F")}, {"movement": [0.624, "in"]}),
    sloped("IBC 1507.4.2 item 2, printed 4 percent; " + HAND, q("0.5", "/12"), 0.5, 2.3859, 4.1667),
    sloped("IBC 2018, printed 21 percent; " + HAND, q("2.5", "/12"), 2.5, 11.7683, 20.8333),
    sloped(HAND, q("20", "deg"), 4.3676, 20, 36.3970),
    sloped(HAND, q("27", "deg"), 6.1143, 27, 50.9525),
    sloped(HAND, q("45", "deg"), 12, 45, 100),
    vector("14 degrees is just below 3:12 (14.0362)", "slope@1",
           {"slope": q("14", "deg"), "minimum": q("3", "/12")}, {}, "fail", "slope_too_low"),
    vector("14.5 degrees within 1 degree of 3:12", "slope@1",
           {"slope": q("14.5", "deg"), "minimum": q("3", "/12"), "uncertainty": q("1", "deg")}, {"bound": [1, "deg"]},
           "too_close", "slope_too_close"),
    vector("fixed line unknown and the screw off the middle: worst case, and said so; " + HAND, "slot@1",
           {**FOUND, "taps": taps(200)}, {"offset": [0.3, "in"], "high": [0.0618, "in"]}, "fail",
           "fixed_line_unknown"),
    vector("taps beside the slot's axis: the screw of another slot", "slot@1",
           {**FOUND, "fixed_line": q("40", "ft"), "taps": {"ridge_end": [0, 0], "eave_end": [1000, 0],
                                                            "screw": [500, 400]}}, {}, "not_determinable",
           "outside_slot"),
    vector("taps in the wrong order put the screw past the slot's end", "slot@1",
           {**FOUND, "fixed_line": q("40", "ft"), "taps": taps(1900)}, {}, "not_determinable", "outside_slot"),
    vector("no reading was made", "slot@1", {**FOUND, "fixed_line": q("40", "ft")}, {}, "not_determinable",
           "no_reading"),
    vector("tab of a place toward the eave of the fixed line: signs reverse; " + HAND, "clip@1",
           {key: CLIP[key] for key in CLIP if key != "distance"} | {
               "metal_now": q("130", "F"), "length": q("100", "ft"), "station": q("0", "ft"),
               "fixed_line": q("100", "ft"), "tab": q("-0.39", "in")},
           {"offset": [0.39, "in"], "toward_ridge": [-0.39, "in"], "low": [0.170, "in"]}, "pass"),
    vector("tab with the fixed line unknown: worst case, and said so; " + HAND, "clip@1",
           {key: CLIP[key] for key in CLIP if key != "distance"} | {
               "metal_now": q("80", "F"), "length": q("100", "ft"), "station": q("0", "ft"), "tab": q("0.9", "in")},
           {"low": [-0.22, "in"], "high": [0.22, "in"]}, "fail", "fixed_line_unknown"),
    vector("200 ft moves 3.12 in, the clip travels 2: no place holds; " + HAND, "clip@1",
           {**CLIP, "distance": q("200", "ft"), "metal_now": q("70", "F")}, {}, "fail", "no_travel"),
    vector("the count alone shows too wide a mean: 10 fasteners over 10 ft; " + HAND, "spacing@1",
           {"count": 10, "over": q("10", "ft"), "limit": q("12", "in")}, {}, "fail", "gap_too_wide"),
    vector("the widest of several gaps decides; " + HAND, "spacing@1",
           {"gaps": [q("12", "in"), q("11.5", "in"), q("13", "in")], "limit": q("1", "ft")},
           {"longest": [13, "in"], "limit": [12, "in"]}, "fail", "gap_too_wide"),
    vector("40 ft of screws on 6 in centres (common practice), first to last: 81; " + HAND, "spacing@1",
           {"gaps": [q("6", "in")], "count": 81, "over": q("40", "ft"), "limit": q("6", "in")},
           {"mean": [6, "in"], "longest": [6, "in"]}, "pass"),
    vector("metal at 70 F of at most 180 F, good to 5 F: the margin is a difference; " + HAND, "limit@1",
           {"reading": q("70", "F"), "at_most": q("180", "F"), "uncertainty": q("5", "dF")},
           {"reading": [70, "F"], "margin": [110, "dF"], "uncertainty": [5, "dF"]}, "pass"),
    vector("an uncertainty of 5 F as a temperature would become 15 C", "limit@1",
           {"reading": q("20", "C"), "at_most": q("40", "C"), "uncertainty": q("5", "F")}, {},
           refused="wrong_dimension"),
    vector("moisture of 18 % stays in percent; at most 19 % (common practice)", "limit@1",
           {"reading": q("18", "%"), "at_most": q("19", "%")}, {"margin": [1, "%"]}, "pass"),
    vector("limits the wrong way round", "limit@1",
           {"reading": q("1", "in"), "at_least": q("2", "in"), "at_most": q("1", "in")}, {},
           refused="limits_reversed"),
    vector("a screw thicker than its slot", "window@1", {**TRAVELLER, "shank": q("1", "in")}, {},
           refused="shank_fills_slot"),
    vector("low above high", "window@1", {**TRAVELLER, "metal_low": q("190", "F")}, {}, refused="range_reversed"),
    vector("a place beyond the panel", "slot@1", {**FOUND, "station": q("41", "ft"), "third": "middle"}, {},
           refused="beyond_panel"),
    vector("the head is needed where it hides an end", "slot@1",
           {**FOUND, "fixed_line": q("40", "ft"), "end_hidden": "ridge"}, {}, refused="missing"),
    vector("a gauge of no table", "thickness@1", {"gauge": "27", "system": "MSG"}, {}, refused="unknown_gauge"),
    vector("a gauge without its system is five thicknesses", "thickness@1", {"gauge": "22"}, {}, refused="missing"),
    vector("two mistakes: both interpreters name the same one", "window@1", {"zeta": 1, "alpha": 2}, {},
           refused="unknown_input"),
    vector("no number", "slope@1", {"slope": q("nan", "/12")}, {}, refused="not_decimal"),
    vector("a unit of another kind", "slope@1", {"slope": q("3", "in")}, {}, refused="wrong_dimension"),
    vector("an expansion without its exponent", "movement@1",
           {"distance": q("40", "ft"), "expansion": q("6.5", "/F"), "change": q("80", "dF")}, {},
           refused="out_of_range"),
]  # fmt: skip

if __name__ == "__main__":
    more = (rules_run, rules_capacity, rules_found, rules_accepted, rules_fresh, rules_slopes, rules_fit, rules_centred,
            rules_sampling, rules_agreement, rules_wear)  # fmt: skip
    every = VECTORS + [one for module in more for one in module.VECTORS]
    text = json.dumps(every, indent=1, ensure_ascii=False)
    Path(__file__).with_name("rules.json").write_text(text + "\n", "utf-8")
