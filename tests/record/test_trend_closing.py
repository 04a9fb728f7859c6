"""How long findings stay open: the median with those still open counted, against SciPy's survival function."""

import numpy as np
import pytest
from scipy import stats

from inspect_app.record.trend_closing import median
from inspect_app.record.trends import trends
from tests.record.trend_sample import finding, on, record_of


def test_three_closed_and_one_open_by_hand() -> None:
    """24, 48 and 72 hours, one open for 96: half are closed after 48."""
    told = trends(record_of(
        finding("a", on(1), on(2)), finding("b", on(1), on(3)), finding("c", on(1), on(4)), finding("d", on(1)),
        walks={"w": {"at": on(5), "crew": ""}},
    ))["closing"]  # fmt: skip
    assert [(one["id"], one["hours"]) for one in told["findings"]] == [("d", 96), ("c", 72), ("b", 48), ("a", 24)]
    assert (told["n"], told["median"], told["watched"], told["as_of"]) == (4, 48, 3, on(5))
    assert told["states"] == {"open": 1, "closed": 3}


def test_those_still_open_are_never_dropped_from_the_median() -> None:
    """One closed at once and three still open: the closed alone would say an hour."""
    findings = [finding("a", on(1), on(1, 9)), *(finding(name, on(1)) for name in "bcd")]
    told = trends(record_of(*findings, walks={"w": {"at": on(9), "crew": ""}}))["closing"]
    assert told["median"] is None and told["n"] == 4 and told["states"]["open"] == 3


def test_a_finding_opened_lately_counts_for_as_long_as_it_could_be_seen() -> None:
    """Two closed after 24 hours, two opened an hour ago: of the two that were watched so long all are closed."""
    findings = [finding("a", on(1), on(2)), finding("b", on(1), on(2)), finding("c", on(4)), finding("d", on(4))]
    told = trends(record_of(*findings, walks={"w": {"at": on(4, 9), "crew": ""}}))["closing"]
    assert told["median"] == 24


def test_the_median_is_that_of_scipy_s_survival_function() -> None:
    chance = np.random.default_rng(56)
    known = 0
    for _ in range(150):
        n = int(chance.integers(1, 25))
        times, ended = chance.integers(0, 12, n).astype(float), chance.random(n) < chance.choice([0.3, 0.6, 1.0])
        found = median([(float(time), bool(one)) for time, one in zip(times, ended, strict=True)])
        if not ended.any():
            assert found is None
            continue
        curve = stats.ecdf(stats.CensoredData(times[ended], right=times[~ended])).sf
        reached = curve.quantiles[curve.probabilities <= 0.5 + 1e-9]
        expected = (reached[0], (times >= reached[0]).sum()) if len(reached) else None
        assert found == expected
        known += found is not None
    assert known > 50


def test_accepted_by_the_engineer_ends_it_too_and_is_told_apart() -> None:
    told = trends(record_of(finding("a", on(1), on(2), "conceded"), finding("b", on(1), on(3)),
                            finding("c", on(1), None, "corrected")))["closing"]  # fmt: skip
    assert told["states"] == {"conceded": 1, "closed": 1, "corrected": 1}
    assert [one["closed"] for one in told["findings"]] == [None, "b-end", "a-end"]


def test_what_was_withdrawn_is_counted_by_itself() -> None:
    told = trends(record_of(finding("a", on(1), on(2), "withdrawn"), finding("b", on(1), on(3))))["closing"]
    assert told["n"] == 1 and told["states"] == {"withdrawn": 1, "closed": 1} and told["median"] == 48


def test_two_clocks_that_contradict_each_other_give_no_negative_time() -> None:
    told = trends(record_of(finding("a", on(2), on(1))))["closing"]
    assert told["findings"][0]["hours"] == 0 and told["median"] == 0


def test_a_time_that_cannot_be_read_is_named_and_not_guessed() -> None:
    told = trends(record_of(finding("a", "yesterday", on(2)), finding("b", on(1), on(3))))["closing"]
    assert told["unreadable"] == ["a"] and told["n"] == 1


def test_offsets_from_utc_count() -> None:
    told = trends(record_of(finding("a", on(1, 8, "-05:00"), on(1, 14, "+00:00"))))["closing"]
    assert told["findings"][0]["hours"] == 1


@pytest.mark.parametrize(("by_day", "closed", "late"), [("2026-11-02", on(2, 23), False), ("2026-11-01", on(2), True),
                                                        ("2026-11-05", None, True), ("2026-11-06", None, False),
                                                        (None, None, False)])  # fmt: skip
def test_late_is_what_ended_after_its_day_or_is_still_open_after_it(by_day, closed, late) -> None:
    given = {"crew": "", "firm": "", "by_day": by_day, "problems": []}
    told = trends(record_of(finding("a", on(1), closed, assignment=given), walks={"w": {"at": on(6), "crew": ""}}))
    assert (told["closing"]["findings"][0]["late"], told["closing"]["late"]) == (late, int(late))
