"""The foreman against the audit: which looks may be compared, and how often they agree beyond chance."""

import pytest

from inspect_app.record.trends import trends
from tests.record.finding_sample import FAILED, VERDICT
from tests.record.rhythm_sample import AREA, FOREMAN, INSPECTOR, WALK, Site
from tests.record.trend_sample import Audited


def cells(told):
    return tuple(told[name] for name in ("both_bad", "foreman_only", "audit_only", "both_good"))


def test_one_item_on_twelve_panels_gives_the_table_and_its_kappa_by_hand() -> None:
    """3 both bad, 1 foreman's alone, 2 the audit's, 6 both good: (108 − 76)/(144 − 76) = 8/17."""
    told = trends(Audited.of(3, 1, 2, 6).record())["agreement"]
    assert cells(told["looks"]) == cells(told["panels"]) == (3, 1, 2, 6)
    by_chance = (4 * 5 + 8 * 7) / 144
    assert told["looks"]["agreement"] == 9 / 12 and told["looks"]["by_chance"] == pytest.approx(by_chance)
    assert told["looks"]["kappa"] == pytest.approx(8 / 17)
    assert told["looks"]["low"] < told["looks"]["kappa"] < told["looks"]["high"]
    assert told["looks"]["because"]["code"] == "kappa_rough"
    assert told["items"] == [{"key": "flange/dimple", "n": 12, "both_bad": 3, "foreman_only": 1, "audit_only": 2,
                              "both_good": 6}]  # fmt: skip


def test_several_items_of_a_panel_are_several_looks_and_one_panel() -> None:
    site = Audited()
    for item, foreman, audit in (("screw", "pass", "pass"), ("dimple", "fail", "pass"), ("wave", "pass", "fail")):
        site.looked(3, item, foreman, audit)
    told = trends(site.record())["agreement"]
    assert cells(told["looks"]) == (0, 1, 1, 1) and cells(told["panels"]) == (1, 0, 0, 0)
    assert [one["key"] for one in told["items"]][-1] == "flange/screw"


def test_only_the_same_item_on_the_same_panel_is_compared() -> None:
    site = Audited()
    place = {"value": "3", "unit": "ft"}
    site.answer(site.station(3, place, lot=site.work, chosen="hand"), "dimple", "fail")
    site.answer(site.station(4, place, lot=site.audit, chosen="hand", kid=INSPECTOR), "dimple", "fail", kid=INSPECTOR)
    site.answer(site.station(3, place, lot=site.audit, chosen="hand", kid=INSPECTOR), "screw", "pass", kid=INSPECTOR)
    assert trends(site.record())["agreement"]["looks"]["n"] == 0


def test_one_person_on_both_sides_is_no_second_opinion() -> None:
    site = Audited.of(1, 0, 0, 1)
    site.looked(20, "dimple", "pass", "pass", by=FOREMAN)
    told = trends(site.record())["agreement"]
    assert told["looks"]["n"] == 2 and [one["panel"] for one in told["apart"]["same_person"]] == [20]


def test_what_was_mended_before_the_audit_is_set_apart() -> None:
    site = Audited.of(1, 1, 0, 1)
    finding = next(one for one in site.record()["findings"] if site.record()["findings"][one]["opened"]["by"] == "fay")
    body = {"finding": finding, "walk": None, "done": "set again", "photos": [], "reading": None, "verdict": None,
            "name": "", "role": ""}  # fmt: skip
    site.say(FOREMAN, "correction", site.new_id(), body)
    told = trends(site.record())["agreement"]
    assert told["looks"]["n"] == 2 and len(told["apart"]["mended"]) == 1
    site.plan(1, 3, n=1, purpose="rework", reworks=site.work)
    told = trends(site.record())["agreement"]
    assert told["looks"]["n"] == 0 and len(told["apart"]["mended"]) == 3


def test_a_fail_that_was_changed_to_good_is_no_agreement() -> None:
    site = Audited()
    station = site.station(3, {"value": "3", "unit": "ft"}, lot=site.work, chosen="hand")
    body = {"walk": WALK, "station": station, "area": AREA, "definition": "D", "item": "dimple", "choice": "fail",
            "reading": None, "note": "", "photos": [], "verdict": FAILED}  # fmt: skip
    first = site.say(FOREMAN, "answer", f"{station}/flange/dimple", body)
    site.say(FOREMAN, "answer", f"{station}/flange/dimple", {**body, "choice": "pass", "verdict": VERDICT}, (first,))
    other = site.station(3, {"value": "9", "unit": "ft"}, lot=site.audit, chosen="hand", kid=INSPECTOR)
    site.answer(other, "dimple", "pass", kid=INSPECTOR)
    told = trends(site.record())["agreement"]
    assert told["looks"]["n"] == 0 and len(told["apart"]["mended"]) == 1


def test_a_look_after_rework_is_no_daily_look() -> None:
    site = Audited.of(0, 0, 0, 1)
    again = site.plan(30, 40, n=1, purpose="rework", reworks=site.work)
    site.answer(site.station(7, {"value": "3", "unit": "ft"}, lot=again, chosen="hand"), "dimple", "fail")
    other = site.station(7, {"value": "9", "unit": "ft"}, lot=site.audit, chosen="hand", kid=INSPECTOR)
    site.answer(other, "dimple", "pass", kid=INSPECTOR)
    assert cells(trends(site.record())["agreement"]["looks"]) == (0, 0, 0, 1)


@pytest.mark.parametrize(("foreman", "audit"), [("too_close", "pass"), ("pass", "not_determinable"),
                                                ("not_applicable", "fail")])  # fmt: skip
def test_where_one_side_could_not_tell_nothing_is_compared(foreman: str, audit: str) -> None:
    site = Audited()
    site.looked(3, "dimple", foreman, audit)
    told = trends(site.record())["agreement"]
    assert told["looks"]["n"] == 0 and len(told["apart"]["undecided"]) == 1


def test_a_walk_that_calls_itself_independent_audits_too() -> None:
    site = Site()
    site.walk(INSPECTOR, "second", independent=True)
    place = {"value": "3", "unit": "ft"}
    site.answer(site.station(3, place, chosen="hand"), "dimple", "pass")
    station = site.new_id()
    body = {"walk": "second", "area": AREA, "panel": 3, "from_low_end": place, "zone": "field", "chosen": "hand",
            "reached": "yes"}  # fmt: skip
    site.say(INSPECTOR, "station", station, body)
    site.answer(station, "dimple", "fail", kid=INSPECTOR)
    assert cells(trends(site.record())["agreement"]["looks"]) == (0, 0, 1, 0)


def test_every_pair_names_the_answers_of_both_sides_and_a_filter_narrows_them() -> None:
    site = Audited.of(1, 0, 1, 0)
    record = site.record()
    told = trends(record)["agreement"]
    for pair in told["pairs"]:
        for side in ("foreman", "audit"):
            digests = [record["answers"][one]["digest"] for one in pair[side]["answers"]]
            assert pair[side]["digests"] == digests and len(digests) == 1
    assert trends(record, {"item": ["flange/screw"]})["agreement"]["looks"]["n"] == 0
    assert trends(record, {"crew": ["2"]})["agreement"]["looks"]["n"] == 2
    assert trends(record, {"crew": ["9"]})["agreement"]["looks"]["n"] == 0
    assert trends(record, {"to": "2026-11-24"})["agreement"]["looks"]["n"] == 0
