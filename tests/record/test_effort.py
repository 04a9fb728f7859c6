"""What somebody signs in numbers costs a phone no more than it weighs: rows are gone through once, however many."""

from typing import Any

import pytest

from inspect_app.record.day_record import _work_done
from inspect_app.record.day_record_known import CrewDays, take_findings
from inspect_app.record.finding_opened import by_hand
from inspect_app.record.ranges import without
from inspect_app.record.trend_closing import median
from tests.record.finding_sample import HERE, Place

AT = "2026-11-25T08:00:00.000-05:00"


class Rows(list):  # type: ignore[type-arg]
    """Counts how often it is gone through."""

    passes = 0

    def __iter__(self) -> Any:
        self.passes += 1
        return super().__iter__()


class Name(str):
    """Counts how often it is compared."""

    compared = 0
    __hash__ = str.__hash__

    def __eq__(self, other: object) -> bool:
        Name.compared += 1
        return str.__eq__(self, other)


class Thing(dict):  # type: ignore[type-arg]
    """Counts how often it is read."""

    reads = 0

    def get(self, *asked: Any) -> Any:
        Thing.reads += 1
        return super().get(*asked)


def test_panels_that_walks_tell_are_gone_through_once_for_all_areas() -> None:
    told = Rows((f"area {n}", 1, 1) for n in range(500))
    assert len(_work_done(Rows(), told)) == 500 and told.passes <= 2


def test_the_median_of_many_times_goes_through_them_once() -> None:
    times = Rows((float(n), n % 2 == 0) for n in range(400))
    assert median(times) is not None and times.passes <= 2


@pytest.mark.parametrize("times", [[(1.0, True), (1.0, False), (2.0, True)], [(3.0, False), (3.0, True), (3.0, True)]])
def test_the_median_of_ties_counts_all_that_were_watched(times: list[tuple[float, bool]]) -> None:
    assert median(times) == (times[-1][0] if times[0][0] == 3.0 else 2.0, 3 if times[0][0] == 3.0 else 1)


def test_what_was_done_about_a_finding_is_compared_with_nothing_else_that_was() -> None:
    history = [{"kind": "correction", "digest": Name(n), "by": "fay", "at": AT} for n in range(300)]
    finding = {"walk": None, "crew": "2", "opened": {"digest": "first", "at": AT}, "history": history}
    take_findings(days := CrewDays(), {"walks": {}, "answers": {}, "findings": {"f": finding}})
    assert len(days.of(AT[:10], "2")["actions"]) == 300 and Name.compared <= 300


def test_a_roof_is_read_once_for_all_findings_that_somebody_points_out_on_it() -> None:
    site = Place()
    record, reads = site.record(), []
    record["areas"] = {name: Thing(area) for name, area in record["areas"].items()}
    for many in (1, 50):
        body = {"area": "area", "panel": 9, "from_low_end": HERE, "severity": "minor"}
        entry = {"digest": "d", "kid": "", "payload": {"by": "", "at": AT, "kind": "finding", "replaces": [],
                                                       "body": body}}  # fmt: skip
        Thing.reads = 0
        found = by_hand(record, {"finding": {str(n): {"heads": [entry], "all": [entry]} for n in range(many)}}, {})
        assert len(found) == many and found["0"]["zone"] is not None
        reads.append(Thing.reads)
    assert reads[1] == reads[0]


def test_ranges_without_others_are_what_is_left_of_them() -> None:
    gone = [[5, 6], [5, 9], [20, 19], [30, 40]]
    assert without([[1, 10], [12, 35], [38, 39], [41, 41]], gone) == [[1, 4], [10, 10], [12, 29], [41, 41]]
