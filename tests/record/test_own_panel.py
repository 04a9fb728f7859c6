"""Where the fixed line follows an end of every panel, a verdict at a station is about that panel and no other."""

import json

import pytest

from inspect_app.record.area import longest_run, panel_length
from inspect_app.record.judge import judge_item
from inspect_app.record.own_panel import with_own_panel
from tests.rules.roofs import ELL, HIP, RECTANGLE, TRIANGLE, VALLEY_AND_HIP, area, assembly, hole, q

MOVES = {"rule": {"name": "movement@1", "inputs": {
    "distance": "area.fixed_line.from_high_end", "expansion": q("6.5e-6", "/F"), "change": q("200", "dF"),
}}}  # fmt: skip
TAB = {"rule": {"name": "clip@1", "inputs": {
    "length": "area.panel_length", "station": "station.from_low_end", "fixed_line": "area.fixed_line.from_low_end",
    "expansion": q("6.5e-6", "/F"), "metal_low": q("-20", "F"), "metal_high": q("180", "F"), "metal_now": q("80", "F"),
    "travel_outward": q("1", "in"), "travel_inward": q("1", "in")}}}  # fmt: skip


def context(body, panel, at="3", line="10", **changed):
    told = body | {"fixed_line": {"from_low_end": q(line, "ft"), "by": "invented"} | changed}
    told |= {"panel_length": panel_length(told), "run": longest_run(told)}
    station = {"panel": panel, "from_low_end": q(at, "ft"), "zone": "field"}
    return {"job": {}, "assembly": assembly(field="12"), "area": told, "walk": {}, "station": station, "reading": {}}


def moved(answer):
    return answer["values"]["grow"]["value"] + answer["values"]["shrink"]["value"]


@pytest.mark.parametrize(("panel", "length"), [(1, 10), (11, 10), (12, 8), (13, 6), (15, 2)])
def test_a_line_along_the_hip_is_at_each_panel_s_own_high_end(panel, length):
    """The hip takes 2 ft from each panel on: 10, 8, 6, 4, 2 ft. A clip 1 ft up moves with length − 1 ft of panel:
    6.5e-6 × 200 °F × that."""
    found = judge_item(TAB, context(HIP, panel, at="1", end="high"))
    assert found["inputs"]["length"] == found["inputs"]["fixed_line"] == {"value": str(length), "unit": "ft"}
    assert moved(found) == pytest.approx(6.5e-6 * 200 * (length - 1) * 12)


def test_a_line_below_the_high_end_stays_as_far_below_every_high_end():
    """Told 9 of 10 ft up: a foot below the end. On the 6 ft panel that is 5 ft up."""
    own = with_own_panel(context(HIP, 13, line="9", end="high"))["area"]
    assert own["fixed_line"]["from_low_end"] == q("5", "ft") and own["fixed_line"]["from_high_end"] == q("1", "ft")
    assert own["panel_length"] == q("6", "ft") and own["run"] == q("5", "ft")


def test_a_line_along_the_valley_is_as_far_from_every_low_end():
    own = with_own_panel(context(HIP, 13, line="0.5", end="low"))["area"]
    assert own["fixed_line"]["from_low_end"] == q("0.5", "ft") and own["fixed_line"]["from_high_end"] == q("5.5", "ft")


def test_a_line_that_passes_the_panel_by_is_never_an_advantage():
    """Told 5 ft from the high end of 10: it misses a 4 ft panel, and there is no verdict instead of a good one."""
    found = judge_item(TAB, context(HIP, 14, at="1", line="5", end="high"))
    assert found["verdict"] == "not_determinable"


@pytest.mark.parametrize("panel", [0, 16, None, "3", True])
def test_a_panel_that_is_not_there_counts_as_an_unknown_line(panel):
    """The worst case: all 10 ft, either way."""
    found = judge_item(TAB, context(HIP, panel, at="1", end="high"))
    assert "fixed_line" not in found["inputs"] and found["inputs"]["length"] == q("10", "ft")
    assert moved(found) == pytest.approx(6.5e-6 * 200 * 10 * 12)
    assert judge_item(MOVES, context(HIP, panel, end="high"))["verdict"] == "not_determinable"


@pytest.mark.parametrize("end", [{}, {"end": None}, {"end": "middle"}])
def test_without_an_end_everything_is_as_it_was(end):
    """To the byte: the context itself comes back."""
    told = context(HIP, 13, **end)
    assert with_own_panel(told) is told
    plain = judge_item(TAB, context(HIP, 13))
    assert json.dumps(judge_item(TAB, told)) == json.dumps(plain)
    assert plain["inputs"]["fixed_line"] == q("10", "ft") == plain["inputs"]["length"]


def test_the_record_s_own_area_is_not_touched_and_a_whole_walk_uses_the_longest_panel():
    told = context(HIP, 13, end="high")
    before = json.dumps(told)
    with_own_panel(told)
    assert json.dumps(told) == before
    assert with_own_panel(told | {"station": None})["area"] is told["area"]


CURB = hole((3, 4), (9, 4), (9, 6), (3, 6))


@pytest.mark.parametrize(
    ("body", "value"),
    [(RECTANGLE, "40"), (TRIANGLE, "10"), (HIP, "10"), (ELL, "20"), (VALLEY_AND_HIP, "12"),
     # Two wings of 6 and 5 ft, one above the other's end: no panel is as long as the roof is high.
     (area([(0, 0), (4, 0), (4, 4), (8, 4), (8, 9), (4, 9), (4, 6), (0, 6)],
           "eave wall eave rake ridge wall ridge rake"), "6"),
     (area([(2, 0), (10, 0), (10, 10), (2, 10)], "eave rake ridge rake", openings=[CURB], coverage=q("8", "ft")), "10"),
     (area([(0, 5), (9, 5), (9, 11), (0, 11)], "eave rake ridge rake"), "6.0"),
     (area([(0, 0), (9, 9), (0, 9), (9, 0)], "eave rake ridge rake"), "9")],
)  # fmt: skip
def test_the_longest_panel_of_any_outline(body, value):
    """A panel that passes a curb is ordered whole; an outline that nobody can build counts by its extent."""
    assert panel_length(body) == {"value": value, "unit": "ft"}
