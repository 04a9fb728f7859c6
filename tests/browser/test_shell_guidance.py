"""Installed first, enrolled second, recorded third: said in words where the browser needs it, and held to."""

from typing import Any

from tests.browser.eye import readable
from tests.browser.hand import Hand
from tests.browser.office import Office

VIEW = {"viewport": {"width": 390, "height": 844}, "locale": "en-US", "has_touch": True}
APPLE = "Mozilla/5.0 (iPhone; CPU iPhone OS 99_0 like Mac OS X) AppleWebKit/1 Version/99.0 Mobile/1 Safari/1"
ANDROID = "Mozilla/5.0 (Linux; Android 99; K) AppleWebKit/1 Chrome/99.0 Mobile Safari/1"
FROM_HOME = "Object.defineProperty(navigator, 'standalone', { value: true })"
AT_SECOND = "let asked = 0; StorageManager.prototype.persist = async () => (asked += 1) > 1"  # the first is the start's
KEPT = "async () => (await (await import('/static/shell/install.js')).installState()).kept"
BEGIN = """async ([person, key]) => { const { saveDraft } = await import('/static/storage/drafts.js')
  await saveDraft(person, key, { name: 'half' }) }"""


def opened(chromium: Any, office: Office, agent: str, script: str = "") -> Hand:
    page = chromium.new_context(**VIEW, user_agent=agent).new_page()
    if script:
        page.add_init_script(script)
    page.goto(office.url)
    return Hand(page, office.url)


def sign_in(hand: Hand) -> None:
    hand.sees("#in-login")
    hand.type("login", "ann")
    hand.type("password", "an invented password")
    hand.tap("sign-in")
    hand.sees("[data-name='job']")


def to_record(hand: Hand, office: Office) -> None:
    hand.page.evaluate("(hash) => { location.hash = hash }", f"#/job/{office.job}/new-finding")


def test_a_plain_window_of_such_a_phone_looks_and_sends_and_its_home_screen_records(
    chromium: Any, office: Office
) -> None:
    hand = opened(chromium, office, APPLE)
    hand.sees("[data-name='home-screen-first']")
    assert hand.page.locator("#in-login").count() == 0
    readable(hand.page)
    hand.tap("look-only")
    sign_in(hand)
    to_record(hand, office)
    hand.sees("[data-name='home-screen-first']")
    assert hand.page.locator("#in-found").count() == 0
    hand.page.evaluate(BEGIN, [office.people["ann"], "area/begun"])
    hand.page.reload()
    hand.sees("[data-name='finish-here']:has-text('Finish what you began')")
    hand.sees("#in-found")
    readable(hand.page)
    home = opened(chromium, office, APPLE, FROM_HOME)
    sign_in(home)
    to_record(home, office)
    home.sees("#in-found")


def test_where_the_browser_promises_nothing_that_is_read_before_anything_is_recorded(
    chromium: Any, office: Office
) -> None:
    hand = opened(chromium, office, ANDROID)
    sign_in(hand)
    assert hand.page.evaluate(KEPT) is False, "asked at the start, and its answer kept"
    to_record(hand, office)
    hand.sees("[data-name='not-kept']:has-text('may clear')")
    assert hand.page.inner_text("main").count("may clear") == 1, "said once"
    hand.tap("ask-to-keep")
    hand.sees("[data-name='refused']:has-text('promises nothing')")
    readable(hand.page)
    hand.tap("understood")
    hand.sees("#in-found")
    hand.page.reload()
    hand.sees("#in-found")


def test_a_browser_that_promises_when_asked_lets_the_work_begin_at_once(chromium: Any, office: Office) -> None:
    hand = opened(chromium, office, ANDROID, AT_SECOND)
    sign_in(hand)
    to_record(hand, office)
    hand.sees("[data-name='not-kept']")
    hand.tap("ask-to-keep")
    hand.sees("#in-found")
    assert hand.page.evaluate(KEPT) is True
