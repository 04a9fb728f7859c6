"""A crew's series goes from normal to tightened, stopped and back by MIL-STD-105E 4.7, and the record alone says so."""

from typing import Any

import pytest

from inspect_app.record.decision import decide
from inspect_app.record.sampling import OURS
from inspect_app.record.series import series
from tests.record.lot_sample import lot, plans

SHOWN = {"A": "g", "R": "b", "N": "-", "O": "o"}


class Crew:
    """Lots of one crew, one a day; ``judge`` as the fold does it."""

    def __init__(self, history: str = "", **changed: Any) -> None:
        self.lots: dict[str, dict[str, Any]] = {}
        self.sampling: dict[str, Any] = dict(OURS)
        for letter in history:
            self.add(letter, **changed)

    def add(self, letter: str, **changed: Any) -> dict[str, Any]:
        name = changed.pop("id", f"k/{len(self.lots)}")
        n = changed.pop("n", 13)
        day = changed.pop("day", f"2026-11-{len(self.lots) + 1:02}")
        shown = SHOWN[letter] + "g" * (n - 1)
        one = lot(shown, id=name, day=day, closed=letter != "O", **changed)
        if letter == "N":
            one["drawn"] = lot("-" * n)["drawn"]
        self.lots[name] = one
        return one

    def told(self) -> dict[str, Any]:
        def judge(one: dict[str, Any], called_for: str | None) -> dict[str, Any]:
            one["decision"] = decide(one, self.sampling, called_for)
            return one["decision"]

        found = series(self.lots, dict.fromkeys(self.lots, "asm"), self.sampling, judge)
        return found["2|asm"]

    def symbols(self) -> str:
        return "".join(one["symbol"] or "." for one in self.told()["lots"])


def state(history: str) -> tuple[str, str]:
    told = Crew(history).told()
    return told["inspection"], told["because"]["code"]


def test_a_series_begins_under_normal_inspection() -> None:
    told = Crew("A").told()
    assert (told["inspection"], told["because"]["code"], told["since"]) == ("normal", "switch_none", None)
    assert told["lots"] == [{"lot": "k/0", "day": "2026-11-01", "symbol": "A", "called_for": "normal"}]
    assert told["decided"] == 1 and (told["crew"], told["assembly"]) == ("2", "asm")


def test_two_of_five_not_accepted_tighten_and_five_accepted_bring_normal_back() -> None:
    assert state("RA" + "R") == ("tightened", "switch_two_not_accepted")
    assert state("RAAAAR")[0] == "normal"  # six lots apart
    assert state("RR" + "AAAA")[0] == "tightened"
    assert state("RR" + "AAAAA") == ("normal", "switch_five_accepted")
    assert state("RR" + "AAAANA")[0] == "tightened"  # not determinable breaks the run


def test_from_tightened_to_stopped_and_again_only_after_the_technical_lead_has_decided() -> None:
    crew = Crew("RR" + "RARAAR" + "R" + "RAA")
    told = crew.told()
    assert (told["inspection"], told["because"]["code"]) == ("stopped", "switch_five_not_accepted")
    assert told["since"] == "k/9"
    assert [one["called_for"] for one in told["lots"]] == ["normal"] * 2 + ["tightened"] * 8 + ["stopped"] * 2
    crew.lots["k/10"]["disposition"] = {"choice": "replace", "stands": True}  # of another lot than stopped it
    crew.lots["k/9"]["disposition"] = {"choice": "accept", "stands": False}
    assert crew.told()["inspection"] == "stopped"  # an acceptance without its document begins nothing
    crew.lots["k/9"]["disposition"] = {"choice": "replace", "stands": True}
    told = crew.told()
    assert (told["inspection"], told["because"]["code"]) == ("tightened", "switch_corrected")
    for _ in range(3):
        crew.add("A")
    assert crew.told()["inspection"] == "normal"  # five accepted since it began again


def test_reduced_inspection_takes_ten_accepted_and_a_job_that_allows_it() -> None:
    crew = Crew("A" * 10)
    assert crew.told()["inspection"] == "normal"
    crew.sampling["reduced"] = True
    assert crew.told()["because"]["code"] == "switch_ten_accepted"
    crew.add("R")
    assert crew.told()["because"]["code"] == "switch_reduced_not_accepted"


def test_between_the_numbers_of_reduced_inspection_a_lot_is_accepted_and_normal_is_back() -> None:
    """200 panels, level II, AQL 4, reduced: accept 1, reject 4 (Table II-C)."""
    crew = Crew("A" * 10)
    crew.sampling["reduced"] = True
    crew.add("A", size=200, inspection="reduced", plans=plans("II", "4"))["drawn"] = lot("bb" + "g" * 11)["drawn"]
    told = crew.told()
    assert told["lots"][-1]["symbol"] == "M" and told["because"]["code"] == "switch_reduced_between"
    assert told["inspection"] == "normal" and told["decided"] == 11


def test_lots_stand_in_order_of_day_and_id_however_they_arrived() -> None:
    crew = Crew("RAARA")
    wanted = crew.told()
    crew.lots = dict(reversed(list(crew.lots.items())))
    assert crew.told() == wanted
    assert [one["day"] for one in wanted["lots"]] == sorted(one["day"] for one in wanted["lots"])


def test_what_was_reworked_or_audited_is_no_lot_of_the_series() -> None:
    crew = Crew("R")
    crew.add("R", purpose="rework")
    crew.add("R", purpose="audit")
    assert crew.symbols() == "R" and crew.told()["inspection"] == "normal"


def test_an_open_lot_waits_and_one_that_is_already_lost_counts_at_once() -> None:
    crew = Crew("RO")
    assert crew.symbols() == "R." and crew.told()["decided"] == 1
    crew.lots["k/1"]["drawn"] = lot("boooo")["drawn"]
    assert crew.symbols() == "RR" and crew.told()["inspection"] == "tightened"


def test_two_lots_of_one_day_know_nothing_of_each_other() -> None:
    crew = Crew("R")
    crew.add("R", day="2026-11-02")
    crew.add("A", day="2026-11-02")
    crew.add("A", day="2026-11-03")
    assert [one["called_for"] for one in crew.told()["lots"]] == ["normal", "normal", "normal", "tightened"]


def test_an_extension_is_one_lot_with_what_it_extends_and_the_worse_of_them_counts() -> None:
    crew = Crew("AA")
    extension = crew.add("R", extends="k/1", day="2026-11-02")
    crew.lots["k/1"]["extensions"] = [extension["id"]]
    assert crew.symbols() == "AR"
    extension["drawn"] = lot("g" * 13)["drawn"]
    assert crew.symbols() == "AA"
    extension.update(closed=False)
    assert crew.symbols() == "A."


def test_crews_are_one_when_their_names_differ_by_spaces_around_them() -> None:
    crew = Crew("R")
    crew.add("R", crew=" 2 ")
    assert crew.told()["inspection"] == "tightened"


@pytest.mark.parametrize(("used", "kept"), [("normal", "tightened"), ("tightened", None)])
def test_a_laxer_choice_is_judged_by_what_the_series_called_for(used: str, kept: str | None) -> None:
    crew = Crew("RR")
    one = crew.add("A", inspection=used)
    crew.told()
    assert one["decision"]["laxer"] == kept
    assert one["decision"]["by"]["major"]["plan"]["inspection"] == "tightened"
