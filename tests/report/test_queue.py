"""Whose report is made next: one person's asking keeps nobody else's waiting, and a second server ends nothing."""

import threading

from flask import Flask

from inspect_app.report.asked import Asked
from inspect_app.report.asks import Asks
from inspect_app.report.background import Background
from inspect_app.report.shelf import Shelf
from tests.office import Office


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
    office = Office(tmp_path / "data")
    job, _ = office.job()
    with office.app.app_context():
        transactions, clock = office.parts.transactions, office.clock
        first, second = Asks(transactions, clock), Asks(transactions, clock)
        shelf = Shelf(tmp_path / "data" / "reports", transactions, clock)
        made = first.begin(first.add(job, "fay", Asked()).id)
        tell = first.teller(made.id)
        number = shelf.begin(job)
        assert second.sweep() == []
        shelf.sweep()
        tell("lay_out", 0.4)
        assert (second.find(job, made.id).state, second.find(job, made.id).trouble) == ("making", None)
        pdf = shelf.work(job) / "made.part"
        pdf.write_bytes(b"%PDF-")
        done = shelf.finish(job, number, pdf, b"{}\n", "0" * 64, 1)
        first.done(made.id, number, True)
        assert (done.state, done.trouble) == ("ready", None) and second.find(job, made.id).trouble is None
        again = shelf.begin(job)
        shelf.sweep()
        shelf.withdraw(job, again)
        assert shelf.begin(job) == again, "a number under which nothing was written leaves no gap"
