"""An area that nobody can build is a fact about that area, and takes nothing else of the record with it."""

import pytest

from inspect_app.entry.kinds import check_body
from inspect_app.record.area import from_high_end, longest_run, panel_count
from inspect_app.record.fold import fold
from tests.bodies import body_of
from tests.phone import new_uuid

WIDE = [["0", "0"], ["1e99", "0"], ["0", "9"]]


def counted(coverage, **changed):
    body = body_of("area") | {"coverage": coverage} | changed
    check_body("area", body)  # the server takes it
    entries = [{"digest": kind, "kid": "K", "payload": {
        "kind": kind, "subject": new_uuid(), "replaces": [], "by": "p", "at": "", "clock": {}, "seq": seq,
        "prev": "area" if seq else None, "body": told,
    }} for seq, (kind, told) in enumerate([("area", body), ("walk", body_of("walk"))])]  # fmt: skip
    record = fold(entries, {"p": {"name": "P", "role": "foreman", "kids": ["K"]}})
    assert len(record["walks"]) == 1
    return next(iter(record["areas"].values()))["panel_count"]


@pytest.mark.parametrize("value", ["1e99", "-1e99", "0", "-16", "1e-99", "5000000"])
def test_a_coverage_that_no_panel_has_leaves_the_panels_uncounted(value):
    assert counted({"value": value, "unit": "in"}) is None


def test_a_width_that_no_roof_has_leaves_the_panels_uncounted():
    area = body_of("area")
    wide = {"outline": area["outline"] | {"points": WIDE}, "edges": ["eave", "rake", "rake"]}
    assert counted({"value": "16", "unit": "in"}, **wide) is None


def test_panels_are_counted_up_to_the_ripped_one():
    outline = {"outline": {"unit": "ft", "points": [["0", "0"], ["10", "0"], ["10", "9"]]}}
    assert panel_count(outline | {"coverage": {"value": "16", "unit": "in"}}, None) == 8  # 7.5, by hand
    assert panel_count(outline, {"coverage": {"value": "12", "unit": "in"}}) == 10


@pytest.mark.parametrize(
    ("fixed", "run"),
    [(None, "40"), ({"value": "0", "unit": "ft"}, "40"), ({"value": "40", "unit": "ft"}, "40"),
     ({"value": "10", "unit": "ft"}, "30.0"), ({"value": "300", "unit": "in"}, "25.0"),
     ({"value": "60", "unit": "ft"}, "40"), ({"value": "-1", "unit": "ft"}, "40")],
)  # fmt: skip
def test_the_longest_run_is_from_the_fixed_line_to_the_farther_end_and_all_of_it_where_none_is_told(fixed, run):
    body = {"outline": {"unit": "ft", "points": [["0", "0"], ["64", "0"], ["64", "40"], ["0", "40"]]},
            "fixed_line": fixed and {"from_low_end": fixed, "by": "clip"}}  # fmt: skip
    assert longest_run(body) == {"value": run, "unit": "ft"}
    assert longest_run({"fixed_line": body["fixed_line"]}) is None


@pytest.mark.parametrize(
    ("fixed", "left"),
    [(None, None), ({"value": "0", "unit": "ft"}, "40.0"), ({"value": "480", "unit": "in"}, "0.0"),
     ({"value": "300", "unit": "in"}, "15.0"), ({"value": "60", "unit": "ft"}, None)],
)  # fmt: skip
def test_the_high_end_is_as_far_from_the_fixed_line_as_is_left_of_the_panel(fixed, left):
    body = {"outline": {"unit": "ft", "points": [["0", "0"], ["64", "0"], ["64", "40"], ["0", "40"]]},
            "fixed_line": fixed and {"from_low_end": fixed, "by": "clip"}}  # fmt: skip
    assert from_high_end(body) == (left and {"value": left, "unit": "ft"})
