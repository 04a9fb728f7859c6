"""``seamwalk report`` for a part of a job, and the list of what was made."""

import json

import pytest

from inspect_app.command_line import main
from tests.report.test_scopes import Walked


@pytest.fixture(scope="module")
def walked(tmp_path_factory):
    return Walked(tmp_path_factory.mktemp("kinds") / "data")


@pytest.fixture(autouse=True)
def machine(walked, monkeypatch):
    monkeypatch.setenv("SEAMWALK_DATA", str(walked.office.settings.data))
    monkeypatch.delenv("LC_ALL", raising=False)
    monkeypatch.setenv("LANG", "C")


def test_a_walk_is_named_or_those_there_are_are_told(walked, tmp_path, capsys):
    assert main(["report", walked.job, "--kind", "walk"]) == 2
    said = capsys.readouterr().err
    assert walked.first["walk"] in said and walked.second["walk"] in said and "--walk" in said
    out = tmp_path / "walk.pdf"
    form = ["--paper", "a4", "--language", "es", "--units", "SI", "--out", str(out)]
    assert main(["report", walked.job, "--kind", "walk", "--walk", walked.first["walk"], *form]) == 0
    assert "El informe 1 está hecho" in capsys.readouterr().out and out.read_bytes().startswith(b"%PDF-")
    told = json.loads(next(walked.office.settings.data.glob("reports/*/contents-0001.json")).read_bytes())
    assert (told["kind"], told["paper"], told["language"], told["units"]) == ("walk", "a4", "es", "SI")
    assert main(["report", walked.job, "--kind", "walk", "--walk", walked.second["walk"]]) == 0
    assert "It is a draft" in capsys.readouterr().err
    assert main(["report", walked.job, "--list"]) == 0
    first, second = capsys.readouterr().out.splitlines()
    assert first.startswith("2 ") and "draft" in first and second.startswith("1 ") and "one walk" in second


NOWHERE = ["--area", "Nowhere", "--panel", "2", "--from-low-end", "1 ft", "--radius", "2 ft"]


@pytest.mark.parametrize("asked", [[], NOWHERE])
def test_a_survey_of_no_known_area_is_told_those_there_are(walked, capsys, asked):
    assert main(["report", walked.job, "--kind", "survey", *asked]) == 2
    said = capsys.readouterr().err
    assert "Low roof" in said and "--area" in said
    assert main(["report", walked.job, "--kind", "survey", "--area", "Low roof"]) == 2
    assert "panel" in (said := capsys.readouterr().err) and "Low roof" not in said


@pytest.mark.parametrize(
    ("asked", "said"),
    [(["--kind", "walk", "--walk", "nope"], "walk nope"), (["--kind", "audit"], "no audit"),
     (["--kind", "survey", "--area", "Low roof", "--panel", "2", "--from-low-end", "x", "--radius", "2 ft"], "x")],
)  # fmt: skip
def test_what_is_not_there_or_cannot_be_read_is_refused_and_makes_nothing(walked, capsys, asked, said):
    assert main(["report", walked.job, *asked]) == 2
    assert said in capsys.readouterr().err
