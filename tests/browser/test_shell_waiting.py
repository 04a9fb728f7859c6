"""The age of the oldest unsent thing stands on every screen, and says by itself when it has waited too long."""

from datetime import datetime, timedelta
from typing import Any

from tests.browser.eye import readable
from tests.browser.hand import Hand
from tests.browser.office import Office
from tests.browser.phone import entry

KEEP = "async (what) => (await import('/static/outbox/keep.js')).keepEntry(what)"
AGAIN = "() => dispatchEvent(new Event('seamwalk:kept'))"
STAGE = "document.querySelector('[data-name=\"strip-overdue\"]')?.dataset.stage ?? ''"


def test_unsent_work_turns_amber_after_twelve_hours_and_red_after_a_day_in_words_too(
    chromium: Any, office: Office
) -> None:
    context = chromium.new_context(viewport={"width": 390, "height": 844}, locale="en-US", has_touch=True)
    page = context.new_page()
    hand = Hand(page, office.url)
    hand.sign_in("ann")
    start = datetime.now()
    page.clock.set_system_time(start)
    office.stop()
    page.evaluate(KEEP, entry(office.job, "Lean-to"))
    hand.sees("[data-name='standing']:has-text('1 only on this phone, oldest')")
    seen = []
    for hours, words in ((11.99, ""), (12.01, "The oldest waits 12 h: send it today."), (23.99, "waits 23 h"),
                         (24.01, "The oldest waits 24 h: take the phone to signal now.")):  # fmt: skip
        page.clock.set_system_time(start + timedelta(hours=hours))
        page.evaluate(AGAIN)
        hand.sees(f"[data-name='standing']:has-text('oldest {int(hours)} h'){words and f':has-text({words!r})'}")
        seen.append(page.evaluate(STAGE))
    assert seen == ["", "amber", "amber", "red"]
    readable(page)  # doubled text on the smallest phone too
    assert page.evaluate(STAGE) == "red"
    office.start()
    page.evaluate("async () => (await import('/static/sync/engine.js')).sendNow()")
    hand.sees("[data-name='standing']:has-text('The office has everything')")
    assert page.evaluate(STAGE) == ""
