"""The phone's own screen: the running build, the next one that waits for open work, installing, keeping."""

import contextlib
from typing import Any

from playwright.sync_api import Error

from tests.browser.hand import Hand
from tests.browser.office import Office

PHONE = {"viewport": {"width": 390, "height": 844}, "locale": "en-US", "has_touch": True}
CONTROLLED = "Boolean(navigator.serviceWorker.controller)"
LOOK = "async () => { await (await navigator.serviceWorker.getRegistration()).update() }"
DRAFT = """async ([call, ...given]) => { const { current } = await import('/static/people/session.js')
  const drafts = await import('/static/storage/drafts.js'); return drafts[call]((await current()).id, ...given) }"""
OFFER = """() => { const offer = new Event('beforeinstallprompt', { cancelable: true })
  offer.prompt = () => { window.prompted = true }
  offer.userChoice = Promise.resolve({ outcome: 'accepted' }); return dispatchEvent(offer) }"""


def until(page: Any, expression: str) -> None:
    for _ in range(200):
        with contextlib.suppress(Error):  # the page is on its way to another
            if page.evaluate(expression):
                return
        page.wait_for_timeout(300)
    raise AssertionError(f"never true: {expression}")


def test_a_new_build_is_offered_waits_for_open_work_and_changes_at_a_press(chromium: Any, own: Office) -> None:
    context = chromium.new_context(**PHONE)
    page = context.new_page()
    hand = Hand(page, own.url)
    hand.sign_in("ann")
    hand.open_job()  # where a person is counts as no open work
    until(page, CONTROLLED)
    client = own.app.test_client()
    first = client.get("/shell.json").json["build"]
    page.evaluate("location.hash = '#/phone'")
    hand.sees(f"[data-name='build']:has-text('{first[:8]}')")
    assert page.locator("[data-name='update-now']").count() == 0

    page.evaluate(DRAFT, ["saveDraft", "an item begun", {"note": "half a"}])
    words = own.static / "words" / "shell.json"
    words.write_text(words.read_text() + "\n")
    second = client.get("/shell.json").json["build"]
    page.evaluate(LOOK)
    hand.sees("[data-name='update-now']", limit=20000)
    assert "1 begun" in hand.sees("[data-name='update-waits']").inner_text()
    page.evaluate("window.same = true; dispatchEvent(new Event('pageshow'))")
    page.wait_for_timeout(500)
    assert page.evaluate("window.same"), "it would have taken over, were nothing open"
    assert hand.sees("[data-name='build']").inner_text() == first[:8]

    with page.expect_navigation(timeout=60000):
        hand.tap("update-now")
    hand.sees(f"[data-name='build']:has-text('{second[:8]}')")
    assert page.evaluate(DRAFT, ["loadDraft", "an item begun"]) == {"note": "half a"}
    page.evaluate(DRAFT, ["dropDraft", "an item begun"])

    page.evaluate("ServiceWorkerRegistration.prototype.update = async () => {}")  # as some home-screen apps have it
    words.write_text(words.read_text() + "\n")
    page.evaluate("dispatchEvent(new Event('pageshow'))")
    hand.sees("[data-name='update-behind']:has-text('newer version')")

    hand.sees("[data-name='install-by-hand']:has-text('Add to home screen')")
    assert page.evaluate(OFFER) is False, "our own press stands for the browser's bar"
    hand.tap("install")
    until(page, "window.prompted")
    hand.sees("[data-name='kept'][data-kept='false']")  # headless Chromium promises nothing
    context.close()


def beside_a_second_window(chromium: Any, own: Office) -> tuple[Hand, Any]:
    """A next build that waits, and a second window just opened, with something typed."""
    page = chromium.new_context(**PHONE).new_page()
    hand = Hand(page, own.url)
    hand.sign_in("ann")
    until(page, CONTROLLED)
    page.evaluate("location.hash = '#/phone'")
    page.evaluate(DRAFT, ["saveDraft", "an item begun", {"note": "half a"}])
    words = own.static / "words" / "shell.json"
    words.write_text(words.read_text() + "\n")
    page.evaluate(LOOK)
    hand.sees("[data-name='update-now']", limit=20000)
    other = page.context.new_page()  # in the middle of something, and not all of its files have come
    other.goto(own.url + "/#/phone")
    other.locator("#in-new-pin").fill("12")
    for window in (page, other):
        window.evaluate("window.same = true")
    return hand, other


def took_over(page: Any) -> bool:
    until(page, "document.querySelector('h1') && Boolean(!window.same || document.querySelector('.problem'))")
    return not page.evaluate("window.same")


def test_beside_a_second_window_a_press_changes_the_build_and_what_is_typed_there_stays(
    chromium: Any, own: Office
) -> None:
    hand, other = beside_a_second_window(chromium, own)
    hand.tap("update-now")
    assert took_over(hand.page), hand.page.inner_text(".problem")
    assert hand.page.evaluate(DRAFT, ["loadDraft", "an item begun"]) == {"note": "half a"}
    assert other.evaluate("window.same") and other.input_value("#in-new-pin") == "12", "it goes on as the old one"


def test_a_pin_takes_digits_only_and_a_sign_in_replaces_a_forgotten_one(chromium: Any, office: Office) -> None:
    context = chromium.new_context(**PHONE)
    page = context.new_page()
    hand = Hand(page, office.url)
    page.goto(office.url)
    for pin, way_in in (("12ab34", "#/sign-in"), ("99887766554433", "#/sign-in")):
        page.evaluate("(hash) => { location.hash = hash }", way_in)
        hand.sees("#in-login")
        hand.type("login", "ann")
        hand.type("password", "an invented password")
        page.locator("#in-pin").press_sequentially(pin)
        assert page.input_value("#in-pin") == "".join(one for one in pin if one.isdigit())[:12]
        hand.sees("[data-name='pin'] [role='status']:has-text('Digits only')")
        if not pin.isdigit():
            hand.type("pin", "12")
            hand.tap("sign-in")
            hand.sees(".problem:has-text('4 to 12 digits')")  # said before anything is sent
            hand.type("pin", "1234")
        hand.tap("sign-in")
        hand.sees("[data-name='job']")
    page.evaluate("location.hash = '#/phone'")
    hand.tap("lock")
    hand.sees("#in-pin-digits")
    hand.type("pin-digits", "1234")
    hand.tap("unlock")
    hand.sees(".problem:has-text('That is not the PIN')")
    hand.type("pin-digits", "998877665544")
    hand.tap("unlock")
    hand.sees("[data-name='job']")
    context.close()
