"""A draw stands on its ticket and on the versions its lot names; nothing that is said later moves it."""

import hashlib
import json
from typing import Any

import pytest

from inspect_app.record.lot_draw import draw_lot, places
from inspect_app.rules.refused import Refused
from tests.record.rhythm_sample import (
    AREA,
    ASKED,
    ASSEMBLY,
    FOREMAN,
    INSPECTOR,
    JOB,
    LEAD,
    SECOND,
    Site,
    coded,
    codes,
    drawn_panels,
    ticket,
)


def by_hand(seed: bytes, population: int, n: int) -> list[int]:
    """The published draw, written anew: words of SHA-256(seed, block), remainders without bias, a partial shuffle."""
    block, words = 0, []

    def below(m: int) -> int:
        nonlocal block
        while True:
            if not words:
                digest = hashlib.sha256(seed + block.to_bytes(8, "big")).digest()
                words.extend(int.from_bytes(digest[at : at + 8], "big") for at in range(0, 32, 8))
                block += 1
            word = words.pop(0)
            if word < (1 << 64) // m * m:
                return word % m

    places = list(range(population))
    for k in range(n):
        other = k + below(population - k)
        places[k], places[other] = places[other], places[k]
    return places[:n]


def finished(lot: str, site: Site) -> dict[str, Any]:
    """The lot with every drawn panel shown: its crew began another day."""
    site.plan(41, 60, n=1, day="2026-11-26")
    record = site.record()
    assert record["lots"][lot]["closed"]
    return record


def test_a_lot_draws_what_the_published_rule_gives_from_its_ticket_and_name() -> None:
    site = Site()
    lot = site.plan(1, 40)
    random = hashlib.sha256(f"{FOREMAN} work 0".encode()).digest()
    seed = hashlib.sha256(b"draw-1" + random + lot.encode()).digest()
    record = finished(lot, site)
    wanted = [index + 1 for index in by_hand(seed, 40, 5)]
    assert drawn_panels(record, lot) == wanted
    for stop in record["lots"][lot]["drawn"]:
        own = seed + stop["panel"].to_bytes(8, "big")
        assert [place["index"] for place in stop["places"]] == by_hand(own, 40, 3)  # 40 ft, a screw every foot
        at = [f"{place['index']}.5" for place in stop["places"]]
        assert [place["from_low_end"] for place in stop["places"]] == [{"value": one, "unit": "ft"} for one in at]


def test_the_body_says_what_was_drawn_from_and_by_which_plan() -> None:
    site = Site()
    body = site.body(1, 60)["body"]
    assert body["population"] == [
        {"area": AREA, "from": 1, "to": 60, "area_entry": site.area, "assembly_entry": site.assembly}
    ]
    lines = "".join(f"{AREA} {panel}\n" for panel in range(1, 61))
    assert body["population_digest"] == coded(hashlib.sha256(lines.encode()).digest())
    # MIL-STD-105E: 51 to 90 panels, level S-4, letter C; at AQL 2.5 and 10 samples of 5, accepting 0 and 1.
    assert body["plans"]["major"] == {
        "level": "S-4", "aql": "2.5", "letter": "C", "n": 5, "accept": 0, "reject": 1
    }  # fmt: skip
    assert body["plans"]["minor"]["accept"] == 1 and body["plans"]["critical"] == {"n": 5, "accept": 0}
    assert (body["size"], body["n"], body["inspection"]) == (60, 5, "normal")
    assert body["asks"] == {"critical": ["flange/screw"], "major": ["flange/dimple"], "minor": ["flange/wave"]}


def test_the_last_panel_has_no_seam_and_is_never_drawn() -> None:
    assert Site(across=30).body(20, 30)["body"]["population"][0]["to"] == 29
    with pytest.raises(Refused, match="nothing_to_draw"):
        Site(across=30).body(30, 30)


@pytest.mark.parametrize("more, code, field", [
    ({"population": [{"area": AREA, "from": 1, "to": 62}]}, "no_such_panel", "panel"),
    ({"population": [{"area": AREA, "from": 0, "to": 9}]}, "no_such_panel", "panel"),
    ({"population": [{"area": AREA, "from": 9, "to": 2}]}, "bad_population", "population"),
    ({"population": [{"area": "none", "from": 1, "to": 9}]}, "no_such_area", "population"),
    ({"population": []}, "nothing_to_draw", "population"),
    ({"population": [{"area": AREA, "from": 1, "to": 9}, {"area": AREA, "from": 20, "to": 30}]}, "one_area",
     "population"),
    ({"purpose": "audit", "population": [{"area": AREA, "from": 1, "to": 9}, {"area": AREA, "from": 9, "to": 30}]},
     "bad_population", "population"),
    ({"purpose": "other"}, "not_choice", "purpose"),
    ({"inspection": "reduced"}, "laxer", "inspection"),
    ({"inspection": "none"}, "not_choice", "inspection"),
    ({"extends": "none/work/1"}, "no_such_lot", "extends"),
    ({"ticket": {"series": "work", "n": 0, "random": "", "statement": "an invented statement"}}, "ticket_unreadable",
     "ticket"),
])  # fmt: skip
def test_a_day_that_cannot_be_drawn_is_refused_with_its_reason(more: dict[str, Any], code: str, field: str) -> None:
    asked = {"purpose": "work", "crew": "2", "day": "2026-11-25", "ticket": ticket(FOREMAN, 0), "definitions": ASKED,
             "population": [{"area": AREA, "from": 1, "to": 9}], **more}  # fmt: skip
    with pytest.raises(Refused) as refused:
        draw_lot(Site().record(), asked)
    assert (refused.value.code, refused.value.field) == (code, field)


def test_a_person_may_choose_a_stricter_inspection() -> None:
    body = Site().body(1, 60, inspection="tightened")["body"]
    assert (body["inspection"], body["plans"]["major"]["n"], body["n"]) == ("tightened", 8, 8)


def test_zero_acceptance_with_a_share_draws_as_many_as_it_asks_for() -> None:
    # At most 10 % bad with 90 % confidence in a lot of 60: n = 19, hypergeometric (C(54,19)/C(60,19) = 0.0899).
    site = Site(sampling={"critical": {"defective": "0.10", "confidence": "0.90"}})
    body = site.body(1, 60)["body"]
    assert body["plans"]["critical"]["n"] == 19 == body["n"] and "lot_laxer" not in codes(site.record())


def test_signing_again_replaying_and_odd_clocks_never_move_a_draw() -> None:
    site = Site()
    lot = site.plan(1, 40)
    signed = site.entries[-1]["payload"]
    wanted = drawn_panels(finished(lot, site), lot)
    site.entries += site.entries[3:]
    for year in (2006, 2046):
        site.say(FOREMAN, "lot", lot, signed["body"], at=f"{year}-11-25T08:00:00.000-05:00")
    site.say(FOREMAN, "lot", lot, signed["body"], replaces=(site.entries[4]["digest"],))
    record = site.record()
    assert drawn_panels(record, lot) == wanted
    assert "ticket_twice" not in codes(record) and record["lots"][lot]["at"] == signed["at"]


def test_a_lot_signed_again_over_other_panels_changes_nothing_and_is_pointed_out() -> None:
    site = Site()
    lot = site.plan(1, 40)
    first = site.entries[-1]["digest"]
    second = site.say(FOREMAN, "lot", lot, site.body(1, 39)["body"], replaces=(first,))
    record = finished(lot, site)
    assert record["lots"][lot]["population"][0]["to"] == 40 and record["lots"][lot]["digest"] == first
    assert {flag["digest"] for flag in record["flags"] if flag["code"] == "ticket_twice"} == {first, second}


def test_neither_later_placements_nor_a_roof_drawn_anew_move_a_draw() -> None:
    site = Site()
    lot = site.plan(1, 40)
    before = {}
    for to in (0, 7, 40):
        site.mark(lot, to)
        for stop in site.record()["lots"][lot]["drawn"]:
            if stop["state"] != "sealed":
                before.setdefault(stop["panel"], stop["places"])
                assert before[stop["panel"]] == stop["places"]
    site.add_area(AREA, 20, replaces=(site.area,))
    site.say(LEAD, "assembly", ASSEMBLY, {**site.entries[1]["payload"]["body"], "zones": []}, (site.assembly,))
    record = finished_on_small(site, lot)
    assert {stop["panel"]: stop["places"] for stop in record["lots"][lot]["drawn"]} == before
    assert set(record["layouts"]) == {site.area, site.assembly}
    assert places(record, lot, 33, 4) == places(site_like(lot), lot, 33, 4) != []


def finished_on_small(site: Site, lot: str) -> dict[str, Any]:
    record = site.record()
    assert record["areas"][AREA]["panel_count"] == 20
    return record


def site_like(lot: str) -> dict[str, Any]:
    """The same job before anything was drawn anew."""
    site = Site()
    assert site.plan(1, 40) == lot
    return site.record()


def test_places_of_any_panel_are_told_and_more_of_them_begin_with_the_same() -> None:
    site = Site()
    lot = site.plan(1, 40)
    record = site.record()
    few, many = places(record, lot, 12, 3), places(record, lot, 12, 50)
    assert many[:3] == few and len(many) == 40 and len({place["index"] for place in many}) == 40
    with pytest.raises(Refused, match="no_such_lot"):
        places(record, "none/work/0", 12, 3)
    assert places(record, lot, 61, 3) == [] and places(record, lot, 99, 3) == []


def test_tickets_skipped_used_twice_or_of_another_key_are_pointed_out() -> None:
    site = Site()
    lot = site.plan(1, 10, n=2)
    skipped = [flag["facts"] for flag in site.record()["flags"] if flag["code"] == "ticket_skipped"]
    assert skipped == [{"other": "work", "from": 0, "to": 1}]
    site.plan(11, 20, n=0, day="2026-11-26")  # used afterwards, it was passed over all the same
    assert "ticket_skipped" in codes(site.record())
    body = site.body(21, 30, n=3, day="2026-11-27")["body"]
    site.say(SECOND, "lot", lot, body)
    assert "ticket_not_theirs" in codes(site.record())
    assert site.record()["lots"][lot]["by"] == "fay"


@pytest.mark.parametrize("changed", [{"job": "another"}, {"kid": SECOND}, {"series": "audit"}, {"n": 7},
                                     {"random": coded(bytes(32))}])  # fmt: skip
def test_a_ticket_that_says_otherwise_than_its_lot_is_pointed_out(changed: dict[str, Any]) -> None:
    site = Site()
    drawn = site.body(1, 40)
    site.say(FOREMAN, "lot", drawn["subject"], {**drawn["body"], "ticket": ticket(FOREMAN, 0, changed=changed)})
    assert "ticket_not_theirs" in codes(site.record())
    honest = Site()
    honest.plan(1, 40)
    assert codes(honest.record()) == set()


@pytest.mark.parametrize("spoil, code", [
    (lambda body: body.update(n=1), "draw_differs"),
    (lambda body: body.update(size=41), "draw_differs"),
    (lambda body: body.update(population_digest=coded(bytes(32))), "draw_differs"),
    (lambda body: body["plans"]["major"].update(n=2), "draw_differs"),
    (lambda body: body["plans"]["major"].update(n=2), "lot_laxer"),
    (lambda body: body["plans"]["minor"].update(accept=4), "lot_laxer"),
    (lambda body: body["plans"].pop("critical"), "lot_laxer"),
    (lambda body: body.update(places=1), "lot_laxer"),
    (lambda body: body["population"][0].update({"to": 99}), "panel_beyond_area"),
    (lambda body: body["population"][0].update({"to": 61}), "draw_differs"),
    (lambda body: body.update(extends="none/work/9"), "lot_unknown"),
    (lambda body: body.update(reworks="none/work/9"), "lot_unknown"),
])  # fmt: skip
def test_a_lot_that_is_not_what_the_rules_give_is_kept_and_pointed_out(spoil: Any, code: str) -> None:
    site = Site()
    drawn = site.body(1, 40)
    spoil(drawn["body"])
    site.say(FOREMAN, "lot", drawn["subject"], drawn["body"])
    record = site.record()
    assert code in codes(record) and drawn["subject"] in record["lots"]


def test_a_job_made_stricter_later_does_not_make_earlier_lots_lax() -> None:
    site = Site()
    site.plan(1, 40)
    job = site.entries[0]
    stricter = {**job["payload"]["body"], "sampling": {"major": {"level": "II", "aql": "0.65"}}}
    site.say(LEAD, "job", JOB, stricter, replaces=(job["digest"],))
    assert "lot_laxer" not in codes(site.record())
    drawn = site.body(41, 50, n=1, day="2026-11-26")
    drawn["body"]["plans"]["minor"].update(n=2, accept=0)
    site.say(FOREMAN, "lot", drawn["subject"], drawn["body"])
    assert "lot_laxer" in codes(site.record())


def test_an_audit_is_drawn_over_areas_at_its_own_level_and_names_what_it_rests_on() -> None:
    site = Site()
    site.add_area("area-2", 41)
    mark = site.mark(site.plan(1, 40), 30)
    other = site.plan(1, 40, n=1, area="area-2", crew="3")
    second = site.mark(other, 20, area="area-2")
    rows = [{"area": "area-2", "from": 1, "to": 20}, {"area": AREA, "from": 1, "to": 30}]
    drawn = site.body(1, 1, kid=INSPECTOR, series="audit", purpose="audit", population=rows)
    body = drawn["body"]
    # MIL-STD-105E: 26 to 50 panels, level II, letter D; at AQL 2.5 the arrow leads up to C, 5 panels, accepting 0.
    assert (body["plans"]["major"]["level"], body["plans"]["major"]["n"], body["size"]) == ("II", 5, 50)
    assert [row["area"] for row in body["population"]] == [AREA, "area-2"]
    assert body["placements"] == sorted([mark, second])
    site.say(INSPECTOR, "lot", drawn["subject"], body)
    audit = site.record()["lots"][drawn["subject"]]
    assert {stop["state"] for stop in audit["drawn"]} == {"due"} and not audit["closed"]
    assert json.dumps(audit) and "draw_differs" not in codes(site.record())
