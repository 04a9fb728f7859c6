"""Chains of one job's entries: what they show, whatever the order of arrival."""

import random

from inspect_app.record.chain import chains


def link(digest: str, seq: int, prev: str | None, kid: str = "K") -> dict:
    return {"digest": digest, "kid": kid, "payload": {"seq": seq, "prev": prev}}


WHOLE = [link("a", 0, None), link("b", 1, "a"), link("c", 2, "b")]


def test_a_whole_chain_has_a_head_and_nothing_to_report() -> None:
    assert chains(WHOLE) == {"K": {"count": 3, "head": "c", "gaps": [], "forks": [], "orphans": []}}


def test_no_entries_make_no_chains() -> None:
    assert chains([]) == {}


def test_a_missing_entry_is_a_gap_and_the_next_one_waits_as_an_orphan() -> None:
    shown = chains([WHOLE[0], WHOLE[2], link("g", 6, "f")])["K"]
    assert shown["gaps"] == [[1, 1], [3, 5]]
    assert shown["orphans"] == ["c", "g"]
    assert (shown["count"], shown["head"]) == (3, "g")


def test_a_missing_first_entry_is_a_gap_too() -> None:
    shown = chains(WHOLE[1:])["K"]
    assert (shown["gaps"], shown["orphans"]) == ([[0, 0]], ["b"])


def test_a_copied_phone_shows_as_a_fork_at_the_place_where_the_two_part() -> None:
    copy = [link("y", 1, "a"), link("z", 2, "y")]
    shown = chains(WHOLE + copy)["K"]
    assert shown["forks"] == [{"seq": 1, "digests": ["b", "y"]}, {"seq": 2, "digests": ["c", "z"]}]
    assert (shown["count"], shown["head"], shown["orphans"]) == (5, "c", [])


def test_two_firsts_are_a_fork() -> None:
    shown = chains([link("b", 0, None), link("a", 0, None)])["K"]
    assert shown["forks"] == [{"seq": 0, "digests": ["a", "b"]}]


def test_a_swapped_link_is_an_orphan_though_no_number_is_missing() -> None:
    assert chains([WHOLE[0], WHOLE[1], link("c", 2, "a")])["K"]["orphans"] == ["c"]
    assert chains([WHOLE[0], link("b", 1, None)])["K"]["orphans"] == ["b"]


def test_a_link_to_the_entry_of_another_key_is_an_orphan() -> None:
    shown = chains([*WHOLE, link("o", 0, None, "L"), link("p", 1, "a", "L")])
    assert shown["L"]["orphans"] == ["p"]
    assert shown["K"]["orphans"] == []


def test_order_and_repetition_of_arrival_change_nothing() -> None:
    log = [*WHOLE, link("y", 1, "a"), link("g", 6, "f"), link("o", 0, None, "L"), link("p", 3, "x", "L")]
    wanted = chains(log)
    shuffler = random.Random(7)
    for _ in range(60):
        arrival = log + shuffler.choices(log, k=4)
        shuffler.shuffle(arrival)
        assert chains(arrival) == wanted
