"""What is doubtful about a record is told in the report once, with what it means and what to do, in both languages."""

import copy
import json
import re
from pathlib import Path
from typing import Any

import pytest

from inspect_app.record.doubts import ORDER
from inspect_app.record.fold import fold
from inspect_app.report.contents import report_contents
from tests.record.rhythm_sample import AREA, FOREMAN, INSPECTOR, PEOPLE, WALK, Site
from tests.record.test_doubts import answered, branch
from tests.report.laid_out import STATIC, lay_out, texts_of

WORDS = json.loads((STATIC / "words" / "doubts.json").read_text("utf-8"))
LOG = {"head_seq": None, "head_receipt": None, "server_kid": "K", "fingerprint": "", "keys": {}, "apart": 3}
OPTIONS = {"issued": "2026-11-26T09:00:00+00:00", "number": 1, "final": False}
FAST = {"server": "2006-11-25T12:55:00.000+00:00", "age": 0}
NAMED = re.compile(r"\{(\w+)\}")


def doubtful_site() -> Site:
    """A copied phone, two drawings of one area, one place seen twice, a clock that is off, and a role that may not."""
    site = Site()
    branch(site, FOREMAN, 0, 30)
    area = next(one for one in site.entries if one["payload"]["subject"] == AREA)["payload"]["body"]
    for kid in (INSPECTOR, FOREMAN):
        site.say(kid, "area", "drawn", copy.deepcopy(area) | {"name": "North bay <b>"})
    site.walk(INSPECTOR, "another")
    answered(site, FOREMAN, WALK, "pass", "s1")
    answered(site, INSPECTOR, "another", "fail", "s2")
    site.say(FOREMAN, "job", "job", site.entries[0]["payload"]["body"], (site.entries[0]["digest"],))
    site.entries[-1]["payload"]["clock"] = FAST
    return site


def told(language: str, folder: Path) -> str:
    record = fold(doubtful_site().entries, PEOPLE)
    contents = report_contents(record, PEOPLE, {}, LOG, {}, OPTIONS | {"language": language})
    return " ".join(" ".join(texts_of(lay_out(contents)[0], folder)).split())


@pytest.mark.parametrize(("language", "wanted"), [
    ("en", ["Two phones spoke with one key: 10 entries of Fay (invented)", "What it means: A copy of the phone",
            "What to do: Ask Fay (invented) which phones", "Roof area · North bay <b>. By Fay (invented) and Ira",
            "was about 20 years fast", "3 entries from a phone whose key was ended are kept apart", "seen good by"]),
    ("es", ["Dos teléfonos hablaron con una misma clave: 10 registros de Fay (invented)", "Qué significa: Una copia",
            "Qué hacer: Pregunte a Fay (invented)", "unos 20 años adelantado", "3 registros de un teléfono con"]),
])  # fmt: skip
def test_each_doubt_is_told_with_its_meaning_and_what_to_do(language: str, wanted: list[str], tmp_path: Path) -> None:
    text = told(language, tmp_path)
    assert [one for one in wanted if one not in text] == []
    assert not NAMED.search(text), "a name was left open"


def test_every_code_that_the_record_can_tell_has_its_three_texts_and_each_text_only_names_that_are_given() -> None:
    said = {"who", "n", "seq", "thing", "place", "apart", "range"}
    words = {code: json.loads((STATIC / "words" / file).read_text("utf-8")) for code, file in
             (("flag", "report.json"), ("roof", "report_roof.json"), ("find", "report_findings.json"),
              ("days", "report_days.json"))}  # fmt: skip
    flags = {key.rpartition(".")[2] for file in words.values() for key in file if key.startswith("report.flag.")}
    assert len(flags) > 30
    for code in {*ORDER, *flags, "orphan", "reading_not_taken_again", "other"}:
        for part in ("what", "means", "do"):
            for text in WORDS[f"doubt.{code}.{part}"].values():
                assert set(NAMED.findall(text)) <= said | {"code"}, f"{code}.{part}: {text}"


def test_a_fork_of_many_entries_is_one_caution_and_a_sound_record_has_none() -> None:
    cautions = report_contents(fold(doubtful_site().entries, PEOPLE), PEOPLE, {}, LOG, {}, OPTIONS)["cautions"]
    (fork,) = [one["facts"] for one in cautions if one["code"] == "fork"]
    assert (fork["seq"], fork["both"], len(fork["digests"]), fork["who"]) == (0, 10, 2, "Fay (invented)")
    sound: Any = report_contents(fold(Site().entries, PEOPLE), PEOPLE, {}, LOG | {"apart": 0}, {}, OPTIONS)["cautions"]
    assert {one["code"] for one in sound} & {"fork", "doubt", "kept_apart", "chain_broken", "flag"} == set()
