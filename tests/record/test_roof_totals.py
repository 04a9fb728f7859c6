"""What a screen asks of a whole roof: the sum of its areas, and every panel's places as evenly spaced legs."""

import json

import pytest

from inspect_app.record.ask import ask
from tests.vectors.entry_bodies import q


def area(unit: str, wide: str, long: str) -> dict:
    return {
        "outline": {"unit": unit, "points": [["0", "0"], [wide, "0"], [wide, long], ["0", long]]},
        "edges": ["eave", "rake", "ridge", "rake"], "slope": q("4", "/12"), "start": "left", "coverage": q("2", "ft"),
        "fixed_line": None, "zones": ["field"],
    }  # fmt: skip


ASSEMBLY = {"zones": [{"name": "field", "spacing": q("1", "ft")}]}


def told(call: str, **given: object) -> dict:
    return json.loads(ask(json.dumps({"call": call, **given})))["ok"]


def test_a_roof_is_the_sum_of_its_areas_in_one_unit_and_passes_over_what_has_no_layout() -> None:
    # By hand: 4 panels of 10 ft, 3 seams; and 2 panels of 24 in = 2 ft across 48 in, each 120 in = 10 ft, 1 seam.
    feet, inches = area("ft", "8", "10"), area("in", "48", "120")
    layouts = [told("layout", area=one, assembly=ASSEMBLY) for one in (feet, inches)]
    broken = told("layout", area=area("ft", "0", "0"), assembly=ASSEMBLY)
    total = told("roof_totals", layouts=[broken, *layouts, None])
    assert total == {
        "unit": "ft", "areas": 2, "panels": 6, "seams": 4, "seam_length": pytest.approx(40), "area": pytest.approx(120),
        "longest": pytest.approx(10), "stations": {"field": 40},
    }  # fmt: skip
    assert told("roof_totals", layouts=[broken])["unit"] is None


def test_the_places_of_every_panel_come_as_legs_with_where_the_first_stands() -> None:
    rows = told("stations", area=area("ft", "8", "10"), assembly=ASSEMBLY)
    assert rows == [[number, [[0.5, 0.5, 1.0, 10, "field"]]] for number in (1, 2, 3)] + [[4, []]]
