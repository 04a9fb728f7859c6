"""What the lots of a job tell together: an audit beside the daily looks, the job to date, what the lead chose."""

from typing import Any

import pytest
from scipy import stats

from inspect_app.record.audits import audits
from inspect_app.record.disposition import dispositions
from inspect_app.record.lot_says import to_date_says
from inspect_app.record.to_date import to_date
from tests.record.lot_sample import decided, lot
from tests.record.rhythm_sample import FOREMAN, LEAD, PEOPLE


def with_decision(shown: str, **changed: Any) -> dict[str, Any]:
    return {**lot(shown, **changed), "decision": decided(shown, **changed)}


def test_ten_clean_days_of_five_bound_the_share_at_5_8_percent() -> None:
    """1 − 0.05^(1/50) = 5.82 %, one-sided 95 %, by hand."""
    told = to_date({str(day): with_decision("ggggg") for day in range(10)})["major"]
    assert (told["found"], told["n"]) == (0, 50)
    assert told["high"] == pytest.approx(1 - 0.05 ** (1 / 50), abs=1e-12) == pytest.approx(0.058, abs=5e-4)
    facts = {"found": 0, "looked": 50, "high": told["high"]}
    assert to_date_says(told) == {"code": "lot.says.to_date", "facts": facts}


def test_the_job_to_date_counts_what_was_seen_once_and_by_the_draw_of_daily_work() -> None:
    lots = {"a": with_decision("bgggg"), "b": with_decision("gg.oo", closed=False),
            "c": with_decision("bbbbb", purpose="rework"), "d": with_decision("b" * 20, purpose="audit")}  # fmt: skip
    told = to_date(lots)["major"]
    assert (told["found"], told["n"]) == (1, 7)
    assert told["high"] == pytest.approx(stats.beta.ppf(0.95, 2, 6), rel=1e-9)
    assert to_date({})["minor"] == {"found": 0, "n": 0, "high": 1.0}
    assert to_date_says(to_date({})["minor"])["code"] == "lot.says.to_date.none"


def compared(work: str, audit: str, **changed: Any) -> dict[str, Any]:
    lots = {"w": lot(work), "a": lot(audit, purpose="audit", **changed), "r": lot("b" * 9, purpose="rework")}
    return audits(lots)["a"]


def test_an_audit_stands_beside_the_daily_looks_with_the_exact_range_of_each() -> None:
    """Clopper and Pearson, two-sided 95 %, by SciPy."""
    told = compared("gbggg" * 4, "bbbgg" * 4)
    for side, found in (("foreman", 4), ("audit", 12)):
        exact = stats.binomtest(found, 20).proportion_ci(0.95, "exact")
        assert told[side]["found"] == found and told[side]["n"] == 20
        assert (told[side]["low"], told[side]["high"]) == pytest.approx((exact.low, exact.high), rel=1e-9)
    assert told["areas"] == ["a"] and told["statement"] == "overlap"


def test_it_says_plainly_whether_the_ranges_overlap() -> None:
    assert compared("g" * 20, "b" * 20)["statement"] == "audit_higher"
    assert compared("b" * 20, "g" * 20)["statement"] == "audit_lower"
    assert compared("g" * 20, "-" * 20)["statement"] == "too_few"


def test_a_panel_counts_when_it_is_bad_in_any_severity_or_known_in_all() -> None:
    told = compared("cmbg-u.", "g")
    assert (told["foreman"]["found"], told["foreman"]["n"]) == (3, 4)


def test_only_what_both_drew_from_is_compared() -> None:
    there = [{"area": "a", "from": 3, "to": 60}, {"area": "b", "from": 1, "to": 9}]
    told = compared("bbggg", "g", population=there)
    assert told["foreman"] == {"found": 0, "n": 3, "low": 0.0, "high": pytest.approx(1 - 0.025 ** (1 / 3))}
    assert told["areas"] == ["a", "b"]
    sealed = lot("bbbbb", drawn=[{"order": 0, "state": "sealed", "results": {}}])
    assert audits({"w": sealed, "a": lot("g", purpose="audit")})["a"]["foreman"]["n"] == 0


def chosen(*rows: tuple[str, str, Any], reference: str = "") -> tuple[dict[str, Any], list[dict[str, Any]]]:
    heads = []
    for at, (kid, choice, document) in enumerate(rows):
        by = "lee" if kid == LEAD else "fay"
        body = {"lot": "l", "choice": choice, "reason": "r", "document": document, "reference": reference}
        payload = {"kind": "disposition", "by": by, "at": "t", "clock": {}, "body": body}
        heads.append({"digest": f"d{at}", "kid": kid, "payload": payload})
    flags: list[dict[str, Any]] = []
    return dispositions({"l": {"heads": heads, "all": heads}}, PEOPLE, flags)["l"], flags


def test_an_acceptance_stands_only_with_its_document() -> None:
    assert chosen((LEAD, "accept", "f" * 64))[0]["stands"]
    bare, flags = chosen((LEAD, "accept", None), reference=" ")
    assert not bare["stands"]
    named, also = chosen((LEAD, "accept", None), reference="letter 4")
    assert named["stands"] and also == flags  # named, and not enclosed
    assert flags == [{"digest": "d0", "code": "accept_without_document", "facts": {"other": "l"}}]
    assert chosen((LEAD, "open", None))[0]["stands"]


def test_who_may_not_choose_chooses_nothing_and_of_two_choices_the_stricter_stands() -> None:
    alone, _ = chosen((FOREMAN, "accept", "f" * 64))
    assert alone["choice"] == "accept" and not alone["stands"]
    both, _ = chosen((FOREMAN, "replace", None), (LEAD, "accept", "f" * 64))
    assert (both["choice"], both["stands"], both["heads"]) == ("accept", True, ["d0", "d1"])
    assert chosen((LEAD, "accept", "f" * 64), (LEAD, "open", None), (LEAD, "replace", None))[0]["choice"] == "replace"


def test_a_bare_acceptance_never_hides_one_that_has_its_document() -> None:
    assert chosen((LEAD, "accept", None), (LEAD, "accept", "f" * 64))[0]["stands"]
