"""Mistakes that published documents and other programs make, each tried on the rules: what the mistake would say, and
that they say the other thing."""

import json
from pathlib import Path

import pytest

from inspect_app.rules.rulebook import judge

VECTORS = json.loads((Path(__file__).parents[1] / "vectors" / "rules.json").read_text("utf-8"))


def q(value, unit):
    return {"value": str(value), "unit": unit}


def value(rule, inputs, name):
    return judge(rule, inputs)["values"][name]["value"]


@pytest.mark.parametrize(("fahrenheit", "printed", "true"), [(200, 93, 111.1), (220, 104, 122.2), (160, 71, 88.9)])
def test_a_temperature_difference_never_meets_the_offset_of_32(fahrenheit, printed, true):
    """UFC 3-110-03 prints 200 °F of difference as 93 °C, UFGS-07416A 220 as 104, 160 as 71: a sixth too little."""
    steel = {"distance": q(10, "m"), "expansion": q("12e-6", "/K")}
    moved = value("movement", {**steel, "change": q(fahrenheit, "dF")}, "movement")
    assert moved == pytest.approx(value("movement", {**steel, "change": q(true, "K")}, "movement"), rel=1e-3)
    assert moved > 1.15 * value("movement", {**steel, "change": q(printed, "K")}, "movement")


@pytest.mark.parametrize(("rise", "printed"), [("0.25", 2), ("0.5", 4), ("1.5", 12)])
def test_the_code_s_rounded_percents_let_nothing_through(rise, printed):
    """IBC 1507.4.2 prints 1/4:12 as 2 percent, 1/2:12 as 4 and 1-1/2:12 as 12: 2.083, 4.167 and 12.5."""
    assert judge("slope", {"slope": q(printed, "%"), "minimum": q(rise, "/12")})["verdict"] == "fail"
    assert judge("slope", {"slope": q(rise, "/12"), "minimum": q(rise, "/12")})["verdict"] == "pass"


def test_one_gauge_number_is_as_many_thicknesses_as_it_has_systems():
    """22: 15 U.S.C. 206, CSSBI Facts 10-12 (MSG), galvanized and Brown & Sharpe from memory."""
    found = {system: value("thickness", {"gauge": "22", "system": system}, "nominal") for system in
             ("USS", "MSG", "GSG", "BS")}  # fmt: skip
    assert found == {"USS": 0.03125, "MSG": 0.0299, "GSG": 0.0336, "BS": 0.0253}


def test_one_limit_in_two_metric_roundings_is_two_limits():
    """30 in is 760 mm in UFC 3-110-03 and 750 mm in UFGS-07416A."""
    verdicts = [judge("spacing", {"gaps": [q(755, "mm")], "limit": q(limit, "mm")})["verdict"] for limit in (760, 750)]
    assert verdicts == ["pass", "fail"]


def test_spacing_is_never_scaled_along_a_straight_line_from_tests():
    """Resistance does not rise linearly as the area of a clip falls: between 24 in at 60 psf and 12 in at 110 psf a
    straight line in spacing gives 18 in for 85 psf; in 1/spacing it is 16, and unless allowed the tested 12."""
    given = {"pressure": q(85, "psf"), "tested": [[q(24, "in"), q(60, "psf")], [q(12, "in"), q(110, "psf")]]}
    assert value("spacing_tested", given, "limit") == 12
    assert value("spacing_tested", {**given, "interpolate": "reciprocal"}, "limit") == pytest.approx(16)
    alone = judge("spacing_tested", {**given, "tested": given["tested"][:1]})
    assert (alone["verdict"], alone["reason"]["code"]) == ("not_determinable", "beyond_tested")


@pytest.mark.parametrize(("strength", "holds"), [("33", True), ("45", False), ("65", False)])
def test_the_fastener_tables_are_those_of_33_ksi(strength, holds):
    """AISI S100 as a city's public record prints it, 18 and 27 mil: pull-out of #10 in 27 mil is 50 lb."""
    given = {"thickness": q("0.0283", "in"), "diameter": q("0.19", "in"), "tensile": q(strength, "ksi")}
    assert (abs(value("pull_out", given, "allowable") - 50) < 0.6) is holds


@pytest.mark.parametrize(
    "said", ["a difference never meets the offset of 32", "printed 2 percent", "22 gauge is five thicknesses",
             "755 mm against 750 mm (UFGS-07416A)", "16.0 in, not 18", "AISI S100 table at 33 ksi"]
)  # fmt: skip
def test_each_trap_stands_in_the_vectors_by_name(said):
    assert any(said in one["source"] for one in VECTORS)
