"""The bad share lot by lot: exact limits, what stands out and what never may, and the series it belongs to."""

from typing import Any

import numpy as np
import pytest
from scipy import stats

from inspect_app.record.trends import trends
from tests.record.lot_days import day
from tests.record.lot_sample import lot
from tests.record.rhythm_sample import Site
from tests.record.trend_sample import record_of


def series(*shown: str, **changed: Any) -> dict[str, Any]:
    """One crew's lots, a day each."""
    lots = {
        f"l{at:02}": {**lot(one, id=f"l{at:02}", digest=f"d{at}", day=f"2026-11-{at + 1:02}", at=""), **changed}
        for at, one in enumerate(shown)
    }
    told = [{"lot": name, "day": lots[name]["day"], "symbol": "A", "called_for": "normal"} for name in lots]
    one = {"crew": "2", "assembly": "flange", "inspection": "normal", "because": None, "since": None, "lots": told}
    return record_of(lots=lots, series={"2|flange": one})


def points(*shown: str, asked: dict[str, Any] | None = None, **changed: Any) -> list[dict[str, Any]]:
    told = trends(series(*shown, **changed), asked)["shares"]
    return list(told[0]["points"]) if told else []


def test_each_lot_has_the_exact_limits_of_clopper_and_pearson() -> None:
    """Against SciPy's ``binomtest``, 95 %, two-sided."""
    told = trends(series("g" * 5, "bgggg", "b" * 3 + "g" * 17, "b" * 5))["shares"][0]
    for point, found, n in zip([*told["points"], told["whole"]], (0, 1, 3, 5, 9), (5, 5, 20, 5, 35), strict=True):
        exact = stats.binomtest(found, n).proportion_ci(0.95, "exact")
        assert (point["found"], point["n"], point["share"]) == (found, n, found / n)
        assert (point["low"], point["high"]) == pytest.approx((exact.low, exact.high), rel=1e-9, abs=1e-12)


def test_five_panels_none_bad_still_leave_half_the_roof_open() -> None:
    """1 − 0.025^(1/5) = 52.2 %, by hand."""
    assert points("ggggg")[0]["high"] == pytest.approx(1 - 0.025**0.2) == pytest.approx(0.5218, abs=5e-5)


def test_a_lot_of_which_nothing_is_known_has_no_share_and_may_be_all_bad() -> None:
    point = points("-----")[0]
    assert (point["share"], point["low"], point["high"], point["unknown"]) == (None, 0.0, 1.0, 5)


def test_what_is_not_set_yet_is_no_unknown_panel() -> None:
    assert (points("gg...")[0]["n"], points("gg...")[0]["unknown"]) == (2, 0)
    assert (points("ggxu-")[0]["n"], points("ggxu-")[0]["unknown"]) == (2, 2)


def test_a_severity_narrows_the_share_to_itself() -> None:
    assert points("cmgbg")[0]["found"] == 3
    assert points("cmgbg", asked={"severity": ["critical"]})[0]["found"] == 1
    assert points("cmgbg", asked={"severity": ["major", "minor"]})[0]["found"] == 2


def test_what_is_bad_is_bad_though_something_else_was_not_seen() -> None:
    record = series("g")
    record["lots"]["l00"]["drawn"][0]["results"] = {"critical": "bad", "major": "unknown", "minor": "good"}
    point = trends(record)["shares"][0]["points"][0]
    assert (point["found"], point["n"], point["unknown"]) == (1, 1, 0)


def test_few_looks_never_stand_out_and_many_do_as_fisher_s_exact_test_has_it() -> None:
    assert [one["stands"] for one in points("bbbbb", "ggggg", "ggggg")] == ["higher", None, None]
    assert [one["stands"] for one in points("bbb", "ggg", "ggg")] == [None, None, None]
    assert [one["stands"] for one in points("b" * 12, "b" * 12, "g" * 8 + "b" * 4)] == [None, None, "lower"]
    chance = np.random.default_rng(55)
    seen = set()
    for _ in range(60):
        sizes = chance.integers(3, 40, 4)
        bad = [int(chance.binomial(n, share)) for n, share in zip(sizes, (0.1, 0.1, 0.1, 0.7), strict=True)]
        told = points(*("b" * k + "g" * (int(n) - k) for k, n in zip(bad, sizes, strict=True)))
        for point, k, n in zip(told, bad, sizes, strict=True):
            table = [[k, n - k], [sum(bad) - k, sizes.sum() - n - sum(bad) + k]]
            beyond = {way: stats.fisher_exact(table, way).pvalue <= 0.00135 for way in ("greater", "less")}
            expected = "higher" if beyond["greater"] else "lower" if beyond["less"] else None
            assert point["stands"] == expected, table
            seen.add(expected)
    assert seen == {"higher", "lower", None}


def test_lots_out_of_the_days_wanted_or_of_another_crew_are_no_points() -> None:
    assert [one["lot"] for one in points("g", "b", "g", asked={"from": "2026-11-02", "to": "2026-11-02"})] == ["l01"]
    assert points("g", asked={"crew": ["other"]}) == points("g", asked={"area": ["b"]}) == []
    assert len(points("g", "b", asked={"crew": [" 2"], "area": ["a"], "assembly": ["flange"]})) == 2


def test_a_filter_that_no_lot_can_follow_is_told() -> None:
    told = trends(series("ggggg"), {"firm": ["Gable"], "crew": ["2"]})
    assert told["blind"] == {"shares": ["firm"], "agreement": ["firm"]} and len(told["shares"]) == 1
    assert trends(series("ggggg"))["blind"] == {"shares": [], "agreement": []}


def test_days_as_they_were_walked_become_points_with_their_decisions_and_an_item_narrows_them() -> None:
    site = Site()
    first = day(site, 1, 15, n=0, fails="dimple")
    second = day(site, 16, 30, n=1, day="2026-11-26")
    record = site.record()
    told = trends(record)["shares"][0]
    assert [(one["lot"], one["day"], one["found"]) for one in told["points"]] == [
        (first, "2026-11-25", 1), (second, "2026-11-26", 0)]  # fmt: skip
    decided = [one["symbol"] for one in record["series"][told["name"]]["lots"]]
    assert [one["symbol"] for one in told["points"]] == decided
    assert told["points"][0]["digests"] == [record["lots"][first]["digest"]]
    for item, found in (("flange/dimple", 1), ("flange/screw", 0), ("flange/none", 0)):
        narrowed = trends(record, {"item": [item]})["shares"][0]["points"][0]
        assert narrowed["found"] == found
        assert narrowed["n"] == (0 if item == "flange/none" else told["points"][0]["n"])


def test_an_extension_is_one_point_with_what_it_extends() -> None:
    record = series("bgggg", "ggggg")
    record["lots"]["l00"]["extensions"] = ["l09"]
    record["lots"]["l09"] = {**lot("bb", id="l09", digest="d9"), "at": ""}
    point = trends(record)["shares"][0]["points"][0]
    assert (point["found"], point["n"], point["digests"]) == (3, 7, ["d0", "d9"])
