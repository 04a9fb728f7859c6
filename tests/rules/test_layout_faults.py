"""Whatever is wrong with a drawn area is named, none hidden by another, and nothing that is drawn breaks the layout."""

import copy
import json
from pathlib import Path
from typing import Any

import pytest

from inspect_app.rules.layout import layout
from inspect_app.rules.panel import panel
from inspect_app.rules.refused import Refused
from inspect_app.rules.roof import faults, read_roof
from inspect_app.rules.stations import station
from tests.rules.roofs import RECTANGLE, area, assembly, hole, q, zone_map
from tests.seed import chance

WORDS = json.loads((Path(__file__).parents[2] / "static" / "words" / "rules.json").read_text("utf-8"))
APPROVED = assembly(field="12", edge="6")
BOW = area([(0, 0), (10, 0), (0, 10), (9, 8)], "eave rake ridge rake")
GOOD = RECTANGLE | {"zone_map": zone_map(eave=4) | {"names": {"corner": "edge"}}}
LIST = [["0", "0"], ["1", "1"], ["2", "2"]]


def told(body: Any, approved: Any = APPROVED) -> list[tuple[str, str, Any]]:
    return [(one["code"], one["field"], one["value"]) for one in faults(body, approved)]


def drawn(*points: tuple[Any, Any], **changed: Any) -> dict[str, Any]:
    return GOOD | {"outline": {"unit": "ft", "points": [[str(x), str(y)] for x, y in points]} | changed}


def zoned(**changed: Any) -> dict[str, Any]:
    return GOOD | {"zone_map": GOOD["zone_map"] | changed}


BAD = [
    (BOW, [("outline_crosses", "outline.points[1]", 4)]),
    (drawn((0, 0), (4, 0), (8, 0), (2, 0)), [("outline_crosses", "outline.points[0]", 3),
                                             ("outline_crosses", "outline.points[0]", 4),
                                             ("outline_crosses", "outline.points[1]", 3),
                                             ("no_area", "outline", None)]),
    (drawn((0, 0), (9, 0), (9, 9), (5, 0)), [("outline_crosses", "outline.points[0]", 3),
                                             ("outline_crosses", "outline.points[0]", 4)]),  # back along its eave
    (drawn((0, 0), (9, 0), (9, 9), (0, 0)), [("points_coincide", "outline.points[3]", 4)]),  # closed by hand
    (drawn((0, 0), (9, 0)), [("too_few_points", "outline.points", 2), ("edges_count", "edges", 4)]),
    (drawn(*[(at, at * at) for at in range(201)]), [("too_many_points", "outline.points", 201),
                                                    ("edges_count", "edges", 4)]),
    (drawn((0, 0), ("4,5", 0), (9, "x"), (0, 9)), [("not_decimal", "outline.points[1]", "4,5"),
                                                   ("not_decimal", "outline.points[2]", "x")]),
    (drawn((0, 0), (9, 0), (9, 9), (0, "5e9")), [("out_of_range", "outline.points[3]", "5e9 ft")]),
    (drawn((0, 0), (9, 0), (9, 9), (0, 9), unit="yd"), [("unknown_unit", "outline.unit", "yd")]),
    (GOOD | {"outline": None}, [("outline_missing", "outline", None)]),
    (drawn((0, 0), (9, 0), (9, 9), (0, 9), lengths=["9", None, "9.3", "nine"]),
     [("does_not_close", "outline.lengths[2]", "9.3"), ("not_decimal", "outline.lengths[3]", "nine")]),
    (GOOD | {"edges": ["eave", "gable", "ridge"]}, [("edges_count", "edges", 3),
                                                    ("edge_unknown", "edges[1]", "gable")]),
    (GOOD | {"edges": None}, [("edges_count", "edges", None)]),
    (GOOD | {"start": "top"}, [("not_choice", "start", "top")]),
    (GOOD | {"coverage": q("0", "in")}, [("not_above_zero", "coverage", "0 in")]),
    (GOOD | {"coverage": q("-16", "in")}, [("not_above_zero", "coverage", "-16 in")]),
    (GOOD | {"coverage": q("0.01", "in")}, [("too_many_panels", "coverage", "0.01 in")]),
    (GOOD | {"coverage": q("16", "psf")}, [("wrong_dimension", "coverage", "16 psf")]),
    (GOOD | {"slope": q("90", "deg")}, [("out_of_range", "slope", "90 deg")]),
    (GOOD | {"slope": None}, [("not_quantity", "slope", None)]),
    (GOOD | {"openings": [hole((60, 1), (70, 1), (70, 9))]}, [("opening_outside", "openings[0]", "curb")]),
    (GOOD | {"openings": [hole((90, 1), (95, 1), (95, 9))]}, [("opening_outside", "openings[0]", "curb")]),
    (GOOD | {"openings": [hole((9, 1), (15, 1), (15, 9)), hole((10, 2), (20, 2), (20, 4))]},
     [("openings_overlap", "openings[1]", "curb")]),
    (GOOD | {"openings": [hole((9, 1), (15, 1), (9, 9)), hole((10, 2), (11, 2), (10, 3))]},
     [("openings_overlap", "openings[1]", "curb")]),
    (GOOD | {"openings": [hole((9, 1), (9, 1), (9, 9)), {"name": "none"}]},
     [("points_coincide", "openings[0].outline.points[0]", 1), ("no_area", "openings[0].outline", None),
      ("outline_missing", "openings[1].outline", None)]),
    (GOOD | {"openings": "curb"}, [("not_openings", "openings", "curb")]),
    (GOOD | {"fixed_line": {"from_low_end": q("41", "ft"), "by": ""}}, [("beyond_panel", "fixed_line", "41 ft")]),
    (GOOD | {"fixed_line": {"from_low_end": q("-1", "ft"), "by": ""}}, [("beyond_panel", "fixed_line", "-1 ft")]),
    (zoned(widths={"eave": q("-4", "ft"), "gable": q("4", "ft"), "rake": q("4", "psf")}),
     [("negative", "zone_map.widths.eave", "-4 ft"), ("edge_unknown", "zone_map.widths.gable", "gable"),
      ("wrong_dimension", "zone_map.widths.rake", "4 psf")]),
    (zoned(names={}), [("zone_unknown", "zone_map.names.corner", "corner")]),
    (zoned(drawn=[{"zone": "3", "outline": RECTANGLE["outline"]}, {"zone": "edge", "outline": BOW["outline"]}]),
     [("outline_crosses", "zone_map.drawn[1].outline.points[1]", 4), ("zone_unknown", "zone_map.drawn[0].zone", "3")]),
    (GOOD | {"zones": ["field", "attic"]}, [("zone_unknown", "zones[1]", "attic")]),
]  # fmt: skip


@pytest.mark.parametrize(("body", "expected"), BAD, ids=[str(at) for at in range(len(BAD))])
def test_what_is_wrong_is_named_with_its_field_and_value(body, expected):
    assert told(body) == expected


@pytest.mark.parametrize(
    ("approved", "expected"),
    [(None, [("assembly_unknown", "assembly", None)]), ({"zones": []}, [("zones_missing", "assembly.zones", None)]),
     (assembly(field="0", edge="6"), [("not_above_zero", "assembly.zones[0].spacing", "0 in"),
                                      ("zone_unknown", "zone_map.names.field", "field"),
                                      ("zone_unknown", "zones[0]", "field")]),
     (assembly(field="0"), [("not_above_zero", "assembly.zones[0].spacing", "0 in")]),
     (assembly(field="twelve", edge="6"), [("not_decimal", "assembly.zones[0].spacing", "twelve"),
                                           ("zone_unknown", "zone_map.names.field", "field"),
                                           ("zone_unknown", "zones[0]", "field")])],
)  # fmt: skip
def test_a_spacing_that_cannot_be_stepped_off_is_named_and_panels_are_counted_all_the_same(approved, expected):
    body = GOOD | {"zones": ["field"]}
    assert told(body, approved) == expected
    assert layout(body, approved)["panels"] == 32
    assert layout(body, assembly(field="0", edge="6"))["stations"] == {"field": 31 * 72, "edge": 31 * 8}  # all at 6 in


def test_no_fault_hides_another():
    """One area with something wrong in every part of it: each part's fault is there."""
    body = BOW | {
        "slope": q("-1", "deg"), "start": "up", "coverage": q("0", "ft"), "zones": ["attic"],
        "edges": ["eave", "gable", "ridge", "rake"], "openings": [hole((1, 1), (2, 1))],
        "zone_map": zone_map(eave=-1) | {"drawn": [{"zone": "field", "outline": {"unit": "ft", "points": LIST}}]},
    }  # fmt: skip
    assert {one[1].split("[")[0] for one in told(body, assembly(field="12", edge="0"))} == {
        "outline.points", "slope", "start", "coverage", "edges", "openings", "zone_map.widths.eave", "zones",
        "zone_map.drawn", "assembly.zones",
    }  # fmt: skip
    found = layout(body, APPROVED)
    assert found["panels"] is found["longest"] is found["area"] is None and found["lengths"] == found["of"] == []
    with pytest.raises(Refused) as refused:
        read_roof(body, APPROVED)
    assert refused.value.code == "outline_crosses"


def test_what_is_left_out_does_not_count():
    curbs = [hole((9, 1), (15, 1), (15, 9), (9, 9)), hole((10, 2), (20, 2), (20, 4))]
    assert layout(GOOD | {"openings": curbs}, APPROVED)["area"] == 64 * 40 - 48


@pytest.mark.parametrize(("number", "value"), [(0, 0), (33, 33), (True, True), ("7", None), (None, None)])
def test_a_panel_that_is_not_there_is_refused(number, value):
    with pytest.raises(Refused) as refused:
        panel(read_roof(GOOD, APPROVED), number)
    assert (refused.value.code, refused.value.field) == ("no_such_panel", "panel")


@pytest.mark.parametrize("index", [-1, 44, True, None, "1"])
def test_a_station_that_is_not_there_is_refused(index):
    roof = read_roof(GOOD, APPROVED)
    with pytest.raises(Refused) as refused:
        station(roof, 3, index)
    assert (refused.value.code, refused.value.field) == ("no_such_station", "index")
    assert station(roof, 3, 43)["zone"] == "field"


JUNK = [None, True, 0, -7, 3.5, "", "x", "1e99", [], {}, [[]], [None], {"unit": "ft"}, {"value": "1", "unit": "ft"}]


def _places(value: Any, path: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    inner = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    return [path, *(place for key, one in inner for place in _places(one, (*path, key)))][0 if path else 1 :]


def spoiled(body: Any, path: tuple[Any, ...], junk: Any) -> Any:
    changed = place = copy.deepcopy(body)
    for key in path[:-1]:
        place = place[key]
    place[path[-1]] = junk
    return changed


def junk_is_named(tries: int) -> set[str]:
    fixed = {"from_low_end": q("9", "ft"), "by": ""}
    body = GOOD | {"openings": [hole((9, 1), (15, 1), (15, 9))], "fixed_line": fixed, "coverage": q("16", "ft")}
    whole = {"area": body, "assembly": APPROVED}
    whole["area"]["zone_map"] = zone_map([{"zone": "edge", "outline": BOW["outline"]}], eave=4)
    every = [(path, junk) for path in _places(whole) for junk in JUNK]
    seen = set()
    for path, junk in chance("layout junk").sample(every, min(tries, len(every))):
        one = spoiled(whole, path, junk)
        found = layout(one["area"], one["assembly"])
        json.dumps(found, allow_nan=False)
        seen |= {fault["code"] for fault in found["faults"]}
    return seen


def test_junk_in_any_place_is_a_fault_with_words_and_never_breaks_the_layout():
    seen = junk_is_named(120)
    assert len(seen) > 12
    for code in seen:
        assert f"refused.{code}" in WORDS and f"refused.{code}.way_out" in WORDS


@pytest.mark.soak
def test_every_kind_of_junk_in_every_place_is_named():
    assert len(junk_is_named(10**6)) > 17


CURB = hole((1, 1), (2, 1), (2, 2))
MANY = [{"zone": "field", "outline": CURB["outline"]}] * 101


@pytest.mark.parametrize(("field", "change"), [
    ("openings", {"openings": [CURB] * 101}),
    ("zone_map.drawn", {"zone_map": zone_map() | {"drawn": MANY}}),
])
def test_more_openings_or_drawn_zones_than_anybody_builds_are_left_out(field, change):
    assert told(RECTANGLE | change).count(("too_many", field, 101)) == 1 and len(told(RECTANGLE | change)) < 9
