"""What a second version keeps of the first, and what guarded and simple acceptance owe each other, for any numbers."""

import json
import statistics
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inspect_app.rules.refused import Refused
from inspect_app.rules.rulebook import judge

VECTORS = json.loads((Path(__file__).parents[1] / "vectors" / "rules.json").read_text("utf-8"))
KEPT = ("slot", "clip", "end_gap", "slope", "spacing", "thickness", "limit")
NORMAL = 60  # cases against the standard library
HELD = settings(max_examples=40, deadline=None, derandomize=True)
RANGE = {"expansion": {"value": "6.5e-6", "unit": "/F"}, "metal_low": {"value": "-20", "unit": "F"},
         "metal_high": {"value": "180", "unit": "F"}, "metal_now": {"value": "70", "unit": "F"}}  # fmt: skip
INCHES = st.decimals("0.001", "3", places=3)


def q(value, unit):
    return {"value": str(value), "unit": unit}


def answered(rule, inputs):
    try:
        return judge(rule, inputs)
    except Refused as refused:
        return {"refused": refused.code, "field": refused.field}


@pytest.mark.parametrize("name", KEPT)
def test_a_second_version_asked_for_nothing_more_answers_as_the_first(name):
    told = [one for one in VECTORS if one["rule"] == f"{name}@1"]
    assert len(told) > 3
    for one in told:
        first, second = (answered(f"{name}@{version}", one["inputs"]) for version in (1, 2))
        if name == "spacing" and first.get("reason") and second["reason"]["code"] == "mean_too_wide":
            assert first["reason"]["code"] == "gap_too_wide"  # only the second tells a mean from a gap
            second["reason"] = first["reason"]
        for part in ("refused", "field", "verdict", "reason", "understood", "inputs"):
            assert first.get(part) == second.get(part), one["source"]
        if name == "spacing" or "refused" in first:
            continue
        kept = {key: second["values"][key] for key in first["values"] if key in second["values"]}
        assert kept == first["values"], one["source"]


# Of each rule a good case, the input that is read, and its unit; the uncertainty is another number of the same unit.
READ = {
    "limit": ({"at_most": q("1", "in")}, "reading", "in"),
    "thickness": ({"gauge": "24", "system": "MSG", "coated": False}, "reading", "in"),
    "spacing": ({"limit": q("1", "in")}, "gaps", "in"),
    "clip": ({**RANGE, "distance": q("40", "ft"), "travel_outward": q("1", "in"), "travel_inward": q("1", "in")},
             "tab", "in"),
    "end_gap": ({**RANGE, "distance": q("40", "ft"), "return": q("1.5", "in"), "engagement": q("0.5", "in")},
                "gap", "in"),
    "slope": ({"minimum": q("1.5", "deg")}, "slope", "deg"),
}  # fmt: skip


@pytest.mark.parametrize("name", READ)
@HELD
@given(reading=INCHES, bound=st.decimals("0.001", "0.2", places=3), tenths=st.booleans())
def test_simple_acceptance_never_fails_what_guarded_passes_and_says_what_it_risks(name, reading, bound, tenths):
    given_, key, unit = READ[name]
    if name == "thickness" or tenths:
        reading, bound = reading / 100, bound / 100  # of a sheet's size
    if not reading:
        return
    inputs = {**given_, key: [q(reading, unit)] if key == "gaps" else q(reading, unit), "uncertainty": q(bound, unit)}
    guarded, simple = (judge(name, {**inputs, "acceptance": one}) for one in ("guarded", "simple"))
    assert guarded["verdict"] in (simple["verdict"], "too_close")
    assert simple["verdict"] in ("pass", "fail")
    assert "risk" not in guarded["values"]
    risk = simple["values"].get("risk", {}).get("value", 0.0)
    assert 0.0 <= risk <= 1.0 and (risk <= 0.5 + 1e-6 or simple["verdict"] == "fail" or name in ("clip", "end_gap"))
    if guarded["verdict"] == "pass":
        assert risk <= 2 * 0.02276  # ILAC-G8:09/2019: 2.275 % on each side


@settings(max_examples=NORMAL, deadline=None, derandomize=True)
@given(reading=INCHES, bound=st.decimals("0.01", "1", places=2), low=INCHES, high=INCHES)
def test_the_risk_is_that_of_another_normal_distribution(reading, bound, low, high):
    """Python's ``statistics``, by both limits: what lies outside them of a normal error of U/2."""
    low, high = sorted((low, high))
    found = judge("limit", {"reading": q(reading, "in"), "at_least": q(low, "in"), "at_most": q(high, "in"),
                            "uncertainty": q(bound, "in"), "acceptance": "simple"})  # fmt: skip
    error = statistics.NormalDist(float(reading), float(bound) / 2)
    outside = error.cdf(float(low)) + 1 - error.cdf(float(high))
    assert found["values"]["risk"]["value"] == pytest.approx(min(outside, 1), abs=1e-12)


@settings(max_examples=NORMAL, deadline=None, derandomize=True)
@given(st.lists(st.decimals("10", "10.6", places=2), min_size=20, max_size=41))
def test_the_middle_of_a_phone_s_readings_is_that_of_another_median(degrees):
    """Python's ``statistics``; the spread is two deviations of a normal error with their median deviation."""
    found = judge("slope", {"readings": [q(one, "deg") for one in degrees]})["values"]
    middle = statistics.median(map(float, degrees))
    deviation = statistics.median(abs(float(one) - middle) for one in degrees)
    assert found["degrees"]["value"] == pytest.approx(middle, abs=1e-12)
    assert found["spread"]["value"] == pytest.approx(2 * deviation / statistics.NormalDist().inv_cdf(0.75), rel=1e-4)


@HELD
@given(feet=st.integers(0, 150), more=st.integers(0, 150))
def test_a_longer_run_never_widens_what_a_tab_or_a_hem_may_be(feet, more):
    for name, sizes in (("clip", {"travel_outward": q("1", "in"), "travel_inward": q("1", "in")}),
                        ("end_gap", {"return": q("2", "in"), "engagement": q("0.5", "in")})):  # fmt: skip
        short, long = (judge(name, {**RANGE, **sizes, "distance": q(d, "ft")})["values"] for d in (feet, feet + more))
        assert long["low"]["value"] >= short["low"]["value"] - 1e-12
        assert long["high"]["value"] <= short["high"]["value"] + 1e-12


@HELD
@given(age=st.integers(0, 100000))
def test_metal_of_more_than_ten_minutes_ago_decides_nothing(age):
    for name in ("clip", "end_gap"):
        inputs, key, unit = READ[name]
        found = judge(name, {**inputs, key: q("0.5", unit), "metal_age": age})
        assert (found["reason"] or {}).get("code") == ("metal_too_old" if age > 600 else None)
        assert (found["verdict"] == "not_determinable") == (age > 600)


@HELD
@given(st.decimals("4", "60", places=1), st.decimals("-2.9", "2.9", places=1))
def test_a_phone_turned_end_for_end_loses_its_own_error(angle, error):
    one, other = ([q(angle + sign * error, "deg")] * 20 for sign in (1, -1))
    found = judge("slope", {"readings": one, "reversed": other})["values"]
    assert found["degrees"]["value"] == pytest.approx(float(angle), abs=1e-9)
    assert found["own_error"]["value"] == pytest.approx(float(error), abs=1e-9)


@HELD
@given(count=st.integers(0, 50), of=st.integers(0, 50), most=st.integers(0, 50))
def test_one_more_bad_thing_never_turns_a_fail_into_a_pass(count, of, most):
    if count < of:
        fewer, more = (judge("count", {"count": n, "of": of, "at_most": most})["verdict"] for n in (count, count + 1))
        assert not (fewer == "fail" and more == "pass")


@HELD
@given(gap=st.decimals("23", "24.5", places=3), mean=st.decimals("22", "24.5", places=3), accepts=st.booleans())
def test_a_count_beside_the_widest_gap_never_makes_it_more_certain(gap, mean, accepts):
    """A mean of ten gaps is ten times as sure as one gap; where it is the wider of the two it lent the gap its own."""
    alone = {"limit": q(24, "in"), "uncertainty": q("0.2", "in"), "gaps": [q(gap, "in")],
             "acceptance": "simple" if accepts else "guarded"}  # fmt: skip
    counted = {**alone, "count": 11, "over": q(mean * 10, "in")}
    one, both = judge("spacing", alone), judge("spacing", counted)
    order = ("pass", "too_close", "fail")
    assert order.index(both["verdict"]) >= order.index(one["verdict"])
    assert both["verdict"] != "pass" or mean <= 24
    risks = [found["values"].get("risk", {"value": 0})["value"] for found in (one, both)]
    assert risks[1] >= risks[0]


def test_a_rough_thermometer_does_not_excuse_a_tap_off_the_slot_s_axis():
    """How the metal moves with its temperature says nothing of where the screw was seen."""
    taps = {"ridge_end": ["0", "0"], "eave_end": ["1000", "0"], "screw": ["500", "250"]}
    slot = {**RANGE, "slot": q(1, "in"), "shank": q("0.19", "in"), "length": q(40, "ft"), "station": q(40, "ft"),
            "fixed_line": q(20, "ft"), "taps": taps, "acceptance": "simple"}  # fmt: skip
    told = [judge("slot", {**slot, "metal_uncertainty": q(rough, "dF")}) for rough in (0, 20)]
    assert [(one["verdict"], one["reason"]["code"]) for one in told] == [("not_determinable", "outside_slot")] * 2
