"""What an estimator gets by hand from the same drawing, shape by shape; the sums stand beside each."""

import copy
from typing import Any

import pytest

from inspect_app.rules.layout import layout, totals
from inspect_app.rules.likeness import likeness
from inspect_app.rules.panel import panel, panel_count
from inspect_app.rules.roof import read_roof
from inspect_app.rules.stations import station, station_count
from inspect_app.rules.zones import zone_at, zone_runs
from tests.rules.roofs import (
    ELL,
    HIP,
    RECTANGLE,
    SHAPES,
    TRAPEZOID,
    TRIANGLE,
    VALLEY_AND_HIP,
    area,
    assembly,
    hole,
    q,
    zone_map,
)

ONE = assembly(field="12")
THREE = assembly(field="12", edge="6", corner="6")
FLAT = q("0", "/12")


def laid(body: dict[str, Any], approved: dict[str, Any] = ONE) -> dict[str, Any]:
    found = layout(body, approved)
    assert found["faults"] == []
    return found


def lengths(body: dict[str, Any]) -> list[Any]:
    return [(run["from"], run["to"], run["length"]) for run in laid(body)["lengths"]]


def test_a_rectangle():
    """64 ft at 16 in are 48 panels of 40 ft with 47 seams between them: 1880 ft; a station a foot: 40 a seam."""
    found = laid(RECTANGLE | {"coverage": q("16", "in")})
    assert (found["panels"], found["longest"], found["seams"], found["area"]) == (48, 40, 47, 2560)
    assert found["seam_length"] == pytest.approx(1880) and found["stations"] == {"field": 47 * 40}
    assert found["of"][0] == [1, 40, 40, 40] and found["of"][-1] == [48, 40, 0, 0]
    assert lengths(RECTANGLE | {"coverage": q("16", "in")}) == [(1, 48, 40)]


def test_a_triangle():
    """Base 20 ft, height 10 ft, panels of 2 ft: both hips rise a foot in a foot, so the panels are ordered 2, 4, 6, 8,
    10 ft and back again; the nine seams are 2 + 4 + 6 + 8 + 10 + 8 + 6 + 4 + 2 = 50 ft; area 20 × 10 / 2."""
    found = laid(TRIANGLE)
    assert [one[1] for one in found["of"]] == pytest.approx([2, 4, 6, 8, 10, 10, 8, 6, 4, 2])
    assert [one[2] for one in found["of"]] == pytest.approx([2, 4, 6, 8, 10, 8, 6, 4, 2, 0])
    assert found["seam_length"] == pytest.approx(50) and found["area"] == pytest.approx(100)
    assert [one[3] for one in found["of"]] == [2, 4, 6, 8, 10, 8, 6, 4, 2, 0]  # a station a foot


def test_a_trapezoid():
    """20 ft below, 8 ft above, 12 ft high: hips rise 12 in 6. Panels 4, 8, 12 ft, four more of 12, then 12, 8, 4."""
    found = laid(TRAPEZOID)
    assert [one[1] for one in found["of"]] == pytest.approx([4, 8, 12, 12, 12, 12, 12, 12, 8, 4])
    assert found["area"] == pytest.approx((20 + 8) / 2 * 12)
    assert found["seam_length"] == pytest.approx(4 + 8 + 5 * 12 + 8 + 4)  # at 2, 4, 6 … 14, 16 and 18 ft


def test_an_ell():
    """6 ft of 20 ft panels, then 4 ft of 8 ft ones: three and two. The seam at 6 ft has roof on both sides up to 8 ft
    only; above it the long panel ends at a wall."""
    assert lengths(ELL) == [(1, 3, 20), (4, 5, 8)]
    found = laid(ELL)
    assert [one[2] for one in found["of"]] == [20, 20, 8, 8, 0]
    assert (found["seam_length"], found["area"], found["seams"]) == (56, 6 * 20 + 4 * 8, 4)


def test_a_seam_that_all_but_meets_a_corner_runs_through_it():
    """Three panels of 1.9999998 ft end within a millionth of the step at 6 ft: there is no seam above it."""
    found = laid(ELL | {"coverage": q("1.9999998", "ft")})
    assert [one[2] for one in found["of"]] == [20, 20, 8, 8, 0]


def test_a_gable_plane_with_a_hip():
    """30 ft at the eave, 20 ft at the ridge, 10 ft up: ten panels of 10 ft, then 10, 8, 6, 4, 2 along the hip."""
    found = laid(HIP)
    assert [one[1] for one in found["of"]] == pytest.approx([10] * 10 + [10, 8, 6, 4, 2])
    assert found["seam_length"] == pytest.approx(10 * 10 + 8 + 6 + 4 + 2)


def test_a_panel_between_a_valley_and_a_hip_is_ordered_as_long_as_its_two_cuts_need():
    """Low end along y = x, high end along y = 10 + x: 10 ft at every seam, and 2 ft more to order, since both ends of a
    2 ft panel climb 2 ft across it."""
    found = laid(VALLEY_AND_HIP)
    assert [one[1] for one in found["of"]] == pytest.approx([12] * 10)
    assert [one[2] for one in found["of"]] == pytest.approx([10] * 9 + [0])


def test_the_last_panel_is_ripped_and_a_sliver_of_rounding_is_none():
    """10 ft at 16 in are 7.5 panels; 64 ft at 1.3333333333 ft are 48 and a rounding."""
    eight = area([(0, 0), (10, 0), (10, 9), (0, 9)], "eave rake ridge rake", coverage=q("16", "in"))
    roof = read_roof(eight, ONE)
    assert panel_count(roof) == 8
    assert (panel(roof, 8)["from"], panel(roof, 8)["to"]) == (pytest.approx(28 / 3), 10)
    assert laid(RECTANGLE | {"coverage": q("1.3333333333", "ft")})["panels"] == 48


def test_an_opening_cuts_its_seam_in_two_and_each_piece_starts_anew():
    """A curb 4 ft wide over seams at 10, 12 and 14 ft, from 3.25 ft to 7 ft of 10 ft: that is 3.25 and 3 ft of seam.
    Stations a foot apart, half a foot from each low end: 3 below (the fourth would stand beyond) and 3 above."""
    curb = hole((9, "3.25"), (15, "3.25"), (15, 7), (9, 7))
    roof = read_roof(area([(0, 0), (24, 0), (24, 10), (0, 10)], "eave rake ridge rake", openings=[curb]), ONE)
    assert panel(roof, 5)["pieces"] == [[0, 3.25], [7, 10]] and panel(roof, 5)["seam"] == 6.25
    assert [station(roof, 5, at)["y"] for at in range(station_count(roof, 5))] == [0.5, 1.5, 2.5, 7.5, 8.5, 9.5]
    assert station(roof, 5, 3)["from_low_end"] == 7.5
    assert panel(roof, 6)["length"] == 3.25  # nothing but two pieces is left of it
    assert panel(roof, 5)["length"] == panel(roof, 4)["length"] == 10  # a foot of it passes the curb
    assert totals(roof)["area"] == 240 - 6 * 3.75


def test_zones_by_strips_and_the_slope_stretches_only_their_up_slope_part():
    """Strips of 3 ft at 12:12: √2 × 3 = 4.243 ft up the slope, 3 ft along the eave. Panels of 1 ft; seams at 1, 2 and 3
    ft lie in the rake's strip, its border included, and those at 9, 10 and 11 of 12 ft in the other's."""
    body = area([(0, 0), (12, 0), (12, 20), (0, 20)], "eave rake ridge rake", coverage=q("1", "ft"),
                slope=q("12", "/12"), zone_map=zone_map(eave=3, rake=3, ridge=3))  # fmt: skip
    roof = read_roof(body, THREE)
    reach = 3 * 2**0.5
    for number in (3, 9):
        runs = zone_runs(roof, number)
        assert [run[2] for run in runs] == ["corner", "edge", "corner"]
        assert [run[1] for run in runs] == pytest.approx([reach, 20 - reach, 20])
    assert [run[2] for run in zone_runs(roof, 4)] == ["edge", "field", "edge"]
    # Seams 4 to 8: edge at 0.25, 0.75 … 3.75 and on to 4.25; field 4.75 … 15.75; edge again from there: 16.25 … 19.75.
    # 4.243 < 4.25, so the ninth stands in the field, and a foot each from there: 4.25, 5.25 … 15.25; next 16.25.
    assert [station(roof, 5, at)["y"] for at in (0, 7, 8, 9, 19, 20)] == [0.25, 3.75, 4.25, 5.25, 15.25, 16.25]
    assert [station(roof, 5, at)["zone"] for at in (7, 8, 19, 20)] == ["edge", "field", "field", "edge"]
    assert station_count(roof, 5) == 8 + 12 + 8


def test_a_corner_needs_two_edges_that_meet():
    """A roof 5 ft wide with strips of 3 ft along both rakes: they overlap in the middle foot, and that is no corner."""
    narrow = area([(0, 0), (5, 0), (5, 20), (0, 20)], "eave rake ridge rake", slope=FLAT, zone_map=zone_map(rake=3))
    assert zone_at(read_roof(narrow, THREE), 2.5, 10) == "edge"
    meeting = narrow | {"zone_map": zone_map(rake=3, eave=3)}
    assert zone_at(read_roof(meeting, THREE), 2.5, 2.9) == "corner"
    assert zone_at(read_roof(meeting, THREE), 2.5, 3.1) == "edge"


def test_edges_that_continue_each_other_are_one_edge():
    """The eave is drawn in three parts. Where they meet is no corner, and the last part, shorter than the strip is
    wide, does not end the corner zone at its own start."""
    body = area([(0, 0), (10, 0), (19, "0.01"), (20, 0), (20, 20), (0, 20)], "eave eave eave rake ridge rake",
                slope=FLAT, zone_map=zone_map(eave=3, rake=3))  # fmt: skip
    roof = read_roof(body, THREE)
    assert [zone_at(roof, x, 1) for x in (10, 16.5, 17.5, 18.5)] == ["edge", "edge", "corner", "corner"]
    assert zone_at(roof, 10, 3.2) == "field"


def test_what_is_drawn_wins_over_strips_and_the_later_over_the_earlier():
    square = [["2", "2"], ["8", "2"], ["8", "8"], ["2", "8"]]
    drawn = [{"zone": zone, "outline": {"unit": "ft", "points": points}} for zone, points in
             [("corner", square), ("field", [["48", "48"], ["72", "48"], ["72", "96"], ["48", "96"]])]]  # fmt: skip
    drawn[1]["outline"]["unit"] = "in"  # 4 to 6 ft by 4 to 8 ft
    body = area([(0, 0), (20, 0), (20, 20), (0, 20)], "eave rake ridge rake", slope=FLAT,
                zone_map=zone_map(drawn, eave=3))  # fmt: skip
    roof = read_roof(body, THREE)
    assert [zone_at(roof, x, y) for x, y in [(1, 1), (3, 2.5), (3, 5), (5, 5), (5, 3.5), (9, 9), (30, 1)]] == [
        "edge", "corner", "corner", "field", "corner", "field", None,
    ]  # fmt: skip
    assert zone_runs(roof, 2) == [
        [0, pytest.approx(2), "edge"], [pytest.approx(2), pytest.approx(4), "corner"], [pytest.approx(4), 20, "field"],
    ]  # fmt: skip


def test_zones_go_by_the_assembly_s_names_and_an_unknown_one_by_the_closest_spacing():
    body = RECTANGLE | {"zone_map": zone_map(eave=4) | {"names": {"field": "1", "edge": "2"}}, "zones": ["1", "2"]}
    found = layout(body, assembly(**{"1": "12", "2": "6"}))
    assert set(found["stations"]) == {"1", "2"} and [one["code"] for one in found["faults"]] == ["zone_unknown"]
    assert found["faults"][0]["field"] == "zone_map.names.corner"


def test_without_a_zone_map_an_area_of_several_zones_counts_at_the_closest_spacing():
    found = layout(RECTANGLE | {"zones": ["field", "edge"]}, THREE)
    assert found["stations"] == {"": 31 * 80} and [one["code"] for one in found["faults"]] == ["zones_unknown"]
    assert zone_at(read_roof(RECTANGLE | {"zones": []}, THREE), 1, 1) is None


def test_panels_that_are_alike_are_told_as_one_by_one():
    """Stretches where everything runs level are worked out once; with narrow panels and strips, drawn zones and a curb
    they must be what each panel gives by itself."""
    drawn = [{"zone": "corner", "outline": {"unit": "ft", "points": [["4", "2"], ["9", "2"], ["9", "6"], ["4", "6"]]}}]
    curb = hole(("5.1", 3), ("7.3", 3), ("7.3", 4), ("5.1", 4))
    worked_out = panels = 0
    for body in [*SHAPES.values(), RECTANGLE | {"openings": [curb], "start": "right"}]:
        body = body | {"zone_map": zone_map(drawn, eave=1, ridge=2, rake=2, hip=1, wall=2), "coverage": q("5.3", "in")}
        roof, told = read_roof(body, THREE), laid(body, THREE)
        worked_out += sum(number == at for at, number in enumerate(likeness(roof), 1))
        panels += told["panels"]
        for number, length, seam, stations in told["of"]:
            one = panel(roof, number)
            assert [one["length"], one["seam"], station_count(roof, number)] == [length, seam, stations]
    assert 0.3 < worked_out / panels < 0.7


@pytest.mark.parametrize("shape", SHAPES)
def test_started_from_the_right_a_mirrored_roof_is_the_same_roof(shape):
    body = copy.deepcopy(SHAPES[shape]) | {"zone_map": zone_map(eave=3, rake=2, hip=3, valley=1, wall=2)}
    body["coverage"] = q("1.7", "ft")
    mirrored = copy.deepcopy(body) | {"start": "right", "edges": body["edges"][-2::-1] + body["edges"][-1:]}
    mirrored["outline"]["points"] = [[str(-float(x)), y] for x, y in reversed(body["outline"]["points"])]
    one, other = laid(body, THREE), laid(mirrored, THREE)
    assert one["stations"] == other["stations"] and one["panels"] == other["panels"]
    assert [row[1:3] for row in one["of"]] == [pytest.approx(row[1:3]) for row in other["of"]]
    first, second = station(read_roof(body, THREE), 3, 4), station(read_roof(mirrored, THREE), 3, 4)
    assert (first["x"], first["y"], first["zone"]) == (pytest.approx(-second["x"]), second["y"], second["zone"])


@pytest.mark.parametrize("shape", SHAPES)
def test_a_drawing_in_metres_or_millimetres_gives_the_same_roof(shape):
    body = SHAPES[shape] | {"zone_map": zone_map(eave=3, hip=3)}
    told = laid(body, THREE)
    for unit, size in (("m", 0.3048), ("mm", 304.8)):
        points = [[f"{float(x) * size:.6f}", f"{float(y) * size:.6f}"] for x, y in body["outline"]["points"]]
        metric = laid(body | {"outline": {"unit": unit, "points": points}, "coverage": q("609.6", "mm")}, THREE)
        assert metric["stations"] == told["stations"] and metric["unit"] == unit
        assert metric["seam_length"] / size == pytest.approx(told["seam_length"], rel=1e-5)
        assert metric["longest"] / size == pytest.approx(told["longest"], rel=1e-5)
