"""The next build takes over beside a second window, in a browser whose workers may rest: no debugger is at any."""

import time
from pathlib import Path
from typing import Any

import pytest

from tests.browser.bare import Bare
from tests.browser.conftest import FLAGS
from tests.browser.office import PASSWORD, Office

BEGIN = f"""const session = await import('/static/people/session.js')
  await session.signIn('ann', {PASSWORD!r}); await (await import('/static/people/device.js')).enrol()
  const drafts = await import('/static/storage/drafts.js')
  await drafts.saveDraft((await session.current()).id, 'an item begun', {{ note: 'half a' }})"""
LOOK = "await (await navigator.serviceWorker.getRegistration()).update()"
WAITS = "return Boolean((await navigator.serviceWorker.getRegistration()).waiting)"
ASKS = """const asks = setInterval(() => fetch('/shell.json'), 5)
  setTimeout(() => clearInterval(asks), SECONDS * 1000)"""
PRESS = """window.same = true; window.said = ''
  const { applyUpdate } = await import('/static/shell/update.js')
  applyUpdate().catch((fault) => { window.said = fault.code })"""


def until(browser: Bare, page: str, body: str, limit: float = 90) -> None:
    over = time.monotonic() + limit
    while time.monotonic() < over:
        try:
            if browser.run(page, body):
                return
        except AssertionError:
            pass  # the page is on its way to another
        time.sleep(0.3)
    raise AssertionError(f"never true: {body}")


@pytest.mark.soak
@pytest.mark.parametrize("seconds", [0, 2, 12])
def test_a_window_that_asks_without_end_holds_the_next_build_up_for_half_a_minute_at_most_after_it_stops(
    chromium_path: str | None, own: Office, tmp_path: Path, seconds: int
) -> None:
    if chromium_path is None:
        pytest.skip("NOT RUN: no browser of its own is here (CHROMIUM)")
    with Bare(chromium_path, FLAGS, tmp_path / "profile") as browser:
        page = browser.page(own.url)
        until(browser, page, "return Boolean(navigator.serviceWorker.controller)")
        browser.run(page, BEGIN)
        words = own.static / "words" / "shell.json"
        words.write_text(words.read_text() + "\n")
        browser.run(page, LOOK)
        until(browser, page, WAITS)
        other = browser.page(own.url + "/#/phone")
        until(browser, other, "window.same = true; return Boolean(navigator.serviceWorker.controller)")
        browser.run(other, ASKS.replace("SECONDS", str(seconds)))
        begun: Any = time.monotonic()
        browser.run(page, PRESS)
        until(browser, page, "return !window.same || window.said")
        took = time.monotonic() - begun
        assert browser.run(page, "return window.said") is None
        assert browser.run(other, "return window.same"), "the other window goes on as the old one"
    print(f"beside a window that asks for {seconds} s on end: taken over {took:.0f} s after the press")
