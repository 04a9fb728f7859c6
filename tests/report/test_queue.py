"""Whose report is made next: one person's asking keeps nobody else's waiting, and a second server ends nothing."""

import threading
from concurrent.futures import ThreadPoolExecutor

import pytest
from flask import Flask

from inspect_app.record.scope import WHOLE
from inspect_app.report.asked import Asked
from inspect_app.report.asks import MOST_OF_ALL, MOST_OF_JOB, MOST_OF_PERSON, SURVEYS, Asks, Full
from inspect_app.report.background import Background
from inspect_app.report.holds import Holds
from inspect_app.report.shelf import held_as
from tests.office import Office
from tests.report.test_make import make, walked


class Making:
    """A queue whose reports take until they are let go, one after another."""

    def __init__(self):
        self.begun, self.gates, self.changed = [], {}, threading.Condition()
        self.background = Background(self.make, self.make)

    def make(self, _app, item):
        gate = threading.Event()
        with self.changed:
            self.begun.append(item)
            self.gates[item] = gate
            self.changed.notify_all()
        assert gate.wait(10)

    def reached(self, count):
        with self.changed:
            assert self.changed.wait_for(lambda: len(self.begun) >= count, 10), self.begun
        return self.begun

    def let_go(self, item):
        self.gates[item].set()


def test_one_job_s_many_reports_wait_behind_another_job_s_and_behind_what_is_due():
    making = Making()
    for identity in range(1, 7):
        making.background.asked(identity, "busy")
    making.background.start(Flask("queue"))
    assert sorted(making.reached(2)) == [1, 2]
    making.background.asked(7, "quiet")
    making.background.due("third")
    making.background.due("busy")
    making.let_go(1)
    assert making.reached(3)[2:] == [7], "another job's comes next"
    making.let_go(7)
    assert making.reached(4)[3:] == ["third"], "then what is due"
    making.let_go("third")
    assert making.reached(5)[4:] == ["busy"], "the busy job's own too"
    for item in ("busy", 2):
        making.let_go(item)
    for at in range(5, 9):
        making.let_go(making.reached(at + 1)[at])
    assert making.background.settled(10) and sorted(making.begun[5:]) == [3, 4, 5, 6]


def test_a_second_server_on_the_store_ends_nothing_that_the_first_is_making(tmp_path):
    first = Office(tmp_path / "data")
    job, _ = first.job()
    second = first.again()

    def parts_of(office):
        return office.app.extensions["asks"], office.app.extensions["reports"].shelf

    (asks, shelf), (other_asks, other_shelf) = parts_of(first), parts_of(second)
    with first.app.app_context():
        identity = asks.add(job, "fay", Asked()).id
        with asks.begun(identity), shelf.holds.hold("report", held_as(job, WHOLE)):
            number = shelf.begin(job)
            with second.app.app_context():
                assert other_asks.sweep() == [] and other_asks.find(job, identity).state == "making"
                with other_asks.begun(asks.add(job, "fay", Asked(WHOLE, "a4")).id) as another:
                    assert another.state == "making", "one held as another is none of its business"
                other_shelf.sweep()
                assert other_shelf.newest(job).state == "making"
        with second.app.app_context():  # what made it has let it go without a word: it ended
            other_shelf.sweep()
            assert other_asks.sweep() == [] and other_asks.find(job, identity).trouble == "interrupted"
            assert other_shelf.newest(job).state == "failed"
        shelf.withdraw(job, number)
        assert shelf.begin(job) == number, "a number under which nothing was written leaves no gap"


def test_two_servers_to_whom_the_same_becomes_due_make_it_once(tmp_path):
    first = Office(tmp_path / "data")
    job, _ = walked(first)
    offices = (first, first.again(), first.again())
    with ThreadPoolExecutor(3) as pool:
        made = list(pool.map(lambda office: make(office, job), offices))
    assert sum(one.new for one in made) == 1 and {one.shelved.number for one in made} == {made[0].shelved.number}


def test_a_person_a_job_and_all_jobs_have_each_their_own_room_and_say_which_is_used_up(tmp_path):
    office = Office(tmp_path / "data")
    asks = Asks(office.parts.transactions, office.clock, Holds(tmp_path))

    def refused(job, person):
        with pytest.raises(Full) as full:
            asks.add(job, person, Asked({"kind": "walk", "walk": "one more"}))
        return full.value.code

    with office.app.app_context():
        for n in range(MOST_OF_PERSON):
            asks.add(f"job {n % 2}", "ann", Asked({"kind": "walk", "walk": str(n)}))
        assert refused("job 7", "ann") == "reports_waiting_yours", "counted over every job"
        for n in range(MOST_OF_JOB - MOST_OF_PERSON // 2):
            asks.add("job 0", f"person {n}", Asked({"kind": "walk", "walk": f"of {n}"}))
        assert refused("job 0", "bob") == "reports_waiting"
        for n in range(MOST_OF_ALL - MOST_OF_JOB - MOST_OF_PERSON // 2):
            asks.add(f"another {n}", f"person {n}", Asked())
        assert refused("quiet", "bob") == "reports_waiting"


def place(radius="4", unit="ft", panel=9):
    start = {"value": "7.5", "unit": "ft"}
    scope = {"kind": "survey", "area": "a", "panel": panel, "from_low_end": start,
             "radius": {"value": radius, "unit": unit}}  # fmt: skip
    return Asked(scope, "letter", "en", "US")


def test_a_place_written_in_another_way_is_the_same_place_and_waits_once(tmp_path):
    office = Office(tmp_path / "data")
    asks = Asks(office.parts.transactions, office.clock, Holds(tmp_path))
    with office.app.app_context():
        first = asks.add("job", "ann", place("4", "ft")).id
        assert {asks.add("job", "bob", place(*same)).id for same in (
            ("4.00", "ft"), ("48", "in"), ("1.2192", "m"), ("1219.2", "mm"), ("4e0", "ft"))} == {first}  # fmt: skip
        others = [asks.add("job", "bob", place(*other)).id for other in (("4.001", "ft"), ("four", "ft"), ("4", "px"))]
    assert len({first, *others}) == 4


def test_a_person_asks_for_so_many_places_a_day_and_those_again_as_often_as_they_like(tmp_path):
    office = Office(tmp_path / "data")
    asks = Asks(office.parts.transactions, office.clock, Holds(tmp_path))
    with office.app.app_context():
        for panel in range(SURVEYS):
            asks.fail(asks.add("job", "ann", place(panel=panel + 500)).id, "internal")
            asks.done(asks.add("job", "ann", place(panel=panel)).id, panel + 1, True)
            asks.done(asks.add("job", "ann", place(panel=panel)).id, panel + 1, False)
            office.clock.forward(minutes=1)
        with pytest.raises(Full) as full:
            asks.add("job", "ann", place(panel=99))
        assert full.value.code == "surveys_today" and full.value.seconds == 24 * 3600 - SURVEYS * 60
        again = asks.add("job", "ann", place("48", "in", 0))
        asks.done(again.id, 1, False)
        assert asks.add("job", "ann", Asked()), "no survey"
        assert asks.add("job", "bob", place(panel=99)), "another person's day is their own"
        office.clock.forward(seconds=full.value.seconds)
        assert asks.add("job", "ann", place(panel=98)), "room again when the first is a day old"
