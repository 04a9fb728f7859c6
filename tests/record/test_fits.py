"""The fit check of an area: its worst line counts, the worst of two versions too, and no version is lost."""

from inspect_app.record.fold import fold

AREA = "0190d5c2-0000-7000-8000-000000000005"
PEOPLE = {
    "mara": {"name": "Mara", "role": "inspector", "kids": ["k1"]},
    "tomas": {"name": "Tomas", "role": "foreman", "kids": ["k2"]},
    "owen": {"name": "Owen", "role": "reviewer", "kids": ["k3"]},
}


def said(digest, results, by="mara", kid="k1", replaces=()):
    lines = [{"line": f"line{n}", "verdict": {"result": result}} for n, result in enumerate(results)]
    payload = {
        "kind": "fit", "subject": AREA, "replaces": list(replaces), "by": by, "at": "2026-11-25T08:00:00.000-05:00",
        "seq": 0, "prev": None, "clock": {}, "body": {"area": AREA, "day": "2026-11-25", "lines": lines},
    }  # fmt: skip
    return {"digest": digest, "kid": kid, "payload": payload}


def folded(*entries):
    return fold(list(entries), PEOPLE)["fits"][AREA]


def test_the_worst_line_is_the_result_and_what_does_not_apply_counts_for_nothing():
    assert folded(said("a", ["pass", "not_applicable"]))["result"] == "pass"
    assert folded(said("a", ["pass", "not_determinable"]))["result"] == "not_determinable"
    assert folded(said("a", ["not_determinable", "fail", "pass"]))["result"] == "fail"
    assert folded(said("a", []))["result"] == folded(said("a", ["not_applicable"]))["result"] == "not_determinable"


def test_a_later_check_takes_the_place_of_its_author_s_earlier_one_which_stays_to_be_seen():
    fit = folded(said("a", ["fail"]), said("b", ["pass"], replaces=["a"]))
    assert (fit["result"], fit["digest"], fit["heads"]) == ("pass", "b", ["b"])
    assert [one["digest"] for one in fit["versions"]] == ["a", "b"]


def test_nobody_hides_another_s_failed_check_and_of_two_that_stand_the_worse_counts():
    fit = folded(said("a", ["fail"]), said("b", ["pass"], by="tomas", kid="k2", replaces=["a"]))
    assert (fit["result"], fit["digest"], fit["heads"]) == ("fail", "a", ["a", "b"])


def test_a_check_by_who_may_not_is_kept_and_flagged():
    record = fold([said("a", ["pass"], by="owen", kid="k3")], PEOPLE)
    assert AREA in record["fits"]
    assert [(flag["digest"], flag["code"]) for flag in record["flags"]] == [("a", "no_authority")]
