"""What people wrote stays in their words, and a report in another language says so."""

import json

import pytest

from tests.report.laid_out import STATIC, lay_out, sample_contents, texts_of
from tests.report.test_contents import whole

WORDS = json.loads((STATIC / "words" / "instruments.json").read_text("utf-8"))
NOTE = "Two gaps opened by a knot in the deck; the crew was told at once."


def read(folder, rec=None, **options):
    pdf = lay_out(sample_contents(rec or whole(), final=True, **options))[0]
    return " ".join("".join(texts_of(pdf, folder)).split())


def test_a_spanish_report_marks_english_notes_and_statements_and_translates_none(tmp_path):
    text = read(tmp_path, language="es")
    mark = "[tal como se anotó, sin traducir; esta obra se lleva en inglés]"
    assert f"“{NOTE}” {mark}" in text
    assert f"What is written here is what I saw on this roof on this day. {mark}" in text
    assert f"ridge zee screwed through the pan {mark}" in text
    assert "Lo que escribieron las personas se imprime tal como lo escribieron, sin traducir." in text


@pytest.mark.parametrize("language", ["en", "es"])
def test_a_report_in_the_job_s_own_language_carries_no_such_mark(tmp_path, language):
    rec = whole()
    rec["job"]["language"] = language
    text = read(tmp_path, rec, language=language)
    assert "[as recorded" not in text and "[tal como" not in text


@pytest.mark.parametrize("statement", ["sign.statement", "sign.statement.area"])
@pytest.mark.parametrize(("report", "signed", "mark"), [
    ("es", "en", "[firmado en inglés, sin traducir]"), ("en", "es", "[signed in Spanish, not translated]"),
    ("es", "es", ""), ("en", "en", ""),
])  # fmt: skip
def test_the_phone_s_own_statement_tells_its_language_whatever_the_job_s_is(tmp_path, report, signed, mark, statement):
    rec = whole()
    rec["walks"]["walk"]["signoff"]["statement"] = WORDS[statement][signed]
    text = read(tmp_path, rec, language=report)
    after = text.split(WORDS[statement][signed], 1)[1].lstrip()[:40]
    assert after.startswith(mark[:40]) if mark else not after.startswith("[")
