"""A lot that asks less than the job's checklists do is named: what is not asked cannot fail."""

from inspect_app.report.lot_asks import asked_less
from tests.record.rhythm_sample import ASKED, Site


def record_of(asks, purpose="work"):
    site = Site()
    lot = site.plan(1, 40)
    record = site.record()
    record["job"]["definitions"] = {one["id"]: one["id"] for one in ASKED}
    record["lots"][lot] |= {"asks": asks, "purpose": purpose}
    return record


KNOWN = {one["id"]: one for one in ASKED}
WHOLE = record_of(None)  # as drawn, but for what it asks
FULL = {"critical": ["flange/screw"], "major": ["flange/dimple"], "minor": ["flange/wave"]}


def test_a_lot_that_asks_what_the_checklists_ask_is_not_named():
    assert asked_less(record_of(FULL), KNOWN) == []


def test_a_lot_that_leaves_out_an_item_or_calls_it_less_severe_is_named_by_its_number():
    assert asked_less(record_of(FULL | {"critical": []}), KNOWN) == [1]
    milder = {"critical": [], "major": FULL["major"], "minor": [*FULL["minor"], *FULL["critical"]]}
    assert asked_less(record_of(milder), KNOWN) == [1]
    assert asked_less(WHOLE, KNOWN) == [1]


def test_an_audit_asks_what_still_shows_and_checklists_that_did_not_come_accuse_nobody():
    assert asked_less(record_of({}, "audit"), KNOWN) == []
    assert asked_less(record_of({}), {}) == []
