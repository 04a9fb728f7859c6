"""A batch: each entry has an answer of its own, whatever stands beside it."""

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from inspect_app.entry.format import parse
from inspect_app.entry.statement import parse_statement
from tests.phone import Phone, new_uuid


@pytest.fixture
def opened(office):
    """A job and its administrator's phone."""
    return office.job()


TEXT = st.text(st.characters(codec=None), max_size=40) | st.from_regex(r"[\w-]{0,9}\.[\w-]{0,9}\.[\w-]{0,9}")
JSON = st.recursive(
    st.none() | st.booleans() | st.floats(allow_nan=False) | st.integers() | TEXT,
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=5), inner, max_size=3),
    max_leaves=6,
)


def statuses(reply):
    return [answer["status"] for answer in reply.json["answers"]]


def test_good_entries_beside_every_kind_of_bad_one_are_kept(any_office):
    job, chief = any_office.job()
    stranger = Phone(any_office.client(), chief.person)
    good = [chief.entry("area", job) for _ in range(2)]
    forged = good[0][:-4] + ("AAAA" if good[0][-4:] != "AAAA" else "BBBB")
    bad = {
        "malformed": "not an entry",
        "unknown_key": stranger.entry("area", job),
        "wrong_person": chief.entry("area", job, by="somebody"),
        "not_a_member": chief.entry("area", new_uuid()),
        "bad_signature": chief.entry("area", job)[:-86] + "A" * 86,
    }
    items = [None, 7, {"a": []}, "", good[0], *bad.values(), forged, good[1]]
    reply = chief.send(*items)
    assert reply.status_code == 200
    answers = reply.json["answers"]
    assert [a["status"] for a in answers] == ["refused"] * 4 + ["accepted"] + ["refused"] * 6 + ["accepted"]
    assert [a["code"] for a in answers[5:10]] == list(bad)
    for answer in answers:
        if answer["status"] == "refused":
            assert "receipt" not in answer
            assert answer["message"] and answer["way_out"] and answer["field"]
        else:
            receipt = parse_statement(answer["receipt"]).payload
            assert (receipt["entry"], receipt["job"]) == (answer["digest"], job)


def test_sending_again_gives_the_same_receipts(any_office):
    job, chief = any_office.job()
    entries = [chief.entry("area", job) for _ in range(3)]
    first = chief.send(*entries).json["answers"]
    again = chief.send(*reversed(entries)).json["answers"]
    assert [a["status"] for a in again] == ["duplicate"] * 3
    assert [a["receipt"] for a in again] == [a["receipt"] for a in reversed(first)]
    assert len(chief.pull().json["entries"]) == 4


def test_the_same_entry_twice_in_one_batch_is_kept_once(any_office):
    job, chief = any_office.job()
    entry = chief.entry("area", job)
    answers = chief.send(entry, entry).json["answers"]
    assert [a["status"] for a in answers] == ["accepted", "duplicate"]
    assert answers[0]["receipt"] == answers[1]["receipt"]


def test_both_branches_of_a_fork_are_kept_and_flagged(any_office):
    job, chief = any_office.job()
    before = dict(chief.chains)
    one = chief.entry("area", job)
    chief.chains = before  # a restored backup signs on from where it was
    two = chief.entry("area", job)
    assert statuses(chief.send(one, two)) == ["accepted", "accepted"]
    with any_office.app.app_context():
        chain = any_office.parts.records.record(job)["chains"][chief.kid]
    assert chain["forks"] == [{"seq": 1, "digests": sorted([parse(one).digest, parse(two).digest])}]


def test_a_job_and_what_belongs_to_it_may_come_in_one_batch_in_any_order(any_office):
    chief = any_office.phone("chief", "administrator")
    job = new_uuid()
    tokens = [chief.job(job), chief.entry("assembly", job), chief.entry("area", job)]
    assert statuses(chief.send(*reversed(tokens))) == ["accepted"] * 3
    with any_office.app.app_context():
        assert any_office.parts.membership.jobs_of(chief.person.id) == [job]


def test_only_an_administrator_opens_a_job_and_nobody_opens_anothers(any_office):
    foreman = any_office.phone("fay", "foreman")
    assert chief_codes(foreman.send(foreman.job(new_uuid()))) == ["not_a_member"]
    job, _ = any_office.job()
    other = any_office.phone("other", "administrator")
    assert chief_codes(other.send(other.job(job))) == ["not_a_member"]


def chief_codes(reply):
    return [answer["code"] for answer in reply.json["answers"]]


def test_what_a_revoked_key_signs_is_kept_apart_and_visible(any_office):
    job, _ = any_office.job()
    fay = any_office.phone("fay", "foreman", job)
    early, late = fay.entry("area", job), fay.entry("area", job)
    assert statuses(fay.send(early)) == ["accepted"]
    with any_office.app.app_context():
        any_office.parts.devices.revoke(fay.kid, "server")
    for _ in range(2):  # also the second time: it is held, but it is not in the log
        answer = fay.send(late).json["answers"][0]
        assert (answer["status"], answer["code"]) == ("quarantined", "key_revoked")
        assert "receipt" not in answer
    assert statuses(fay.send(early)) == ["duplicate"]
    with any_office.app.app_context():
        assert any_office.parts.quarantine.tokens(job) == [late]
        assert [item.token for item in any_office.parts.reading.job_entries(job, "area")] == [early]


def test_quarantine_has_room_for_one_key_and_no_more(office, monkeypatch):
    monkeypatch.setattr("inspect_app.store.quarantine.MOST", 2)
    job, _ = office.job()
    fay = office.phone("fay", "foreman", job)
    with office.app.app_context():
        office.parts.devices.revoke(fay.kid, "server")
    tokens = [fay.entry("area", job) for _ in range(3)]
    assert statuses(fay.send(*tokens)) == ["quarantined", "quarantined", "refused"]
    assert statuses(fay.send(tokens[0])) == ["quarantined"]


def test_members_of_a_later_release_are_kept_to_the_byte(any_office):
    job, chief = any_office.job()
    token = chief.entry("area", job, body={"later": {"a": [1, "ñ"]}}, mood="sunny")
    chief.send(token)
    assert chief.pull().json["entries"][-1]["entry"] == token


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(items=st.lists(JSON, max_size=8), place=st.integers(0, 8))
def test_whatever_stands_in_a_batch_each_item_is_answered_and_the_good_one_kept(opened, items, place):
    job, chief = opened
    good = chief.entry("area", job)
    batch = [*items[:place], good, *items[place:]]
    answers = chief.send(*batch).json["answers"]
    assert len(answers) == len(batch)
    assert answers[min(place, len(items))]["status"] == "accepted"
    assert sum(answer["status"] == "accepted" for answer in answers) == 1
    assert all(answer["message"] for answer in answers if answer["status"] == "refused")
