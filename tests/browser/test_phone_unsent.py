"""What the office did not take: said in the language of now, each with a press of its own that sends it again."""

from typing import Any

from tests.browser.hand import Hand
from tests.browser.office import Office
from tests.browser.phone import entry

KEEP = """async (what) => (await import('/static/outbox/keep.js')).keepEntry(what)"""
HAS_KEY = """async () => Boolean((await (await import('/static/people/session.js')).current())?.kid)"""
SPEAK = """async (code) => (await import('/static/words/say.js')).setLanguage(code)"""
PHONE = {"viewport": {"width": 390, "height": 844}, "locale": "en-US", "has_touch": True}


def test_a_refused_entry_is_explained_in_the_language_of_now_and_taken_at_a_second_press(
    chromium: Any, office: Office
) -> None:
    with office.app.app_context():
        dora = office.parts.accounts.add("dora", "Dora (invented)", "foreman", "an invented password")
    context = chromium.new_context(**PHONE)
    page = context.new_page()
    hand = Hand(page, office.url)
    page.goto(office.url)
    hand.sees("#in-login")
    hand.type("login", "dora")
    hand.type("password", "an invented password")
    hand.tap("sign-in")
    for _ in range(400):  # the jobs are shown before her key is enrolled
        if page.evaluate(HAS_KEY):
            break
        page.wait_for_timeout(100)
    for name in ("Lean-to", "Porch"):
        page.evaluate(KEEP, entry(office.job, name))
    page.goto(office.url + "/#/unsent")
    hand.sees("li[data-state='refused'] >> nth=1")  # she is on no job of this name yet

    refused = page.locator("li[data-state='refused']").first
    english = refused.inner_text()
    page.evaluate(SPEAK, "es")
    hand.sees("h1:has-text('Solo en este')")
    spanish = refused.inner_text()
    assert "the job" in english and "la obra" in spanish
    sentences = office.app.extensions["seamwalk"].words
    for language, shown in (("en", english), ("es", spanish)):
        assert sentences.say("refusal.not_a_member.message", language, {}) in shown
        assert sentences.say("refusal.not_a_member.way_out", language, {}) in shown
    page.evaluate(SPEAK, "en")
    for number in (1, 2):
        page.get_by_role("button", name=f"Try this one again {number} · Roof area").wait_for()

    with office.app.app_context():
        office.parts.membership.join(dora.id, office.job)
    page.get_by_role("button", name="Try this one again 2 · Roof area").tap()
    page.get_by_text("Nothing is waiting").wait_for(timeout=60000)
    names = [one.payload["body"]["name"] for one in office.entries() if one.payload["kind"] == "area"]
    assert sorted(names) == ["Lean-to", "Porch"]
    context.close()
