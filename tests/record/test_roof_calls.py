"""What a screen asks of a drawn roof, through the phone's one door."""

import json

from inspect_app.record.ask import ask
from tests.rules.roofs import ELL, HIP, RECTANGLE, area, assembly, hole, q, zone_map

APPROVED = assembly(field="12", edge="6", corner="6")
ROOF = HIP | {"zone_map": zone_map(eave=3), "slope": q("0", "/12")}


def asked(call, body=ROOF, **given):
    return json.loads(ask(json.dumps({"call": call, "area": body, "assembly": APPROVED, **given})))


def test_the_layout_comes_with_its_faults_and_is_never_refused():
    found = asked("layout")["ok"]
    assert found["panels"] == 15 and found["faults"] == [] and len(found["of"]) == 15
    assert asked("layout", None)["ok"]["faults"][0]["code"] == "outline_missing"


def test_a_panel_comes_with_its_zones_and_its_count():
    """Seam 12 of the hip plane is 6 ft: 0.25, 0.75 … 2.75 in the strip of 3 ft, then 3.25, 4.25, 5.25."""
    found = asked("panel", number=12)["ok"]
    assert (found["length"], found["seam"], found["at"], found["unit"]) == (8, 6, 24, "ft")
    assert [run[2] for run in found["zone_runs"]] == ["edge", "field"] and found["station_count"] == 9
    assert asked("panel", number=16) == {"refused": {"code": "no_such_panel", "field": "panel", "value": 16}}


def test_a_place_is_found_with_its_zone_and_the_station_there_or_next_up_slope():
    at = [asked("place_at", panel=12, from_low_end=q(inches, "in"))["ok"] for inches in ("0", "3", "4", "36", "72")]
    assert [(one["zone"], one["index"]) for one in at] == [
        ("edge", 0), ("edge", 0), ("edge", 1), ("edge", 6), ("field", None)]  # fmt: skip
    assert (at[3]["x"], at[3]["y"], at[3]["unit"]) == (24, 3, "ft")
    beyond = asked("place_at", panel=12, from_low_end=q("73", "in"))["refused"]
    assert (beyond["code"], beyond["field"]) == ("beyond_panel", "from_low_end")
    assert asked("place_at", panel=12)["refused"]["field"] == "from_low_end"


def test_a_place_is_measured_from_the_low_end_of_the_seam_wherever_that_lies():
    stepped = area([(0, 5), (10, 5), (10, 20), (0, 20)], "eave rake ridge rake", slope=q("0", "/12"))
    found = asked("place_at", stepped, panel=2, from_low_end=q("2", "ft"))["ok"]
    assert (found["x"], found["y"], found["index"]) == (4, 7, 2)  # stations at 5.5, 6.5 and 7.5
    last = asked("place_at", stepped, panel=5, from_low_end=q("15", "ft"))["ok"]
    assert (last["x"], last["y"], last["zone"], last["index"]) == (10, 20, "field", None)


def test_every_panel_s_zones_come_for_the_plan_the_last_one_s_too():
    """The last panel has no seam; it is drawn along its middle, where the hip leaves 1 ft."""
    runs = dict(asked("zones")["ok"])
    assert sorted(runs) == list(range(1, 16))
    assert [[round(low, 6), round(high, 6), zone] for low, high, zone in runs[1]] == [[0, 3, "edge"], [3, 10, "field"]]
    assert [[round(low, 6), round(high, 6), zone] for low, high, zone in runs[15]] == [[0, 1, "edge"]]
    assert asked("zones", ELL | {"outline": None})["refused"]["code"] == "outline_missing"


def test_a_place_over_an_opening_is_in_no_zone():
    """A curb from 2 to 4 ft up, over the second seam."""
    curbed = RECTANGLE | {"openings": [hole((3, 2), (5, 2), (5, 4), (3, 4))]}
    found = asked("place_at", curbed, panel=2, from_low_end=q("3", "ft"))["ok"]
    assert found["zone"] is None and found["index"] == 2  # 0.5 and 1.5 below it, 4.5 above
