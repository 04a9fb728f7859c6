"""A store that was set back says so, gives no number twice, and lets its chains go on from what it kept."""

import shutil

import pytest

from inspect_app.entry.jws import verify
from inspect_app.entry.receipts import verify_receipts
from inspect_app.entry.refusal import Refused
from inspect_app.entry.statement import format_statement, parse_statement, restoration
from tests.entry.known import BEN
from tests.office import Office

AT = "2026-11-25T21:40:06.000+00:00"


def said(office, job):
    with office.app.app_context():
        return [parse_statement(one) for one in office.parts.reading.receipts(job)]


def set_back(office):
    with office.app.app_context():
        return parse_statement(office.parts.statements.restore().jws)


def test_it_names_what_it_kept_and_goes_on_at_the_milliseconds_of_its_clock(any_office):
    job, _ = any_office.job()
    with any_office.app.app_context():
        last = parse_statement(any_office.parts.statements.at(any_office.parts.statements.last()))
    word = set_back(any_office)
    verify(word, any_office.parts.server_key.jwk)
    assert (word.payload["last"], word.payload["head"]) == (last.payload["seq"], last.digest)
    assert word.payload["seq"] > 1_700_000_000_000
    assert len(said(any_office, job)) == 1


def test_receipts_after_it_name_it_and_continue_the_same_chain(any_office):
    job, chief = any_office.job()
    before = said(any_office, job)[-1]
    word = set_back(any_office)
    chief.client = any_office.again().client()  # a server that starts anew finds it again
    chief.send(chief.entry("area", job))
    again = said(any_office, job)[-1]
    assert (again.payload["restored"], again.payload["prev"], again.payload["n"]) == (word.digest, before.digest, 1)
    assert "restored" not in before.payload
    with any_office.app.app_context():
        facts = verify_receipts(any_office.parts.reading.receipts(job), any_office.parts.server_key.jwk)
    assert not any(facts[name] for name in ("refused", "gaps", "forks", "breaks"))


def test_two_servers_from_one_backup_give_no_number_twice_and_both_say_which_they_are(tmp_path):
    office = Office(tmp_path / "data")
    job, chief = office.job()
    shutil.copytree(tmp_path / "data", tmp_path / "one")
    shutil.copytree(tmp_path / "data", tmp_path / "two")
    entries = [chief.entry("area", job) for _ in range(3)]
    given = []
    for minutes, name in enumerate(("data", "one", "two")):
        at = office if name == "data" else Office(tmp_path / name)
        if name != "data":
            at.clock.forward(minutes=minutes)
            set_back(at)
        chief.client = at.client()
        assert {one["status"] for one in chief.send(*entries).json["answers"]} == {"accepted"}
        given.append({one.payload["seq"]: one.payload.get("restored") for one in said(at, job)[1:]})
    numbers = [seq for one in given for seq in one]
    assert len(numbers) == len(set(numbers)) == 9
    assert [len(set(one.values())) for one in given] == [1, 1, 1]
    assert len({restored for one in given for restored in one.values()}) == 3


@pytest.mark.parametrize("wrong", [{"last": 9}, {"last": -1}, {"head": None}, {"last": 0}, {"last": "7"}])
def test_a_restoration_that_cannot_be_is_refused(wrong):
    with pytest.raises(Refused):
        format_statement(restoration(9, AT, 7, "A" * 43) | wrong, BEN)
