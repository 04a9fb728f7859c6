"""What was kept apart and let in is counted and marked; what somebody does not see is no gap."""

from inspect_app.record.fold import fold
from tests.bodies import body_of

PEOPLE = {
    "chief": {"name": "Chief", "role": "administrator", "kids": ["K"]},
    "fay": {"name": "Fay", "role": "foreman", "kids": ["F"]},
}


def entry(digest, kind, by, seq, body, **changed):
    kid = PEOPLE[by]["kids"][0]
    payload = {"kind": kind, "subject": digest, "by": by, "at": "2026-11-25T10:00:00.000+00:00", "clock": {},
               "seq": seq, "prev": None, "replaces": [], "body": body_of(kind) | body}  # fmt: skip
    return {"digest": digest, "kid": kid, "payload": payload | changed}


def flags(record, code):
    return [(flag["digest"], flag["facts"]) for flag in record["flags"] if flag["code"] == code]


def test_an_entry_let_in_is_counted_and_says_by_whom():
    late, admission = entry("X", "walk", "fay", 0, {}), entry("A", "admission", "chief", 0, {"entry": "X"})
    for order in ([late, admission], [admission, late]):
        record = fold(order, PEOPLE)
        assert "X" in record["walks"] and flags(record, "admitted") == [("X", {"by": "chief", "other": "A"})]


def test_said_again_it_is_let_in_once_more_and_nothing_else_changes():
    late = entry("X", "walk", "fay", 0, {})
    twice = [entry(one, "admission", "chief", seq, {"entry": "X"}) for seq, one in enumerate("AB")]
    record = fold([late, *twice], PEOPLE)
    assert [by["other"] for _, by in flags(record, "admitted")] == ["A", "B"] and list(record["walks"]) == ["X"]


def test_nobody_but_an_administrator_lets_anything_in():
    record = fold([entry("X", "walk", "fay", 0, {}), entry("A", "admission", "fay", 1, {"entry": "X"})], PEOPLE)
    assert flags(record, "admitted") == [] and flags(record, "no_authority") == [("A", {"kind": "admission"})]


def test_an_admission_waits_for_its_entry():
    record = fold([entry("A", "admission", "chief", 0, {"entry": "X"})], PEOPLE)
    assert flags(record, "orphan") == [("A", {"other": "X"})]


def test_who_sees_a_part_is_told_of_no_gap_and_of_everything_that_is_wrong_in_it():
    seen = [entry("S", "station", "fay", 7, {"walk": "unseen"}, prev="P"),
            entry("J", "admission", "fay", 9, {"entry": "U"})]  # fmt: skip
    whole, part = fold(seen, PEOPLE), fold(seen, PEOPLE, True)
    assert whole["chains"]["F"]["gaps"] and whole["chains"]["F"]["orphans"] and flags(whole, "orphan")
    assert part["chains"]["F"]["gaps"] == part["chains"]["F"]["orphans"] == flags(part, "orphan") == []
    assert flags(part, "no_authority") == flags(whole, "no_authority") != []
    assert part["stations"] == whole["stations"]


def test_an_area_seen_at_some_places_alone_is_not_said_to_be_uncovered():
    seen = [entry(name, "area", "chief", n, {}) for n, name in enumerate(("own", "theirs"))]
    whole, told, untold = fold(seen, PEOPLE), fold(seen, PEOPLE, True, ["own"]), fold(seen, PEOPLE, True)
    assert whole["coverage"].keys() == untold["coverage"].keys() == {"own", "theirs"}
    assert told["coverage"].keys() == {"own"} and told["partial"] and "partial" not in whole
    assert [told["areas"][name].get("narrow") for name in ("own", "theirs")] == [None, True]
