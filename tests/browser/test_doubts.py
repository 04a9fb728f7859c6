"""Two phones, one job: nothing disappears, and whatever is doubtful is told in plain words with what to do about it."""

from pathlib import Path
from typing import Any

from tests.browser.eye import SPEAK, readable
from tests.browser.roof import Roof
from tests.browser.two_phones import TwoPhones
from tests.browser.walker import Walker

PHONE = {"viewport": {"width": 390, "height": 844}, "locale": "en-US", "has_touch": True}
TOLD = {"fork", "versions", "seen_differently", "clock_fast", "may_not_replace"}
CODES = "[...document.querySelectorAll('[data-name=\"doubt\"]')].map((one) => one.dataset.code)"


def test_what_two_phones_left_in_doubt_is_explained_and_goes_when_it_is_settled(
    chromium: Any, roof: Roof, tmp_path: Path
) -> None:
    two = TwoPhones(roof)
    two.all_of_it()
    context = chromium.new_context(**PHONE)
    page = context.new_page()
    walker = Walker(page, roof.url, tmp_path)
    walker.sign_in("office")
    walker.open_job()
    walker.named("doubts")
    walker.sees('[data-name="doubt"]')
    readable(page)
    told = page.evaluate(CODES)
    assert set(told) >= TOLD and len(told) == len(set(told))

    walker.tap('[data-code="fork"]')
    walker.sees('[data-name="means"]')
    readable(page)
    assert page.locator('[data-name="entry"]').count() == 2, "both signed entries are the proof"
    assert "Tomas Ridgeway (invented)" in page.inner_text('[data-name="what"]')
    page.evaluate(SPEAK, "es")
    walker.sees('h1:has-text("Qué pasó")')
    assert "una misma clave" in page.inner_text('[data-name="what"]')
    page.evaluate(SPEAK, "en")
    page.go_back()
    walker.tap('[data-code="clock_fast"]')
    walker.sees('[data-name="what"]:has-text("about 20 years fast")')
    page.go_back()

    walker.tap('[data-code="versions"]')
    walker.named("open")
    walker.sees('[data-name="doubts-here"] [data-code="versions"]')
    readable(page)
    walker.tap('[data-code="versions"]')
    walker.sees('[data-name="keep-one"]')
    readable(page)
    versions = roof.record()["areas"][two.area]["heads"]
    walker.tap('[data-name="entry"]:has-text("as the foreman drew it") [data-name="keep-one"]')
    walker.sees('[data-name="settled"]')
    page.evaluate("async () => (await import('/static/sync/engine.js')).sendNow()")
    page.locator(".strip").filter(has_text="✓ The office has everything").wait_for(timeout=30000)
    area = roof.record()["areas"][two.area]
    assert (area["name"], len(area["heads"]), len(versions)) == ("Quay, as the foreman drew it", 1, 2)

    page.evaluate(f"location.hash = '#/job/{roof.job}/doubts'")
    walker.named("doubts-apart")
    walker.sees('[data-name="kept-apart"]')
    assert len(roof.record()["walks"]) == 6, "the ended phone's walk waits outside the record"
    assert walker.faults == []
