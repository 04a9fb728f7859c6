"""The released definitions: frozen, whole, safe to stand on a roof with."""

import json
import re
from pathlib import Path

import pytest

from tests.checklist.released import DEFINITIONS, ITEMS, LOADED, NEWEST, named

FROZEN = json.loads((Path(__file__).parent.parent / "vectors" / "definitions.json").read_text("utf-8"))
# The first three named the photo only where one is always taken.
FIRST = ("nail-flange-fastening-1", "clip-fastening-1", "end-of-day-walk-1")
SHOWN = [pair for pair in ITEMS if pair[0] not in FIRST]


def test_no_released_version_ever_changes():
    """A change of these files is a new version; only then is a line added to the vectors."""
    assert LOADED.problems == {}
    frozen = {(one["id"], one["version"]): one["digest"] for one in FROZEN}
    assert LOADED.by_version == frozen
    for one in FROZEN:
        assert LOADED.by_digest[one["digest"]].data.decode() == one["compiled"]


def test_every_moment_of_a_roof_has_a_checklist():
    assert set(NEWEST) == {
        "before-work-fit", "deck-and-underlayment", "day-watch", "nail-flange-fastening", "clip-fastening",
        "seams-and-panel-ends", "edges-and-penetrations", "end-of-day-walk", "audit-walk", "warranty-claim-survey",
    }  # fmt: skip
    assert "reviewer" in NEWEST["warranty-claim-survey"]["performed_by"]
    assert {name for name, one in NEWEST.items() if one["per"] == "area"} == {
        "before-work-fit", "deck-and-underlayment", "edges-and-penetrations", "warranty-claim-survey",
    }  # fmt: skip


@pytest.mark.parametrize(("name", "item"), ITEMS, ids=map(named, ITEMS))
def test_a_question_fits_a_phone_in_the_sun_and_texts_stay_short(name, item):
    for language in ("en", "es"):
        assert len(item["question"][language]) <= 70
        assert len(item["why"][language]) <= 220
        assert len(item["how"][language]) <= 320
        assert not re.search(r"step back to|dé un paso atrás para", item["how"][language])


@pytest.mark.parametrize(("name", "item"), ITEMS, ids=map(named, ITEMS))
def test_what_voids_rests_on_the_approval_or_a_published_source_and_common_practice_says_so(name, item):
    if item["severity"] == "critical":
        assert item["basis_kind"] in ("assembly", "published")
        assert item["photo"] in ("required", "on_fail")
    if item["basis_kind"] == "common_practice":
        assert item["basis"]["en"].startswith("Common practice, no published source")
        assert item["basis"]["es"].startswith("Práctica común, sin fuente publicada")


@pytest.mark.parametrize(("name", "item"), SHOWN, ids=map(named, SHOWN))
def test_what_can_fail_says_what_to_photograph_and_every_number_of_the_rule_stands_in_its_words(name, item):
    en, es = (item["question"][one] + item["how"][one] for one in ("en", "es"))
    if item["severity"] != "record" or item["photo"] == "required":
        assert re.search("[Pp]hoto", en) and re.search("[Ff]oto", es)
    if item["rule"] and item["rule"]["name"].startswith("limit"):
        fixed = [one for one in item["rule"]["inputs"].values() if isinstance(one, dict)]
        whole = en + item["basis"]["en"] + item["why"]["en"]
        assert all(_said(one["value"], whole) for one in fixed)


def _said(value: str, text: str) -> bool:
    """0.0625 is said as 1/16, 0.25 as 1/4, 3 as it is."""
    top, down = float(value).as_integer_ratio()
    return value in text or (down > 1 and f"{top}/{down}" in text)


@pytest.mark.parametrize("name", sorted(DEFINITIONS), ids=lambda one: f"{one[0]}-{one[1]}")
def test_the_cautions_name_every_danger_in_both_languages(name):
    english = " ".join(one["en"] for one in DEFINITIONS[name]["cautions"])
    spanish = " ".join(one["es"] for one in DEFINITIONS[name]["cautions"])
    for word in ("Falls", "step back", "120 °F", "140 °F", "wet", "Wind", "10 ft", "Cut edges", "unsafe"):
        assert word in english
    for word in ("Caídas", "paso atrás", "49 °C", "60 °C", "mojado", "Viento", "3 m", "Bordes", "inseguro"):
        assert word in spanish


@pytest.mark.parametrize("attachment", ["nail_flange", "fixed_clip", "expansion_clip"])
def test_a_clean_station_takes_eight_answers_at_most(attachment):
    """One for each item that is looked at by itself, and one press for all quick ones."""
    (name,) = [
        name for name, one in NEWEST.items()
        if one["per"] == "station" and attachment in one["applies"]["attachment"]
    ]  # fmt: skip
    items = NEWEST[name]["items"]
    asked = [one for one in items if attachment in one["applies"].get("attachment", [attachment])]
    alone = [item for item in asked if not item["quick"]]
    assert len(alone) + 1 <= 8
    assert len(asked) - len(alone) >= 4


def test_the_end_of_the_day_asks_no_more_by_itself_than_it_did_but_what_may_fly_tonight():
    before, now = (
        [one["id"] for one in DEFINITIONS["end-of-day-walk", n]["items"] if not one["quick"]] for n in (1, 2)
    )  # fmt: skip
    assert len(set(now) - {"nothing_loose"}) <= len(before) and "nothing_loose" in now
