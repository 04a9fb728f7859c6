"""Asked for again, a report of an unchanged record is the one that is there, whichever form was asked for between."""

import pytest

from inspect_app.report.shelf_list import listed
from inspect_app.web.reports_desk import maker
from tests.report.test_make import make
from tests.report.test_scopes import Walked


@pytest.fixture
def walked(tmp_path):
    return Walked(tmp_path / "data")


def place(walked, start=("7.5", "ft"), radius=("4", "ft")):
    value = ("value", "unit")
    return {"kind": "survey", "area": walked.areas[0], "panel": 1, "from_low_end": dict(zip(value, start, strict=True)),
            "radius": dict(zip(value, radius, strict=True))}  # fmt: skip


def standing(walked):
    with walked.office.app.app_context():
        return {one["number"]: one["superseded_by"] for one in listed(maker().shelf.ready(walked.job))}


def test_a_survey_asked_for_again_is_the_report_that_is_there_and_no_form_of_it_takes_another_s_place(walked):
    def survey(language, **written):
        made = make(walked.office, walked.job, language=language, scope=place(walked, **written))
        return made.shelved.number, made.new, made.contents["supersedes"]

    assert survey("en") == (1, True, None)
    assert survey("es") == (2, True, None), "the same in another language says nothing else"
    assert survey("en") == (1, False, None) and survey("es") == (2, False, None)
    assert survey("en", start=("90", "in"), radius=("4.00", "ft")) == (1, False, None), "the same place"
    assert survey("en", radius=("4.01", "ft")) == (3, True, None), "another one"
    assert standing(walked) == {1: None, 2: None, 3: None}
    walked.walk(walked.areas[0], None)
    assert survey("es", start=("90", "in")) == (4, True, 2)
    assert survey("en") == (5, True, 2), "what it supersedes says otherwise"
    assert standing(walked) == {1: 4, 2: 4, 3: None, 4: None, 5: None}
    assert survey("es") == (4, False, 2)


def test_the_whole_job_in_two_languages_is_two_reports_that_both_hold(walked):
    for language, number in (("en", 1), ("es", 2), ("en", 1), ("es", 2)):
        assert make(walked.office, walked.job, language=language).shelved.number == number
    assert standing(walked) == {1: None, 2: None}
