"""The morning's card agrees with the rulebook at every cell, turns toward the ridge, and says what is not told."""

import copy
import itertools
import json
from typing import Any

import pytest

from inspect_app.record.ask import ask
from inspect_app.record.card import card
from inspect_app.record.card_mark import exact_text, mark_near, tape_text
from inspect_app.record.card_run import parts_of
from inspect_app.rules.refused import Refused
from inspect_app.rules.rulebook import judge
from tests.micropython.test_parity import compare


def q(value: str, unit: str) -> dict[str, str]:
    return {"value": value, "unit": unit}


JOB = {"metal_low": q("-20", "F"), "metal_high": q("180", "F"), "placing_error": q("0.125", "in")}
STEEL = {"expansion": q("6.5e-6", "/F"), "longest_run": q("120", "ft")}
FLANGE = STEEL | {"attachment": "nail_flange", "slot_length": q("1", "in"), "fastener_diameter": q("0.190", "in")}
CLIP = STEEL | {"attachment": "expansion_clip", "clip_travel_outward": q("1", "in"),
                "clip_travel_inward": q("1", "in")}  # fmt: skip


def area(length: str, fixed: str | None, unit: str = "ft") -> dict[str, Any]:
    points = [["0", "0"], ["64", "0"], ["64", length], ["0", length]]
    return {"outline": {"unit": unit, "points": points},
            "fixed_line": None if fixed is None else {"from_low_end": q(fixed, unit), "by": "zee"}}  # fmt: skip


def cells(told: dict[str, Any], side: str, part: str) -> dict[str, dict[str, Any]]:
    """Column name -> cell."""
    piece = next(one for one in told["pieces"] if one["side"] == side)
    row = next(one for one in piece["parts"] if one["name"] == part)
    return {column["name"]: one for column, one in zip(told["columns"], row["cells"], strict=True)}


def test_forty_feet_of_steel_and_the_crew_s_eighth_do_not_go_together_and_nothing_is_aimed_at():
    """By hand: half-window (0.81 − 0.624)/2 = 0.093 in; set at the aim 35.9 ft would go, centred 17.9 ft."""
    told = card(JOB, FLANGE, area("40", "40"), q("70", "F"))
    assert told["together"] is False and told["lead"]["holds"] == "never"
    assert told["longest"] == {"aimed": {"value": 35.0, "unit": "ft"}, "centred": {"value": 17.0, "unit": "ft"}}
    far = cells(told, "eave", "far")
    assert {one["verdict"] for one in far.values()} == {"too_close"}
    assert {(one["third"], one["mark"]) for one in far.values()} == {(None, None)}
    assert (far["now"]["low"]["value"], far["now"]["high"]["value"]) == pytest.approx((-0.1242, 0.0618), abs=1e-9)
    assert {one["verdict"] for one in cells(told, "eave", "middle").values()} == {"pass"}


def test_thirty_feet_lead_with_whole_degrees_that_hold():
    """By hand: 60.34 to 99.66 °F; whole degrees inward."""
    lead = card(JOB, FLANGE, area("30", "30"))["lead"]
    assert lead == {"holds": "between", "side": "eave", "run": {"value": 30.0, "unit": "ft"},
                    "from": {"value": 61.0, "unit": "F"}, "to": {"value": 99.0, "unit": "F"}}  # fmt: skip
    assert card(JOB, FLANGE, area("17.9", "0"))["lead"]["holds"] == "always"
    drift = card(JOB, FLANGE, area("40", "40"))["drift"]  # by hand: 6.5e-6 × 480 in × 10 °F
    assert drift["change"] == q("10", "dF") and drift["movement"]["value"] == pytest.approx(0.0312, abs=1e-9)
    squeezed = card(JOB, FLANGE, area("35.89", "0"))["lead"]  # 79.98 to 80.02 °F: no whole degree but 80
    assert (squeezed["from"]["value"], squeezed["to"]["value"]) == (80.0, 80.0)


def test_the_longer_piece_leads_whichever_side_it_lies_on():
    assert card(JOB, FLANGE, area("40", "10"))["lead"]["side"] == "ridge"
    told = card(JOB, FLANGE, area("40", "30"))
    assert [(one["side"], one["run"]["value"]) for one in told["pieces"]] == [("ridge", 10.0), ("eave", 30.0)]
    assert told["lead"]["side"] == "eave"


@pytest.mark.parametrize(("fixed", "side", "free"), [("0", "ridge", "ridge"), ("30", "eave", "eave")])
def test_on_hot_metal_a_screw_stands_toward_the_fixed_line_and_a_tab_toward_the_free_end(fixed, side, free):
    held = "eave" if free == "ridge" else "ridge"
    screw = cells(card(JOB, FLANGE, area("30", fixed)), side, "far")
    tab = cells(card(JOB, CLIP, area("30", fixed)), side, "far")
    assert (screw["hot"]["mark"]["toward"], tab["hot"]["mark"]["toward"]) == (held, free)
    assert (screw["cold"]["mark"]["toward"], tab["cold"]["mark"]["toward"]) == (free, held)
    assert screw["mild"]["mark"]["toward"] == tab["mild"]["mark"]["toward"] == "middle"


def test_a_tab_at_130_f_on_100_ft_belongs_where_it_was_worked_out_by_hand():
    """±1 in, 100 ft of steel, −20…180 °F: 0.170 to 0.610, aim 0.390 in toward the free end."""
    for fixed, side, turn in (("0", "ridge", 1), ("100", "eave", -1)):
        told = cells(card(JOB, CLIP, area("100", fixed), q("130", "F")), side, "far")["now"]
        ends = sorted(turn * value for value in (0.170, 0.610))
        assert [told["low"]["value"], told["high"]["value"]] == pytest.approx(ends, abs=1e-9)
        assert told["aim"]["value"] == pytest.approx(turn * 0.390, abs=1e-9)
        assert told["mark"]["text"] == "3/8" and told["third"] == ("toward_ridge" if turn == 1 else "toward_eave")


def test_a_clip_whose_travel_leaves_the_crew_no_room_is_told_like_a_slot():
    """By hand: 115 ft moves 1.794 of 2 in, half-window 0.103 in; 1.75 in over 0.0013 is 112 ft."""
    told = card(JOB, CLIP, area("115", "0"))
    assert told["together"] is False and told["longest"]["aimed"]["value"] == 112.0
    assert {(one["verdict"], one["mark"]) for one in cells(told, "ridge", "far").values()} == {("too_close", None)}
    assert card(JOB, CLIP, area("112", "0"))["together"] is True


def test_unequal_travel_is_turned_with_the_free_end():
    uneven = CLIP | {"clip_travel_inward": q("0.5", "in")}
    up, down = (card(JOB, uneven, area("60", fixed))["pieces"][0]["hole"] for fixed in ("0", "60"))
    assert (up["eave"]["value"], up["ridge"]["value"]) == (-0.5, 1.0)
    assert (down["eave"]["value"], down["ridge"]["value"]) == (-1.0, 0.5)


RUNS = [*itertools.product(["12", "30", "35", "38"], ["0", "5.5", "12"], [-20, 47, 180])]


@pytest.mark.parametrize(("length", "fixed", "now"), RUNS)
def test_every_cell_is_the_window_rule_s_answer_turned_toward_the_ridge(length, fixed, now):
    told = card(JOB, FLANGE, area(length, fixed), q(str(now), "F"))
    seen = 0
    for piece in told["pieces"]:
        turn = 1 if piece["side"] == "ridge" else -1
        for part in piece["parts"]:
            for column, one in zip(told["columns"], part["cells"], strict=True):
                found = judge("window@1", {
                    "distance": q(str(part["to"]["value"]), "ft"), "expansion": FLANGE["expansion"],
                    "metal_low": JOB["metal_low"], "metal_high": JOB["metal_high"], "slot": FLANGE["slot_length"],
                    "metal_now": q(str(column["metal"]["value"]), "F"), "shank": FLANGE["fastener_diameter"],
                    "placing_error": JOB["placing_error"],
                })  # fmt: skip
                assert one["verdict"] == found["verdict"]
                low, high = one["low"]["value"], one["high"]["value"]
                assert sorted([turn * low, turn * high]) == pytest.approx(
                    [found["values"]["low"]["value"], found["values"]["high"]["value"]], abs=1e-12)
                assert turn * one["aim"]["value"] == pytest.approx(found["values"]["aim"]["value"], abs=1e-12)
                if one["verdict"] == "pass":  # a third of the play, as a reading by thirds takes it
                    third = 0.405 / 3
                    aim = one["aim"]["value"]
                    assert one["third"] == ("middle" if abs(aim) <= third else
                                            "toward_ridge" if aim > 0 else "toward_eave")  # fmt: skip
                if one["mark"] and one["mark"]["text"]:  # what the crew reads holds with its error, at every part
                    assert low + 0.125 - 1e-9 <= offset(one["mark"]) <= high - 0.125 + 1e-9
                seen += 1
    assert seen == 12 * len(told["pieces"])


def offset(mark: dict[str, Any]) -> float:
    """The mark as a person measures it, toward the ridge."""
    whole, _, rest = mark["text"].rpartition(" ")
    over, _, under = rest.partition("/")
    size = int(whole or 0) + int(over) / int(under or 1)
    return {"ridge": size, "eave": -size, "middle": 0.0}[mark["toward"]]


@pytest.mark.parametrize("kind", [FLANGE, CLIP])
def test_what_is_inside_at_a_part_s_far_end_is_inside_all_the_way_back(kind):
    """So a part may be judged at its far end, wherever it is cut."""
    told = card(JOB, kind, area("34", "0"), q("150", "F"))
    rows = [part["cells"] for part in told["pieces"][0]["parts"]]
    for nearer, farther in itertools.pairwise(rows):
        for inner, outer in zip(farther, nearer, strict=True):
            assert outer["low"]["value"] <= inner["low"]["value"] <= inner["high"]["value"] <= outer["high"]["value"]


def test_parts_end_at_whole_feet_and_half_metres_and_miss_no_inch():
    assert parts_of(40.0, "ft") == [("near", 0.0, 13.0), ("middle", 13.0, 27.0), ("far", 27.0, 40.0)]
    assert parts_of(10.0, "m") == [("near", 0.0, 3.5), ("middle", 3.5, 6.5), ("far", 6.5, 10.0)]
    for run in (0.2, 3.0, 5.9, 6.0, 6.1, 7.5, 39.7, 113.3):
        (_, zero, near), (_, again, middle), (_, farther, end) = parts_of(run, "ft")
        assert (zero, again, farther, end) == (0.0, near, middle, run) and 0 < near < middle < run


def test_columns_stand_at_the_quarters_of_the_range_and_say_how_the_metal_feels():
    told = card(JOB, FLANGE, area("30", "30"), q("150", "F"))
    assert [(one["name"], one["metal"]["value"], one["touch"]) for one in told["columns"]] == [
        ("cold", 30.0, "frost"), ("mild", 80.0, None), ("hot", 130.0, "gloves"), ("now", 150.0, "no_skin")]  # fmt: skip
    assert len(card(JOB, FLANGE, area("30", "30"))["columns"]) == 3


def test_metal_outside_the_job_s_range_has_no_place_and_the_other_columns_stay():
    told = card(JOB, FLANGE, area("30", "30"), q("181", "F"))
    assert told["together"] is True
    now = cells(told, "eave", "near")["now"]
    assert (now["verdict"], now["reason"]["code"], now["mark"]) == ("not_determinable", "metal_outside_range", None)


def test_a_metric_job_reads_in_millimetres_and_celsius():
    """By hand: 12 m at 12e-6/K over 110 K moves 15.84 of 20 mm; half-window 2.08 mm, less than the crew's 3."""
    job = {"metal_low": q("-30", "C"), "metal_high": q("80", "C"), "placing_error": q("3", "mm")}
    flange = {"attachment": "nail_flange", "expansion": q("12e-6", "/K"), "slot_length": q("25", "mm"),
              "fastener_diameter": q("5", "mm")}  # fmt: skip
    told = card(job, flange, area("12", "12", "m"), q("25", "C"))
    assert told["unit"] == "mm" and told["together"] is False and told["approved"] is None
    assert told["longest"]["aimed"] == {"value": 10.6, "unit": "m"}  # 14/(12e-6 × 110 × 1000) = 10.606
    ten = card(job, flange, area("10", "10", "m"))
    assert ten["lead"]["from"] == {"value": 22.0, "unit": "C"} and ten["lead"]["to"] == {"value": 28.0, "unit": "C"}


@pytest.mark.parametrize(("assembly", "place", "code"), [
    (FLANGE | {"attachment": "fixed_clip"}, area("40", "40"), "one_piece_clip"),
    ({key: FLANGE[key] for key in FLANGE if key != "slot_length"}, area("40", "40"), "slot_untold"),
    ({key: FLANGE[key] for key in FLANGE if key != "fastener_diameter"}, area("40", "40"), "slot_untold"),
    ({key: CLIP[key] for key in CLIP if key != "clip_travel_inward"}, area("40", "40"), "travel_untold"),
    ({}, area("40", "40"), "attachment_untold"), (FLANGE, area("40", None), "no_fixed_line"),
    (FLANGE, {}, "no_outline"),
    ({key: FLANGE[key] for key in FLANGE if key != "expansion"}, area("40", "0"), "missing_input"),
    (FLANGE, area("40", "41"), "beyond_panel"), (FLANGE, area("40", "-1"), "negative"),
])  # fmt: skip
def test_what_is_not_told_is_said_and_never_guessed(assembly, place, code):
    told = card(JOB, assembly, place, q("70", "F"))
    assert told["reason"]["code"] == code
    assert (told["kind"], told["pieces"], told["lead"], told["together"]) == ("none", [], None, None)


def test_a_run_beyond_the_approved_one_is_told_however_long_the_slot():
    told = card(JOB, CLIP | {"longest_run": q("99", "ft")}, area("100", "0"))
    assert told["approved"] == {"run": q("99", "ft"), "verdict": "fail"} and told["together"] is True


def spoiled() -> list[dict[str, Any]]:
    """Requests in which one quantity of the job, the assembly or the area is what nobody should send."""
    whole = {"job": JOB, "assembly": FLANGE, "area": area("30", "30"), "metal_now": q("70", "F"), "call": "card"}
    requests: list[dict[str, Any]] = []
    junk: list[Any] = ["x", True, 7, [], {}, {"value": "1"}, {"unit": "ft"}]
    junk += [q(value, "in") for value in ("nan", "1e99", "-1", "0")] + [q("1", "F"), q("500", "F"), q("0", "/F")]
    for body, field in [
        ("job", "metal_low"), ("job", "metal_high"), ("job", "placing_error"), ("assembly", "expansion"),
        ("assembly", "slot_length"), ("assembly", "fastener_diameter"), ("assembly", "longest_run"), ("", "metal_now"),
    ]:  # fmt: skip
        for one in junk:
            request = copy.deepcopy(whole)
            (request[body] if body else request)[field] = one
            requests.append(request)
    for one in junk:
        request = copy.deepcopy(whole)
        request["area"]["fixed_line"]["from_low_end"] = one
        requests.append(request)
    return [*requests, whole | {"job": None}, whole | {"area": []}, whole | {"assembly": "x"}]


def test_whatever_the_job_holds_the_card_gives_a_reason_or_names_the_field():
    for request in spoiled():
        told = json.loads(ask(json.dumps(request)))
        if "refused" in told:
            assert told["refused"]["field"] in ("metal_now", "job", "area", "assembly") and told["refused"]["code"]
        elif told["ok"]["reason"] is None:
            assert told["ok"]["pieces"] and told["ok"]["lead"]
        else:
            assert told["ok"]["pieces"] == [] and told["ok"]["kind"] == "none"
    with pytest.raises(Refused, match="metal_now"):
        card(JOB, FLANGE, area("30", "30"), q("70", "in"))


def test_the_phone_draws_the_card_that_the_office_would(tmp_path):
    requests = [*spoiled()[::4]]
    for assembly, length, fixed, now in itertools.product([FLANGE, CLIP], ["17.3", "40"], ["0", "9.1"], ["-20", "96"]):
        requests.append({"call": "card", "job": JOB, "assembly": assembly, "area": area(length, fixed),
                         "metal_now": q(now, "F")})  # fmt: skip
    compare([json.dumps(one) for one in requests], tmp_path)


def test_a_mark_is_the_nearest_that_holds_and_where_none_holds_the_aim_is_given_exactly():
    assert mark_near(0.39, 0.3, 0.5, "in") == {"text": "3/8", "unit": "in", "toward": "ridge", "exact": None}
    assert mark_near(-0.39, -0.5, -0.38, "in")["text"] == "7/16"  # 3/8 is nearer and does not hold
    assert mark_near(-0.42, -1.0, 1.0, "in")["text"] == "7/16"
    assert mark_near(0.01, -0.1, 0.1, "in") == {"text": "0", "unit": "in", "toward": "middle", "exact": None}
    none = mark_near(-0.03, -0.04, -0.02, "in")
    assert none["text"] is None and none["exact"] == {"value": 0.03, "unit": "in"} and none["toward"] == "eave"
    assert mark_near(7.4, 0.0, 20.0, "mm")["text"] == "7"
    assert [tape_text(count, 16) for count in (0, 1, 8, 16, 19)] == ["0", "1/16", "1/2", "1", "1 3/16"]
    assert [exact_text(one, "in") for one in (0.125, 0.09375, 0.1)] == ["1/8", "3/32", None]
    assert [exact_text(one, "mm") for one in (3.0, 2.5, 3.2)] == ["3", "2.5", None]
