"""What holds of the rules for any numbers at all: symmetry, order, and the same answer in any unit."""

import pint
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inspect_app.rules.refused import Refused
from inspect_app.rules.rulebook import judge
from inspect_app.rules.unit import UNITS, change_unit

REFERENCE = pint.UnitRegistry(autoconvert_offset_to_baseunit=True)
# Ours → Pint's name of the same unit. Slopes are no units there, their conversion is geometry.
NAMES = {
    "in": "inch", "ft": "foot", "mm": "millimeter", "cm": "centimeter", "m": "meter", "F": "degF", "C": "degC",
    "dF": "delta_degF", "dC": "delta_degC", "K": "kelvin", "/F": "1/delta_degF", "/C": "1/delta_degC", "/K": "1/kelvin",
    "psf": "force_pound/foot**2", "kPa": "kilopascal", "lbf": "force_pound", "N": "newton", "kN": "kilonewton",
    "psi": "psi", "ksi": "ksi", "MPa": "megapascal", "lbf/in": "force_pound/inch", "N/mm": "newton/millimeter",
}  # fmt: skip
PAIRS = [(a, b) for a in NAMES for b in NAMES if a != b and UNITS[a][0] == UNITS[b][0]]
NUMBERS = (-40.0, 0.0, 1.0, 200.0, 12345.678)
INCHES = st.decimals("0.05", "2", places=3)
DEGREES = st.integers(-140, 140)  # so that their opposites are temperatures of metal too
HELD = settings(max_examples=60, deadline=None, derandomize=True)


def q(value, unit):
    return {"value": str(value), "unit": unit}


def window(feet, low, now, high, slot="1", shank="0.190", **more):
    return judge("window", {
        "distance": q(feet, "ft"), "expansion": q("6.5e-6", "/F"), "metal_low": q(low, "F"), "metal_now": q(now, "F"),
        "metal_high": q(high, "F"), "slot": q(slot, "in"), "shank": q(shank, "in"), **more,
    })  # fmt: skip


def width(found):
    return found["values"]["high"]["value"] - found["values"]["low"]["value"]


@st.composite
def metal(draw):
    """Low, now, high of the metal in °F, the low below the high."""
    low, now, high = sorted(draw(st.lists(DEGREES, min_size=3, max_size=3, unique=True)))
    return low, now, max(high, low + 20)


def test_every_unit_but_a_slope_s_has_its_name_in_the_reference():
    assert set(NAMES) == {unit for unit in UNITS if UNITS[unit][0] != "slope"}


@pytest.mark.parametrize(("source", "target"), PAIRS, ids=lambda one: one)
def test_a_conversion_is_that_of_an_outside_library(source, target):
    """Pint 0.24, whose table follows NIST SP 811."""
    for number in NUMBERS:
        expected = REFERENCE.Quantity(number, NAMES[source]).to(NAMES[target]).magnitude
        assert change_unit(number, source, target) == pytest.approx(expected, rel=1e-12, abs=1e-12)


@HELD
@given(st.decimals("-1000", "1000", places=4), st.sampled_from(PAIRS))
def test_a_unit_there_and_back_is_the_same_number(number, pair):
    there = change_unit(float(number), *pair)
    assert change_unit(there, pair[1], pair[0]) == pytest.approx(float(number), rel=1e-12, abs=1e-9)


@HELD
@given(st.integers(0, 200), metal())
def test_heat_and_cold_exchanged_turn_the_window_round(feet, metal):
    low, now, high = metal
    one, other = window(feet, low, now, high), window(feet, -high, -now, -low)
    for name, mirror in (("low", "high"), ("high", "low"), ("aim", "aim")):
        assert one["values"][name]["value"] == pytest.approx(-other["values"][mirror]["value"], abs=1e-12)
    assert one["verdict"] == other["verdict"]


@HELD
@given(st.integers(0, 200), st.integers(0, 200), metal())
def test_a_longer_run_never_widens_the_window(feet, more, metal):
    shorter, longer = window(feet, *metal), window(feet + more, *metal)
    assert width(longer) <= width(shorter) + 1e-12
    assert not (shorter["verdict"] == "fail" and longer["verdict"] == "pass")


@HELD
@given(st.integers(0, 100), metal(), st.decimals("-0.4", "0.4", places=3))
def test_what_passes_with_the_fixed_line_unknown_passes_for_either_side(feet, metal, offset):
    if window(feet, *metal, fixed="unknown", offset=q(offset, "in"))["verdict"] == "pass":
        assert window(feet, *metal, offset=q(offset, "in"))["verdict"] == "pass"
        assert window(feet, *metal, offset=q(-offset, "in"))["verdict"] == "pass"


@HELD
@given(st.integers(1, 200), metal(), st.decimals("-0.4", "0.4", places=3), st.integers(0, 20), st.integers(0, 20))
def test_more_doubt_never_decides_what_less_doubt_left_open(feet, metal, offset, doubt, more):
    def verdict(degrees):
        return window(feet, *metal, offset=q(offset, "in"), metal_uncertainty=q(degrees, "dF"))["verdict"]

    if verdict(doubt) == "too_close":
        assert verdict(doubt + more) not in ("pass", "fail")


@HELD
@given(metal(), st.decimals("0", "0.4", places=3), st.integers(1, 100))
def test_the_longest_run_is_where_the_window_is_as_wide_as_the_error(metal, error, feet):
    low, now, high = metal
    found = judge("longest_run", {
        "expansion": q("6.5e-6", "/F"), "metal_low": q(low, "F"), "metal_high": q(high, "F"), "slot": q("1", "in"),
        "shank": q("0.190", "in"), "offset_error": q(error, "in"), "run": q(feet, "ft"),
    })  # fmt: skip
    aimed = found["values"]["aimed"]["value"]
    assert width(window(aimed / 12, low, now, high)) == pytest.approx(2 * float(error), abs=1e-9)
    assert (found["verdict"] == "fail") == (feet * 12 > aimed * (1 + 1e-9))


@HELD
@given(st.integers(0, 150), metal(), INCHES, INCHES)
def test_a_tab_is_the_reverse_of_a_screw_in_a_slot(feet, metal, outward, inward):
    low, now, high = metal
    found = judge("clip", {
        "distance": q(feet, "ft"), "expansion": q("6.5e-6", "/F"), "metal_low": q(low, "F"), "metal_now": q(now, "F"),
        "metal_high": q(high, "F"), "travel_outward": q(outward, "in"), "travel_inward": q(inward, "in"),
    })["values"]  # fmt: skip
    moves = 6.5e-6 * feet * 12
    assert found["low"]["value"] == pytest.approx(moves * (now - low) - float(inward), abs=1e-12)
    assert found["high"]["value"] == pytest.approx(float(outward) - moves * (high - now), abs=1e-12)


@HELD
@given(st.sampled_from(["18", "20", "22", "24", "26", "28"]), st.decimals("0.010", "0.060", places=4),
       st.decimals("0", "0.02", places=4))  # fmt: skip
def test_a_heavier_sheet_never_fails_where_a_lighter_one_passed(gauge, reading, more):
    def verdict(inches):
        inputs = {"gauge": gauge, "system": "MSG", "reading": q(inches, "in"), "coated": False}
        return judge("thickness", inputs)["verdict"]

    order = {"fail": 0, "too_close": 1, "pass": 2}
    assert order[verdict(reading + more)] >= order[verdict(reading)]


@HELD
@given(st.lists(st.tuples(st.integers(6, 60), st.integers(10, 200)), min_size=1, max_size=5), st.integers(1, 220))
def test_a_spacing_from_tests_is_never_wider_than_any_test_that_holds_and_interpolates_within_it(points, pressure):
    inputs = {"tested": [[q(s, "in"), q(p, "psf")] for s, p in points], "pressure": q(pressure, "psf")}
    try:
        stepped = judge("spacing_tested", inputs)
        between = judge("spacing_tested", inputs | {"interpolate": "reciprocal"})
    except Refused as refused:
        assert refused.code == "tested_contradict"
        return
    if stepped["verdict"] == "not_determinable":
        assert pressure > max(p for _, p in points)
        return
    limit, wider = stepped["values"]["limit"]["value"], between["values"]["limit"]["value"]
    assert limit == max(s for s, p in points if p >= pressure)
    assert limit <= wider + 1e-9 and wider <= max(s for s, _ in points) + 1e-9


@HELD
@given(st.decimals("0", "60", places=3), st.decimals("0", "60", places=3), st.decimals("0.001", "5", places=3))
def test_a_guard_never_passes_what_simple_acceptance_fails(reading, limit, bound):
    def asked(rule):
        return judge("guard", {"reading": q(reading, "in"), "at_most": q(limit, "in"),
                               "uncertainty": q(bound, "in"), "rule": rule})  # fmt: skip

    guarded, simple = asked("guarded"), asked("simple")
    assert guarded["verdict"] in (simple["verdict"], "too_close")
    assert 0.0 <= guarded["values"]["risk"]["value"] <= 1.0
    if guarded["verdict"] == "pass":
        assert guarded["values"]["risk"]["value"] <= 0.0228  # ILAC-G8:09/2019: below 2.5 %
