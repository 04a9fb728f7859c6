"""Two people on one phone: each with a key, a PIN, drafts and an outbox of their own, and both are heard."""

from typing import Any

from tests.browser.hand import Hand
from tests.browser.office import Office
from tests.browser.phone import entry

PHONE = {"viewport": {"width": 390, "height": 844}, "locale": "en-US", "has_touch": True}
PINS = {"ann": "1111", "ben": "2222"}
KEEP = "async (what) => (await import('/static/outbox/keep.js')).keepEntry(what)"
DRAFT = """async ([call, ...given]) => { const { current } = await import('/static/people/session.js')
  const drafts = await import('/static/storage/drafts.js'); return drafts[call]((await current()).id, ...given) }"""
LATER = "(ms) => { const now = Date.now; Date.now = () => now() + ms }"


def enter(hand: Hand, login: str) -> None:
    """Sign in with signal; a person may be signed in already."""
    hand.page.evaluate("location.hash = '#/sign-in'")
    hand.sees("#in-login")
    hand.type("login", login)
    hand.type("password", "an invented password")
    hand.type("pin", PINS[login])
    hand.tap("sign-in")
    hand.sees("[data-name='job']", limit=15000)


def pick(hand: Hand, person: str, pin: str) -> None:
    hand.page.evaluate("location.hash = '#/who'")
    hand.tap("who", person)
    hand.sees("#in-pin-digits")
    hand.type("pin-digits", pin)
    hand.tap("unlock")


def switch(hand: Hand, office: Office, login: str) -> None:
    pick(hand, office.people[login], PINS[login])
    hand.sees(f".strip:has-text('{login.title()}')")


def test_two_people_share_a_phone_without_signal_and_each_is_heard_under_their_own_key(
    chromium: Any, office: Office
) -> None:
    context = chromium.new_context(**PHONE)
    page = context.new_page()
    hand = Hand(page, office.url)
    page.goto(office.url)
    hand.sees("#in-login")
    for login in PINS:
        enter(hand, login)
    page.wait_for_selector(".strip:has-text('✓ ready for no signal')", timeout=60000)
    office.stop()

    switch(hand, office, "ann")
    page.evaluate(KEEP, entry(office.job, "by Ann"))
    page.evaluate(f"location.hash = '#/job/{office.job}/draw'")
    hand.sees("#in-area-name")
    hand.type("area-name", "Ann's half-written area")
    page.wait_for_timeout(300)

    # Tries run out: he waits, also with the right PIN, and she is not locked out with him.
    for _ in range(3):
        pick(hand, office.people["ben"], "9999")
        hand.sees(".problem")
    hand.sees(".problem:has-text('Wait')")
    pick(hand, office.people["ben"], PINS["ben"])
    hand.sees(".problem:has-text('Wait')")
    assert "Ann" in page.inner_text(".strip") and "1 only on this phone" in page.inner_text(".strip")
    page.evaluate(LATER, 5200)
    switch(hand, office, "ben")

    page.evaluate(f"location.hash = '#/job/{office.job}/draw'")
    hand.sees("#in-area-name")
    assert page.input_value("#in-area-name") == "", "her draft is hers"
    page.evaluate(KEEP, entry(office.job, "by Ben"))
    page.evaluate("location.hash = '#/unsent'")
    hand.sees("li[data-state]")
    assert page.locator("li[data-state]").count() == 1, "his own outbox"
    page.evaluate("location.hash = '#/phone'")
    hand.sees("p:has-text('1 items of others')")
    hand.tap("sign-out")
    hand.tap("sign-out-sure")
    hand.sees("[data-name='unlock']")
    hand.sees("[data-name='who'] button")
    assert page.locator("[data-name='who'] button").count() == 1, "he is no longer offered"

    switch(hand, office, "ann")
    page.evaluate(f"location.hash = '#/job/{office.job}/draw'")
    hand.sees("#in-area-name")
    assert page.input_value("#in-area-name") == "Ann's half-written area"

    context.clear_cookies()  # so many days without signal that both sign-ins have run out
    office.start()
    page.wait_for_selector(".strip:has-text('The office has everything')", timeout=60000)
    for _ in range(400):
        areas = [one for one in office.entries() if one.payload["kind"] == "area"]
        if len(areas) == 2:
            break
        page.wait_for_timeout(200)
    with office.app.app_context():
        keys = {login: {one.kid for one in office.parts.devices.of(office.people[login])} for login in PINS}
    heard = {one.payload["body"]["name"]: (one.payload["by"], one.header["kid"]) for one in areas}
    assert len(areas) == 2 and set(heard) == {"by Ann", "by Ben"}
    for login in PINS:
        by, kid = heard[f"by {login.title()}"]
        assert by == office.people[login] and {kid} == keys[login]
    context.close()


def test_a_key_that_could_not_be_enrolled_is_said_at_the_sign_in_and_mended_by_a_second_press(
    chromium: Any, office: Office
) -> None:
    context = chromium.new_context(**PHONE)
    page = context.new_page()
    hand = Hand(page, office.url)
    page.goto(office.url)
    hand.sees("#in-login")
    hand.type("login", "ann")
    hand.type("password", "an invented password")
    page.route("**/api/devices", lambda route: route.abort(), times=1)  # the signal goes just there
    hand.tap("sign-in")
    hand.sees("main .problem")
    assert page.locator("[data-name='job']").count() == 0 and page.input_value("#in-login") == "ann"
    hand.tap("sign-in")
    hand.sees("[data-name='job']", limit=15000)
    context.close()


def test_whoever_signs_in_meanwhile_is_given_no_key_of_another_s_and_a_second_press_mends_it(
    chromium: Any, office: Office
) -> None:
    context = chromium.new_context(**PHONE)
    page = context.new_page()
    hand = Hand(page, office.url)
    held: list[Any] = []
    page.goto(office.url)
    hand.sees("#in-login")
    hand.type("login", "ann")
    hand.type("password", "an invented password")
    page.route("**/api/nonce", lambda route: held.append(route), times=1)  # her enrolment waits there
    hand.tap("sign-in")
    while not held:
        page.wait_for_timeout(50)
    csrf = page.request.get(f"{office.url}/api/session").json()["csrf"]
    ben = {"login": "ben", "password": "an invented password"}
    assert page.request.post(f"{office.url}/api/session", data=ben, headers={"X-Seamwalk-Csrf": csrf}).ok
    held[0].continue_()
    hand.sees("main .problem:has-text('is Ben (invented), not Ann (invented)')")
    hand.tap("sign-in")
    hand.sees("[data-name='job']", limit=15000)
    with office.app.app_context():
        keys = {login: len(office.parts.devices.of(office.people[login])) for login in PINS}
    assert keys == {"ann": 1, "ben": 0}
    context.close()
