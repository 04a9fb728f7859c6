"""A drawn panel is bad, good or unknown by what was answered at its drawn places, and unknown is never good."""

from typing import Any

import pytest

from inspect_app.record.panel_result import given_at, panel_result

ASKS = {"critical": ["flange/screw"], "major": ["flange/dimple", "flange/bite"]}
PLACES = [{"station": "s1", "state": "looked"}, {"station": "s2", "state": "looked"}]
STATIONS = {"s1": {"reached": "yes"}, "s2": {"reached": "yes"}}


def answers(**results: str) -> dict[str, Any]:
    """Both places good, but for ``s1_bite="fail"``."""
    given = {f"{station}/flange/{item}": "pass" for station in STATIONS for item in ("screw", "dimple", "bite")}
    for name, result in results.items():
        station, item = name.split("_", 1)
        given[f"{station}/flange/{item}"] = result
    return {
        subject: {"station": subject.split("/")[0], "item": subject.split("/")[2], "result": result}
        for subject, result in given.items() if result
    }  # fmt: skip


def shown(given: dict[str, Any], **changed: Any) -> dict[str, str]:
    told = {"places": PLACES, "asks": ASKS, "stations": STATIONS, **changed}
    return panel_result(told["places"], told["asks"], given_at(given), told["stations"])


def test_a_panel_is_good_when_everything_asked_at_all_of_its_places_is() -> None:
    assert shown(answers()) == {"critical": "good", "major": "good"}
    assert shown(answers(s2_bite="not_applicable"))["major"] == "good"


def test_one_failure_at_one_place_makes_the_panel_bad_in_its_severity_alone() -> None:
    assert shown(answers(s2_bite="fail")) == {"critical": "good", "major": "bad"}
    assert shown(answers(s2_bite="fail", s1_dimple=""))["major"] == "bad"  # bad outweighs what is missing


@pytest.mark.parametrize("result", ["", "too_close", "not_determinable", "some_word_of_later"])
def test_unanswered_too_close_and_not_determinable_are_unknown(result: str) -> None:
    assert shown(answers(s1_dimple=result)) == {"critical": "good", "major": "unknown"}


def test_a_place_where_nothing_asked_applied_shows_nothing() -> None:
    assert shown(answers(s1_dimple="not_applicable", s1_bite="not_applicable"))["major"] == "unknown"


UNREACHED = [(None, "open"), ("s2", "covered"), ("s2", "unsafe"), ("gone", "looked")]


@pytest.mark.parametrize("place", [{"station": station, "state": state} for station, state in UNREACHED])
def test_a_place_nobody_reached_is_unknown_whatever_was_answered(place: dict[str, Any]) -> None:
    assert set(shown(answers(), places=[PLACES[0], place]).values()) == {"unknown"}
    covered = {"s1": {"reached": "yes"}, "s2": {"reached": "covered"}}
    assert set(shown(answers(), stations=covered).values()) == {"unknown"}


def test_a_panel_without_places_shows_nothing() -> None:
    assert set(shown(answers(), places=[]).values()) == {"unknown"}


def test_a_failure_nobody_asked_about_counts_by_its_own_severity() -> None:
    given = answers()
    given["s1/flange/wave"] = {"station": "s1", "item": "wave", "result": "fail", "severity": "minor"}
    assert shown(given) == {"critical": "good", "major": "good", "minor": "bad"}
    given["s1/flange/wave"]["severity"] = "record"
    assert shown(given) == {"critical": "good", "major": "good"}
    given["s1/flange/wave"]["severity"] = None  # it failed, and nobody says how gravely: nothing is known
    assert set(shown(given).values()) == {"unknown"}


def test_the_draw_says_how_grave_an_item_is_and_no_answer_makes_light_of_it() -> None:
    given = answers(s1_screw="fail")
    given["s1/flange/screw"]["severity"] = "minor"
    assert shown(given) == {"critical": "bad", "major": "good"}


def test_an_answer_that_names_another_station_than_its_own_is_none_of_it() -> None:
    given = answers(s1_screw="")
    given["s1/flange/screw"] = {"station": "s9", "item": "screw", "result": "pass"}
    assert shown(given)["critical"] == "unknown"
