"""A lot is decided by its published plan from its drawn panels alone; what was not seen is never good.

Bounds and probabilities are held against SciPy, plans against cells of MIL-STD-105E (Tables I, II-A, II-B, II-C).
"""

import random

import numpy as np
import pytest
from scipy import stats

from inspect_app.record.decision import decide
from inspect_app.record.let_through import let_through
from inspect_app.record.sampling import OURS
from tests.record.lot_sample import decided, drawn, lot, plans


def test_none_bad_of_5_in_60_is_accepted_and_may_still_hide_26() -> None:
    """26 of 60: largest D with C(60 − D, 5)/C(60, 5) > 0.05; 12.9 %: 1 − 0.5^(1/5). By hand."""
    found = decided("ggggg")
    major = found["by"]["major"]
    assert found["state"] == "accepted" and found["reason"] is None
    assert (major["plan"]["letter"], major["plan"]["n"], major["accept"], major["reject"]) == ("C", 5, 0, 1)
    assert major["bound"] == {"defectives": 26, "of": 60, "share": pytest.approx(26 / 60)}
    assert major["risk"]["50"] == pytest.approx(1 - 0.5 ** (1 / 5), abs=1e-12)
    assert found["by"]["minor"]["accept"] == 1
    assert found["lot"] == {"planned": 60, "placed": 60, "drawn": 5, "looked": 5, "nonresponse": 0, "dropped": 0}


def test_the_bound_of_any_lot_is_the_largest_number_that_scipy_does_not_rule_out() -> None:
    chance = random.Random(3)
    for _ in range(20):
        shown = "".join(chance.choice("gggb") for _ in range(chance.randint(5, 20)))
        size = chance.randint(len(shown) + 1, 200)
        bound = decided(shown, size=size, plans=plans("III", "10"))["by"]["critical"]["bound"]
        assert bound["of"] == size and bound["defectives"] == most_bad(size, len(shown), 0)
        major = decided(shown, size=size, plans=plans("III", "10"))["by"]["major"]
        assert major["bound"]["defectives"] == most_bad(size, major["n"], major["found"])


def most_bad(size: int, n: int, found: int) -> int:
    return int(np.flatnonzero(stats.hypergeom.cdf(found, size, np.arange(size + 1), n) > 0.05).max())


@pytest.mark.parametrize(("n", "accept", "size"), [(5, 0, 60), (8, 1, 60), (20, 1, 90), (80, 2, 1000), (13, 0, 14)])
def test_what_a_plan_lets_through_is_what_scipy_gives(n: int, accept: int, size: int) -> None:
    """The binomial share is a quantile of the beta distribution, the count the last that the hypergeometric passes."""
    found = let_through(n, accept, size)
    for name, probability in (("95", 0.95), ("50", 0.5), ("10", 0.1)):
        assert found["share"][name] == pytest.approx(stats.beta.ppf(1 - probability, accept + 1, n - accept), rel=1e-9)
        passing = stats.hypergeom.cdf(accept, size, np.arange(size + 1), n) >= probability
        assert found["count"][name] == np.flatnonzero(passing).max()


def test_where_every_panel_is_looked_at_nothing_is_left_to_chance() -> None:
    found = decided("ggg", size=3)
    assert found["state"] == "accepted" and found["by"]["major"]["risk"] == {"95": 0, "50": 0, "10": 0}
    assert found["by"]["major"]["bound"]["defectives"] == 0


def test_a_lot_is_not_accepted_as_soon_as_more_is_bad_than_allowed_while_it_is_still_open() -> None:
    found = decided("b....", closed=False, set=12)
    assert (found["state"], found["reason"], found["severity"]) == ("not_accepted", "found", "major")
    assert found["by"]["minor"]["state"] == "open"
    assert decided("m....", closed=False)["state"] == "open"  # one minor is allowed
    assert decided("mm...", closed=False)["severity"] == "minor"


def test_an_open_lot_stays_open_however_good_it_looks_and_counts_nobody_as_missing_who_may_still_come() -> None:
    found = decided("gggoo", closed=False, set=40)
    assert found["state"] == "open" and found["by"]["major"]["state"] == "open"
    assert found["lot"]["looked"] == 3 and found["lot"]["nonresponse"] == 0
    assert found["by"]["major"]["unknown"] == 0 and found["by"]["major"]["n"] == 3
    assert decided("ggg-o", closed=False)["lot"]["nonresponse"] == 1


def test_more_than_a_tenth_not_looked_at_is_not_determinable_and_just_a_tenth_is_decided() -> None:
    ten, twenty = {"plans": plans("S-4", "2.5"), "size": 60}, {"plans": plans("II", "4"), "size": 60}
    assert decided("gggg-", **ten)["reason"] == "nonresponse"  # one of five
    assert decided("g" * 12 + "-", **twenty)["state"] == "accepted"  # one of thirteen
    assert decided("g" * 11 + "--", **twenty)["state"] == "not_determinable"  # two of thirteen
    assert decided("g" * 9 + "-xxx", **twenty)["state"] == "accepted"  # one of ten, 10 % exactly
    assert decided("g" * 8 + "-xxxx", **twenty)["state"] == "not_determinable"  # one of nine
    assert decided("g" * 4 + "-", sampling={"nonresponse": "0.2"}, **ten)["state"] == "accepted"


@pytest.mark.parametrize("unseen", ["-", "u", "o"])
def test_covered_undecided_and_forgotten_are_one_not_seen(unseen: str) -> None:
    found = decided("gggg" + unseen)
    assert (found["state"], found["reason"], found["lot"]["nonresponse"]) == ("not_determinable", "nonresponse", 1)
    assert found["by"]["major"]["n"] == 4 and found["by"]["major"]["unknown"] == 1


def test_a_bad_panel_counts_although_others_were_not_seen() -> None:
    assert decided("b----")["state"] == "not_accepted"


def test_the_lot_is_not_determinable_where_each_severity_alone_misses_few() -> None:
    """Two of thirteen panels, one in major and one in critical: 8 % of each, 15 % of the panels."""
    panels = drawn("g" * 13)
    panels[0]["results"]["major"] = panels[1]["results"]["critical"] = "unknown"
    found = decide(lot(drawn=panels, plans=plans("II", "4")), OURS, None)
    assert {one["state"] for one in found["by"].values()} == {"accepted"}
    assert (found["state"], found["reason"], found["severity"]) == ("not_determinable", "nonresponse", None)


def test_panels_not_set_drop_out_and_less_than_half_a_sample_decides_nothing() -> None:
    found = decided("ggg..", set=30)
    assert found["state"] == "accepted" and found["lot"]["dropped"] == 2 and found["by"]["major"]["n"] == 3
    assert found["by"]["major"]["bound"]["of"] == 30
    small = decided("ggxxx", set=20)
    assert (small["state"], small["reason"]) == ("not_determinable", "sample_small")
    assert decided("bgxxx", set=20)["state"] == "not_accepted"


def test_who_looked_at_all_that_was_set_has_no_small_sample() -> None:
    assert decided("ggxxx", set=2)["state"] == "accepted"
    assert decided("ggxxx", set=3)["reason"] == "sample_small"
    assert decided("xxxxx", set=0)["reason"] == "nothing_set"


def test_a_sample_is_the_beginning_of_the_draw_and_a_critical_failure_counts_on_all_of_it() -> None:
    """Major of thirteen (II, AQL 4 of 60), minor of five (S-4, AQL 10): Tables I and II-A."""
    wide = {"plans": {"major": {"level": "II", "aql": "4"}, "minor": {"level": "S-4", "aql": "10"}}}
    found = decided("ggggg" + "mm" + "gggggg", **wide)
    assert found["state"] == "accepted"
    assert found["by"]["minor"]["found"] == 0 and found["by"]["minor"]["n"] == 5 and found["by"]["major"]["n"] == 13
    assert decided("gggmm" + "gggggggg", **wide)["severity"] == "minor"
    narrow = {"plans": {"major": {"level": "S-4", "aql": "2.5"}, "minor": {"level": "II", "aql": "4"}}}
    assert decided("gggggg" + "b" + "gggggg", **narrow)["by"]["major"]["found"] == 0
    assert decided("gggggg" + "c" + "gggggg", **narrow)["severity"] == "critical"


def test_beyond_the_sample_of_its_plan_a_severity_needs_no_look() -> None:
    panels = drawn("g" * 13)
    for panel in panels[5:9]:
        panel["results"]["minor"] = "unknown"
    wide = {"major": {"level": "II", "aql": "4"}, "minor": {"level": "S-4", "aql": "10"}}
    found = decide(lot(drawn=panels, plans=wide), OURS, None)
    assert found["state"] == "accepted" and found["lot"]["nonresponse"] == 0 and found["lot"]["looked"] == 13


def test_the_worst_severity_names_the_reason_and_the_gravest_comes_first() -> None:
    panels = drawn("ggggg")
    panels[0]["results"].update(critical="bad", major="bad")
    assert decide(lot(drawn=panels), OURS, None)["severity"] == "critical"


def test_between_accept_and_reject_of_reduced_inspection_a_lot_is_accepted() -> None:
    """200 panels, level II, AQL 4, reduced: letter G, n 13, accept 1, reject 4 (Tables I and II-C)."""
    reduced = {"size": 200, "inspection": "reduced", "plans": plans("II", "4")}
    between = decided("bb" + "g" * 11, **reduced)
    assert (between["by"]["major"]["accept"], between["by"]["major"]["reject"]) == (1, 4)
    assert between["state"] == "accepted" and between["by"]["major"]["found"] == 2
    assert decided("bbbb" + "g" * 9, **reduced)["state"] == "not_accepted"
    passing = stats.binom.cdf(3, 13, between["by"]["major"]["risk"]["50"])
    assert passing == pytest.approx(0.5, abs=1e-9)  # what the whole rule lets through, not its accept number alone


def test_nobody_is_believed_about_the_numbers_of_the_table() -> None:
    found = decided("bgggg", plans=plans("S-4", "2.5"))  # the lot itself says: accept with 99
    assert found["state"] == "not_accepted" and found["by"]["major"]["accept"] == 0


def test_a_laxer_draw_is_judged_by_the_plan_that_its_series_called_for() -> None:
    """60 panels, S-4, AQL 2.5: normal C, n 5, 0/1; tightened n 8, 0/1; reduced n 2, 0/1 (Tables II-A, II-B, II-C)."""
    found = decided("ggggg", "tightened")
    assert found["laxer"] == "tightened" and found["by"]["major"]["plan"]["inspection"] == "tightened"
    assert found["by"]["major"]["wanted"] == 8 and found["state"] == "accepted"
    assert decided("gg", "normal", inspection="reduced")["reason"] == "draw_small"  # two of five
    assert decided("ggggg", "stopped")["laxer"] == "stopped"
    assert decided("ggggg", "normal")["laxer"] is None


def test_of_a_laxer_and_a_stricter_plan_the_smaller_number_holds() -> None:
    """200 panels, level II, AQL 4: reduced n 13, 1/4; normal n 32, 3/4. Two bad of thirteen are too many for reduced
    to accept plainly, and normal would let three pass of a sample nobody drew."""
    found = decided("bb" + "g" * 14, "normal", size=200, inspection="reduced", plans=plans("II", "4"))
    assert found["by"]["major"]["accept"] == 1 and found["by"]["major"]["wanted"] == 32


def test_a_person_may_choose_stricter_and_is_judged_by_it() -> None:
    found = decided("gggggggg", "normal", inspection="tightened")
    assert found["laxer"] is None and found["stricter"] and found["by"]["major"]["plan"]["n"] == 8


def test_zero_acceptance_by_a_share_asks_for_its_own_sample() -> None:
    """50 panels, 10 % bad, 95 %: n 22 (exact hypergeometric)."""
    zero = {"critical": {"n": 1, "accept": 9, "defective": "0.1", "confidence": "0.95"}}
    found = decided("g" * 22, size=50, plans=zero)
    assert found["by"]["critical"]["plan"]["n"] == 22 and found["state"] == "accepted"
    assert decided("g" * 10, size=50, plans=zero)["by"]["critical"]["reason"] == "draw_small"
    odd = decided("ggggg", plans={"critical": {"n": 1, "accept": 9, "defective": "7", "confidence": "0.95"}})
    assert (odd["state"], odd["reason"], odd["severity"]) == ("not_determinable", "no_plan", "critical")
    assert odd["by"]["major"]["state"] == "accepted"  # one slip spoils its own severity and no other


def test_an_audit_falls_back_to_its_own_level() -> None:
    """60 panels, level II, AQL 2.5: letter E, arrow down to F, n 20, 1/2."""
    found = decided("g" * 20, purpose="audit")
    plan = found["by"]["major"]["plan"]
    assert (plan["letter"], plan["n"], plan["accept"]) == ("F", 20, 1)


def test_what_nobody_asks_decides_nothing_but_a_failure_there_still_counts() -> None:
    asks = {"critical": ["flange/screw"], "major": ["flange/dimple"]}
    panels = drawn("ggggg")
    for panel in panels:
        del panel["results"]["minor"]
    found = decide(lot(drawn=panels, asks=asks), OURS, None)
    assert found["state"] == "accepted" and found["by"]["minor"]["state"] == "not_asked"
    assert found["lot"]["nonresponse"] == 0 and found["lot"]["looked"] == 5
    panels[0]["results"]["minor"] = panels[1]["results"]["minor"] = "bad"
    assert decide(lot(drawn=panels, asks=asks), OURS, None)["state"] == "not_accepted"
    assert decide(lot(asks={}), OURS, None)["reason"] == "nothing_asked"


@pytest.mark.parametrize("size", [0, -3, None, "60"])
def test_a_size_that_is_none_gives_no_plan_and_breaks_nothing(size: object) -> None:
    found = decide({**lot(), "size": size}, OURS, None)
    assert (found["state"], found["reason"]) == ("not_determinable", "no_plan")
