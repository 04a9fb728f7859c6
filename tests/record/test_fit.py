"""The fit check: each line passes, fails and stays open for a reason of its own, and none hides another."""

import json
import re
from pathlib import Path

import pytest

from inspect_app.record import fit_lines
from inspect_app.record.fit import fit
from inspect_app.record.fit_pair import pair
from inspect_app.record.rejudge import rejudge
from tests.record.fit_sample import CLIPS, DAY, FIXED, FLANGE, put, put_into, q, world
from tests.rules.hostile import SPOILED

WORDS = json.loads((Path(__file__).parents[2] / "static" / "words" / "fit.json").read_text("utf-8"))
PLACE = re.compile(r"\{(\w+)\}")
ORDER = ["approval", "slope_drawn", "slope_found", "longest_panel", "run", "fixed_place", "fixed_count", "fold_return",
         "fold_gap", "clearance", "zone:field", "zone:edge", "thickness", "penetration", "deck", "underlayment"]
# line: what makes it fail, and what leaves it open with what to get
FAILS = [
    ("approval", "assembly.approval.expires", "2026-11-24", "expired"),
    ("approval", "assembly.approval.issued", "2026-11-26", "not_yet_in_force"),
    ("slope_drawn", "area.slope", q("2.9", "/12"), "slope_too_low"),
    ("slope_found", "found.slope", q("2.9", "/12"), "slope_too_low"),
    ("longest_panel", "area.panel_length", q("40.1", "ft"), "above_limit"),
    ("run", "job.placing_error", q("0.2", "in"), "run_too_long"),
    ("fixed_count", "found.fixed_lines", 2, "above_limit"),
    ("fixed_count", "found.fixed_lines", 0, "below_limit"),
    ("fold_return", "assembly.fold_return", q("0.8", "in"), "return_too_short"),
    ("fold_gap", "found.fold_gap", q("0.1", "in"), "gap_closes"),
    ("clearance", "found.clearance", q("0.1", "in"), "clearance_too_small"),
    ("zone:edge", "assembly.slot_pitch", q("8", "in"), "slots_too_far_apart"),
    ("thickness", "found.gauge", "26", "lighter_voids"),
    ("thickness", "assembly.tested_gauge", "22", None),
    ("penetration", "found.build_up", q("0.625", "in"), "fastener_too_short"),
    ("deck", "found.deck", "other", "not_as_approved"),
    ("underlayment", "found.underlayment", "other", "not_as_approved"),
]
OPEN = [
    ("approval", "assembly.approval.expires", "assembly.approval"),
    ("slope_drawn", "area.slope", "area.slope"),
    ("slope_drawn", "assembly.minimum_slope", "assembly.minimum_slope"),
    ("slope_found", "found.slope", "found.slope"),
    ("longest_panel", "assembly.longest_run", "assembly.longest_run"),
    ("longest_panel", "area.panel_length", "area.panel_length"),
    ("run", "assembly.slot_length", "assembly.slot_length"),
    ("run", "job.placing_error", "job.placing_error"),
    ("fixed_place", "area.fixed_line", "area.fixed_line"),
    ("fixed_count", "found.fixed_lines", "found.fixed_lines"),
    ("fold_return", "assembly.fold_engagement", "assembly.fold_engagement"),
    ("fold_gap", "found.fold_gap", "found.fold_gap"),
    ("fold_gap", "found.metal_now", "found.metal_now"),
    ("clearance", "found.clearance", "found.clearance"),
    ("clearance", "job.metal_high", "job.metal_high"),
    ("zone:edge", "assembly.zones", "assembly.zones"),
    ("thickness", "found.gauge", "found.gauge"),
    ("thickness", "found.gauge_system", "found.gauge_system"),
    ("penetration", "found.build_up", "found.build_up"),
    ("penetration", "assembly.penetration", "assembly.penetration"),
    ("deck", "found.deck", "found.deck"),
    ("deck", "assembly.deck", "assembly.deck"),
]  # fmt: skip


def lines(roof, day=DAY):
    return {one["line"]: one for one in fit(roof["job"], roof["assembly"], roof["area"], roof["found"], day)}


def verdicts(roof):
    return {name: one["verdict"] for name, one in lines(roof).items()}


def recorded(line):
    """As the phone writes it into an entry: numbers as text, the verdict as its result."""
    verdict = json.loads(json.dumps(line), parse_float=str)
    values = {name: {**one, "value": str(one["value"])} for name, one in verdict["values"].items()}
    return verdict | {"values": values, "result": verdict["verdict"], "rulebook": ""}


def test_a_roof_that_fits_passes_every_line_in_its_order():
    assert [one["line"] for one in fit(*world().values(), DAY)] == ORDER
    assert set(verdicts(world()).values()) == {"pass"}
    clips, fixed = verdicts(world(CLIPS)), verdicts(world(FIXED))
    assert set(clips.values()) == set(fixed.values()) == {"pass"}
    assert "clip_seam" in clips and "run" in clips
    assert "fixed_clip_run" in fixed and "run" not in fixed and "clip_seam" not in verdicts(world())


@pytest.mark.parametrize(("line", "path", "value", "reason"), FAILS)
def test_a_line_fails_for_its_own_reason_and_takes_no_other_with_it(line, path, value, reason):
    roof = world()
    put(roof, path, value)
    if path == "assembly.tested_gauge":  # a gauge tested apart from the one approved, with a system of its own
        roof["assembly"]["tested_gauge_system"], reason = "MSG", "lighter_voids"
    told = lines(roof)
    assert (told[line]["verdict"], told[line]["reason"]["code"]) == ("fail", reason)
    others = ["fold_gap"] if line == "fold_return" else []  # a return that holds no gap fails whatever gap is there
    assert [name for name in told if told[name]["verdict"] != "pass"] == [line, *others]


@pytest.mark.parametrize(("line", "path", "get"), OPEN)
def test_what_is_not_known_leaves_its_line_open_and_says_what_to_get(line, path, get):
    roof = world()
    put(roof, path, None)
    told = lines(roof)
    assert told[line]["verdict"] == "not_determinable" and told[line]["get"] == get
    touched = [name for name in told if told[name]["verdict"] != "pass"]
    assert len(touched) <= 4 and all("get" in told[name] for name in touched)


def test_clips_fail_for_a_seam_or_a_run_that_the_approval_does_not_name():
    roof = world(CLIPS)
    put(roof, "assembly.clip_seams", ["snap_lock"])
    put(roof, "assembly.clip_travel_inward", q("0.2", "in"))
    assert verdicts(roof)["clip_seam"] == "fail"
    assert lines(roof)["run"]["reason"]["code"] == "aim_needed"  # 30 ft: (1.2 − 0.25) / 0.0013 is 60.9 ft aimed
    put(roof, "area.run", q("61", "ft"))
    assert lines(roof)["run"]["verdict"] == "fail"
    roof = world(FIXED)
    put(roof, "area.run", q("30.1", "ft"))
    assert lines(roof)["fixed_clip_run"]["verdict"] == "fail"
    for path in ("assembly.clip_seams", "assembly.fixed_clip_run"):
        put(roof, path, None)
    told = lines(roof)
    assert told["clip_seam"]["get"] == "assembly.clip_seams"
    assert told["fixed_clip_run"]["get"] == "assembly.fixed_clip_run"


def test_a_zone_of_the_area_without_a_spacing_is_not_covered_by_another_s():
    roof = world()
    put(roof, "area.zones", ["field", "corner", "corner"])
    told = lines(roof)
    assert [name for name in told if name.startswith("zone")] == ["zone:field", "zone:corner"]
    assert told["zone:corner"]["verdict"] == "not_determinable" and told["zone:corner"]["get"] == "assembly.zones"
    put(roof, "area.zones", [])
    assert lines(roof)["zones"]["get"] == "area.zones"


def test_a_slope_near_the_minimum_is_decided_by_the_level_and_the_job_s_acceptance():
    """3.01:12 is 14.081 degrees, 0.045 above 3:12 (arithmetic); a 4 ft level is good to 0.15 (record/instruments)."""
    roof = world()
    put(roof, "found.slope", q("3.01", "/12"))
    assert verdicts(roof)["slope_found"] == "too_close"
    put(roof, "found.slope", q("3.05", "/12"))  # 0.225 degrees above: enough for a level, not for an inclinometer
    assert verdicts(roof)["slope_found"] == "pass"
    put(roof, "found.slope_by", None)
    assert verdicts(roof)["slope_found"] == "too_close"
    put(roof, "job.instruments", {"inclinometer": {"uncertainty": q("0.2", "deg"), "source": "its certificate"}})
    assert verdicts(roof)["slope_found"] == "pass"


def test_a_job_that_accepts_simply_takes_the_reading_as_it_stands_and_says_the_risk():
    """0.045 degrees to spare of a level good to 0.15: z is 0.6, beyond it lie 27 in 100 of a normal (table)."""
    roof = world()
    put(roof, "found.slope", q("3.01", "/12"))
    put(roof, "job.acceptance", "simple")
    told = lines(roof)["slope_found"]
    assert told["verdict"] == "pass" and told["values"]["risk"]["value"] == pytest.approx(0.27, abs=0.005)
    put(roof, "found.clearance", q("0.28", "in"))  # 30 ft still grows 0.2574 in at 70 F
    assert lines(roof)["clearance"]["verdict"] == "pass" and "risk" in lines(roof)["clearance"]["values"]
    put(roof, "job.acceptance", "guarded")
    assert verdicts(roof)["slope_found"] == verdicts(roof)["clearance"] == "too_close"


def test_the_metal_s_temperature_is_asked_for_only_where_it_decides():
    """30 ft moves 0.468 in over the range (6.5e-6 × 360 × 200, by hand)."""
    roof = world()
    put(roof, "found.metal_now", None)
    assert lines(roof)["clearance"]["get"] == "found.metal_now"  # 0.5 in less 1/16 in of tape
    put(roof, "found.clearance", q("0.55", "in"))
    assert lines(roof)["clearance"]["verdict"] == "pass"


def test_the_two_numbers_stand_side_by_side_in_the_unit_of_the_limit():
    roof = world()
    put(roof, "area.run", q("36", "ft"))
    run = lines(roof)["run"]["pair"]
    assert [round(run[name]["value"], 4) for name in ("limit", "other", "found", "margin")] == [
        35.8974, 17.9487, 36, -0.1026,
    ]  # fmt: skip
    assert {run[name]["unit"] for name in ("limit", "other", "found", "margin")} == {"ft"}
    told = lines(roof)
    assert told["slope_drawn"]["pair"] == {
        "sense": "at_least", "limit": {"value": 3, "unit": "/12"}, "found": {"value": 4, "unit": "/12"},
        "margin": {"value": 1, "unit": "/12"},
    }  # fmt: skip
    assert told["approval"]["pair"]["margin"] == {"value": 462, "unit": ""}
    gap = told["fold_gap"]["pair"]
    assert gap["limit"]["value"] < gap["found"]["value"] < gap["upper"]["value"]
    put(roof, "found.slope", None)
    assert lines(roof)["slope_found"]["pair"] == {"sense": "at_least", "limit": {"value": 3, "unit": "/12"}}


def test_a_recorded_line_judges_to_the_same_again_and_shows_the_same_two_numbers():
    roofs = [world(), world(CLIPS), world(FIXED)]
    for path in ("found.fold_gap", "found.slope", "found.gauge", "assembly.slot_length", "area.fixed_line"):
        roofs.append(world())
        put(roofs[-1], path, None)
    for roof in roofs:
        for line in lines(roof).values():
            verdict = recorded(line)
            assert rejudge(verdict) in ("same", None), line
            again = pair(line["line"], verdict, roof | {"found": roof["found"] | {"day": DAY}})
            assert again == line["pair"]


def reading(path, roof):
    """The lines that read ``path``, by the table of lines; an attachment decides which lines there are."""
    told = {line["line"] for line in fit_lines.lines(roof["assembly"], roof["found"])
            if any(str(source).startswith(path) for source in line["inputs"].values())}  # fmt: skip
    if path.endswith(("zones", "slot_pitch")):
        told |= {"zone:field", "zone:edge"}
    if path.endswith("metal_now_by"):
        told |= {"fold_gap", "clearance"}
    alone = {"fixed_line": "fixed_place", "panel_length": "fixed_place", "slope_by": "slope_found",
             "fastener_length": "penetration", "tested_gauge": "thickness"}  # fmt: skip
    return told | {path.split(".")[1], alone.get(path.split(".")[1])}


@pytest.mark.parametrize("assembly", [FLANGE, CLIPS], ids=["flange", "clips"])
def test_no_value_whatever_stops_the_check_or_changes_a_line_that_does_not_read_it(assembly):
    calm = verdicts(world(assembly))
    paths = [f"{part}.{name}" for part, things in world(assembly).items() for name in things]
    for number, path in enumerate([*paths, "job.instruments", "job.acceptance", "job", "assembly", "area", "found"]):
        for junk in SPOILED[number % 4 :: 4]:
            roof = put_into(world(assembly), path, junk)
            told = lines(roof)
            json.dumps(list(told.values()), allow_nan=False)
            assert all(one["verdict"] in ("pass", "fail", "too_close", "not_determinable") for one in told.values())
            if "." in path and path != "assembly.attachment":
                changed = {name for name in calm if told.get(name, {}).get("verdict") != calm[name]}
                assert changed <= reading(path, world(assembly)), (path, junk)


@pytest.mark.parametrize("day", ["", "today", "2026-02-30", None, 7])
def test_a_day_that_is_none_opens_the_approval_s_line_alone(day):
    told = lines(world(), day)
    assert [name for name in told if told[name]["verdict"] != "pass"] == ["approval"]


def test_every_line_and_everything_that_can_be_missing_has_words_in_both_languages():
    roofs = [world(one) for one in (FLANGE, CLIPS, FIXED, {**FLANGE, "tested_gauge": "24"})]
    keys = {f"fit.sense.{one['pair']['sense']}" for roof in roofs for one in lines(roof).values()}
    keys |= {f"fit.{part}.{one}" for part in ("line", "why") for one in ("fixed_place", "zone", "zones", "deck")}
    for roof in roofs:
        del roof["found"]["fastener_length"]
        for line in fit_lines.lines(roof["assembly"], roof["found"]):
            keys |= {f"fit.{part}.{line['line']}" for part in ("line", "why")}
            paths = [path for path in line["inputs"].values() if isinstance(path, str)]
            keys |= {"fit.get." + ".".join(path.split(".")[:2]) for path in paths if path != "equal"}
    keys |= {f"fit.get.{one}" for one in ("area.fixed_line", "area.zones", "assembly.zones", "assembly.slot_pitch",
                                          "found.deck", "found.underlayment", "assembly.deck")}  # fmt: skip
    assert len(keys) > 70 and keys <= set(WORDS), keys - set(WORDS)
    for key, text in WORDS.items():
        assert text["en"] and text["es"], key
        assert sorted(PLACE.findall(text["en"])) == sorted(PLACE.findall(text["es"])), key


def test_how_the_metal_s_temperature_was_had_counts_and_nobody_s_word_counts_as_a_guess():
    """30 ft: 6.5e-6 × 360 × 4, 10 and 20 °F are 0.0094, 0.0234 and 0.0468 in, added to the tape's 0.0625 (by hand)."""
    roof = world()
    bounds = {}
    for by in ("contact", "infrared", "estimate", None):
        put(roof, "found.metal_now_by", by)
        bounds[by] = lines(roof)["clearance"]["values"]["bound"]["value"]
    assert bounds["contact"] == pytest.approx(0.0625 + 0.00936)
    assert bounds["infrared"] == pytest.approx(0.0625 + 0.0234)
    assert bounds["estimate"] == bounds[None] == pytest.approx(0.0625 + 0.0468)


@pytest.mark.parametrize("line", [q("-1", "ft"), q("31", "ft"), q("9.2", "m")])
def test_a_fixed_line_that_is_not_on_the_panel_holds_nothing(line):
    roof = put_into(world(), "area.fixed_line.from_low_end", line)
    (told,) = [one for one in fit(*roof.values(), DAY) if one["line"] == "fixed_place"]
    assert (told["verdict"], told["reason"]["code"], told["get"]) == (
        "not_determinable", "beyond_panel", "area.fixed_line")  # fmt: skip


def test_a_fastener_that_was_measured_and_typed_wrong_is_not_taken_for_the_approved_one():
    verdicts_of = [verdicts(put_into(world(), "found.fastener_length", one)) for one in (q("0.5", "in"), None)]
    assert [one["penetration"] for one in verdicts_of] == ["fail", "not_determinable"]
    roof = world()
    del roof["found"]["fastener_length"]
    assert verdicts(roof)["penetration"] == "pass", "while nobody looked the approved one stands"
