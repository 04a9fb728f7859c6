"""In whatever order, and however often, what phones send arrives: the same is there at the end, and a report of what
is there at any moment is made and names what it lacks."""

from random import Random

import pytest

from inspect_app.entry.format import parse
from inspect_app.record.fold import fold
from inspect_app.report.contents import report_contents
from inspect_app.store.records import folded
from tests.seed import chance
from tests.state.machine import COUNTED
from tests.state.run import Phones, said
from tests.state.server import Strike

LOG = {"head_seq": None, "head_receipt": None, "server_kid": "K", "fingerprint": "", "keys": {}}
OPTIONS = {"issued": "2026-11-26T09:00:00+00:00", "number": 1, "final": True}


def every_request_one_to_five_times(random: Random) -> None:
    """Two people's requests, made while nothing arrives, then all of them doubled and in a random order."""
    town = Phones()
    town.begin()
    for pick in range(2):
        town.photograph(pick, pick, 700 * random.randrange(3), 1)
        town.save_something(pick, 0, "area", 3, None)
        phone = town.a_phone(pick)
        assert town.token(phone)
        for digest in phone.unsent():
            town.on_the_way += [(phone, phone.batch([digest]))] * random.randint(1, 5)
        town.on_the_way += [(phone, phone.batch(phone.unsent()))] * random.randint(1, 5)
        for name in phone.unsent_pictures():
            town.on_the_way += [(phone, phone.upload(name, 400))] * random.randint(1, 5)
    random.shuffle(town.on_the_way)
    COUNTED["doubled requests"] += len(town.on_the_way)
    town.teardown()


def test_every_request_may_come_one_to_five_times_in_any_order():
    COUNTED.clear()
    for n in range(2):
        every_request_one_to_five_times(chance(f"doubled {n}"))
    said("doubled")


@pytest.mark.soak
def test_every_request_may_come_one_to_five_times_in_hundreds_of_orders():
    COUNTED.clear()
    for n in range(200):
        every_request_one_to_five_times(chance(f"doubled at length {n}"))
    said("doubled")


def test_a_report_of_every_prefix_of_arrival_is_made_and_names_what_is_missing(office):
    fay = office.phone("fay", "foreman")
    job, chief = office.job(fay.person.id)
    photo = "a" * 64
    tokens = [chief.job(job), *(token for _ in range(2) for token in office.walk(fay, job, photo))]
    people = {one.person.id: {"name": one.person.login, "role": one.person.role, "kids": [one.kid]}
              for one in (fay, chief)}  # fmt: skip
    random, wrong = chance("prefixes"), []
    for _ in range(6):
        random.shuffle(tokens)
        for n in range(len(tokens) + 1):
            here = tokens[:n]
            record = fold([folded(token) for token in here], people)
            contents = report_contents(record, people, {}, LOG, {}, OPTIONS)
            told = [(one["facts"]["low"], one["facts"]["high"]) for one in contents["missing"]
                    if one["code"] == "entries_missing" and one["facts"]["kid"] == fay.kid]  # fmt: skip
            seqs = {parse(token).payload["seq"] for token in here if parse(token).kid == fay.kid}
            lacks = set(range(max(seqs, default=-1) + 1)) - seqs
            if {seq for low, high in told for seq in range(low, high + 1)} != lacks or contents["final"]:
                wrong.append((n, told, lacks))
            of_photo = any(parse(token).kind == "photo" for token in here)
            assert ("photo_missing" in {one["code"] for one in contents["missing"]}) == of_photo
    assert wrong == []


def test_struck_at_every_statement_a_batch_is_kept_whole_or_not_at_all():
    """A disk that fails at each statement in turn, and at every seventh a server that dies: ``settle`` looks after
    each whether all of the batch is there, or nothing of it."""
    town, at = Phones(), 0
    town.begin()
    phone = town.a_phone(0)
    town.save_something(0, 0, "area", 3, None)
    while phone.unsent():
        assert phone.bearer or town.token(phone)
        town.deliver(phone, phone.batch(phone.unsent()), Strike(at, "die" if at % 7 == 6 else "broken"))
        at += 1
    assert at > 20
    town.teardown()
