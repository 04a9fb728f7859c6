"""Areas, panels, seams, zones and stations of outlines that chance drew, against Shapely (BSD-3-Clause)."""

import random

import pytest
from shapely import Point

from inspect_app.rules.panel import panel
from inspect_app.rules.roof import faults, read_roof
from inspect_app.rules.stations import first_from, station, station_count
from inspect_app.rules.zones import zone_at
from tests.rules.roofs import assembly, by_chance
from tests.rules.shapely_roof import ShapelyRoof
from tests.seed import SEED

APPROVED = assembly(field="12", edge="6", corner="4")
WITHIN = 1e-6


def panels_agree(seed: int) -> None:
    body = by_chance(seed)
    outside = ShapelyRoof(body)
    crossed = [one for one in faults(body, APPROVED) if one["code"] == "outline_crosses"]
    assert outside.outline.is_valid is not any(one["field"].startswith("outline.") for one in crossed)
    if not outside.outline.is_valid:
        return
    roof = read_roof(body, APPROVED)
    assert roof.area == pytest.approx(outside.shape.area, abs=WITHIN)
    for number in range(1, roof.count + 1):
        one = panel(roof, number)
        ends = (outside.left + one["from"], outside.left + one["to"])
        if body["start"] == "right":
            ends = (outside.right - one["to"], outside.right - one["from"])
        assert one["length"] == pytest.approx(outside.ordered(*ends), abs=WITHIN)
        seam = outside.seam(one["at"]) if number < roof.count else []
        assert one["seam"] == pytest.approx(sum(high - low for low, high in seam), abs=WITHIN)


def stations_agree(seed: int, panels: int) -> None:
    body = by_chance(seed)
    outside = ShapelyRoof(body)
    if not outside.outline.is_valid:
        return
    roof = read_roof(body, APPROVED)
    spacings = {name: inches / 12 * outside.foot for name, inches in (("field", 12), ("edge", 6), ("corner", 4))}
    for number in random.Random(seed).sample(range(1, roof.count + 1), min(panels, roof.count)):
        x = panel(roof, number)["at"]
        walked = outside.walk(x, spacings) if number < roof.count else []
        assert station_count(roof, number) == len(walked)
        for index, (y, zone) in enumerate(walked):
            one = station(roof, number, index)
            assert (one["x"], one["zone"]) == (pytest.approx(x, abs=1e-9), zone)
            assert one["y"] == pytest.approx(y, abs=1e-9)
            assert one["from_low_end"] == pytest.approx(y - outside.seam(x)[0][0], abs=WITHIN)
            # A seam in pieces begins anew half a spacing above each: nearer than that no station follows another.
            assert first_from(roof, number, y) == index == first_from(roof, number, y - 0.49 * spacings["corner"])


def zones_agree(seed: int, places: int) -> None:
    body = by_chance(seed)
    outside = ShapelyRoof(body)
    if not outside.outline.is_valid:
        return
    roof, chance = read_roof(body, APPROVED), random.Random(seed)
    edge, corner = outside.buffers()
    for _ in range(places):
        x, y = chance.uniform(outside.left, outside.right), chance.uniform(outside.low, outside.high)
        spot = Point(x, y * outside.cosine)
        if not outside.shape.contains(Point(x, y)):
            assert zone_at(roof, x, y) is None
        elif min(edge.boundary.distance(spot), corner.boundary.distance(spot)) > 0.005:  # a buffer is a polygon
            assert zone_at(roof, x, y) == (
                "corner" if corner.contains(spot) else "edge" if edge.contains(spot) else "field"
            )


@pytest.mark.parametrize("seed", range(SEED, SEED + 8))
def test_panels_seams_and_areas_are_those_of_another_library(seed):
    panels_agree(seed)


@pytest.mark.parametrize("seed", range(SEED, SEED + 7))
def test_every_station_is_where_a_plain_walk_along_the_seam_comes_to(seed):
    stations_agree(seed, 1)


@pytest.mark.parametrize("seed", range(SEED, SEED + 6))
def test_zones_are_what_buffers_in_plan_make_them(seed):
    zones_agree(seed, 25)


@pytest.mark.soak
@pytest.mark.parametrize("part", range(10))
def test_a_thousand_outlines_agree_with_another_library(part):
    for seed in range(SEED + 100 * part, SEED + 100 * (part + 1)):
        panels_agree(seed)
        stations_agree(seed, 6)
        zones_agree(seed, 60)
