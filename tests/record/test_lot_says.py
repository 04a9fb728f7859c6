"""Every sentence about a lot stands in both languages with its facts, and says the numbers that were decided."""

import json
import re
from pathlib import Path
from typing import Any

import pytest

from inspect_app.record.audits import audits
from inspect_app.record.decision import decide
from inspect_app.record.lot_says import audit_says, lot_says, to_date_says
from inspect_app.record.sampling import OURS
from inspect_app.record.to_date import to_date
from inspect_app.report.number import number
from tests.record.lot_sample import lot, plans

ROOT = Path(__file__).parents[2]
WORDS = json.loads((ROOT / "static" / "words" / "lots.json").read_text("utf-8"))
PLACE = re.compile(r"\{(\w+)\}")


def said(shown: str = "ggggg", called_for: str | None = None, series: int | None = 1, changed_answers: int = 0,
         **changed: Any) -> list[dict[str, Any]]:  # fmt: skip
    one = lot(shown, **changed)
    one["decision"] = decide(one, OURS, called_for)
    one["decision"]["lot"]["changed"] = changed_answers
    return lot_says(one, OURS, series)


ZERO = {"critical": {"n": 1, "accept": 0, "defective": "0.1", "confidence": "0.95"}}
WIDE = {"size": 200, "inspection": "reduced", "plans": plans("II", "4")}
RATES = (("g" * 20, "b" * 20), ("b" * 20, "g" * 20), ("g", "g"), ("-", "g"))
SAID: dict[str, list[dict[str, Any]]] = {
    "accepted": said(), "open": said("ggoo.", closed=False), "open audit": said("ggoo.", closed=False, purpose="audit"),
    "lost": said("bgggg"), "critical": said("cgggg"), "minor": said("mmggg"), "unseen": said("gggg-"),
    "few unseen": said("g" * 12 + "-", plans=plans("II", "4")), "small": said("ggxxx", set=20),
    "none": said("xxxxx", set=0),
    "dropped": said("gggxx", set=30), "laxer": said("ggggg", "tightened"), "stopped": said("ggggg", "stopped"),
    "small draw": said("gg", "normal", inspection="reduced"),
    "stricter": said("g" * 8, "normal", inspection="tightened"),
    "between": said("bb" + "g" * 11, **WIDE), "all": said("ggg", size=3), "zero": said("g" * 22, size=50, plans=ZERO),
    "no plan": said(plans={"major": {"level": "S-4", "aql": "7"}}), "nothing asked": said(asks={}),
    "changed": said(changed_answers=2), "long": said(series=5), "longer": said(series=10), "alone": said(series=None),
    "not asked": said(asks={"critical": ["a/b"], "major": ["a/c"]}),
    "audit": said("g" * 20, purpose="audit"),
    "date": [{"severity": None, **to_date_says(one)} for one in (
        *to_date({}).values(), *to_date({"a": {**lot(), "decision": decide(lot(), OURS, None)}}).values())],
    "rates": [{"severity": None, **one} for work, audit in RATES
              for one in audit_says(audits({"w": lot(work), "a": lot(audit, purpose="audit")})["a"])],
}  # fmt: skip


@pytest.mark.parametrize("case", SAID)
def test_every_sentence_has_its_words_and_the_words_all_their_facts(case: str) -> None:
    for sentence in SAID[case]:
        for text in WORDS[sentence["code"]].values():
            assert set(PLACE.findall(text)) <= set(sentence["facts"]), sentence
        assert set(sentence["facts"]) == set(PLACE.findall(WORDS[sentence["code"]]["en"])), sentence


def test_nothing_is_said_in_the_words_that_the_record_never_says() -> None:
    spoken = {sentence["code"] for sentences in SAID.values() for sentence in sentences}
    known = {key for key in WORDS if key.startswith("lot.says.")}
    assert known - spoken == set()


def test_both_languages_say_the_same_facts() -> None:
    assert len(WORDS) > 80
    for key, texts in WORDS.items():
        assert set(texts) == {"en", "es"} and all(texts.values()), key
        assert sorted(PLACE.findall(texts["en"])) == sorted(PLACE.findall(texts["es"])), key


def spoken(sentences: list[dict[str, Any]], severity: str | None) -> str:
    """In English, a share as the report says it."""
    told = []
    for sentence in sentences:
        facts = {name: number(fact * 100, "%", 0) if isinstance(fact, float) else fact
                 for name, fact in sentence["facts"].items()}  # fmt: skip
        if sentence["severity"] == severity:
            told.append(PLACE.sub(lambda found, facts=facts: str(facts[found[1]]), WORDS[sentence["code"]]["en"]))
    return " ".join(told).replace("\u00a0", " ")


def test_a_clean_day_says_what_it_does_not_show() -> None:
    """12.9 % and 26 of 60 by hand; 7 and 21 of 60: the last with C(60 − D, 5)/C(60, 5) of at least 0.5 and 0.1."""
    major = spoken(SAID["accepted"], "major")
    assert "0 bad of 5 looked at; 0 allowed." in major
    assert "level S-4, AQL 2.5, normal inspection. A lot of 60 leads to letter C: look at 5" in major
    assert "a day with 13 % bad panels would still pass every second time" in major
    assert "at least every second time with up to 7 bad, at least one time in ten with up to 21 bad." in major
    assert "At 95 %, at most 26 of 60 could be bad." in major
    assert "One roof is an isolated lot unless a crew's series is long enough" in spoken(SAID["accepted"], None)


def test_a_lost_lot_says_what_was_found_and_what_comes_next() -> None:
    whole = spoken(SAID["lost"], None)
    assert whole.startswith("Not accepted, major: 1 bad of 5 looked at; 0 allowed. Stop the cover-up. Look both ways")
    assert spoken(SAID["lost"], "major").startswith("1 bad of 5 looked at; 0 allowed. Plan:")
    assert "All 3 were looked at: 0 bad." in spoken(SAID["all"], "major")


def test_a_lot_that_somebody_chose_about_calls_for_no_choice_again() -> None:
    codes = [one["code"] for one in said("bgggg", disposition={"choice": "open"})]
    assert "lot.says.not_accepted.now" not in codes and "lot.says.not_accepted.major" in codes


def test_a_lot_not_fully_seen_says_how_much_is_missing() -> None:
    whole = spoken(SAID["unseen"], None)
    assert "not fully looked at, 1 of 5 drawn panels, that is 20 %; the job allows 10 %." in whole


