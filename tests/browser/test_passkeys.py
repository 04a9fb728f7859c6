"""A passkey made by the browser's own virtual authenticator opens the phone without a password, until it is removed."""

from typing import Any

from tests.browser.eye import readable
from tests.browser.hand import Hand
from tests.browser.office import Office
from tests.browser.test_people import PHONE, enter

AUTHENTICATOR = {
    "protocol": "ctap2", "transport": "internal", "hasResidentKey": True, "hasUserVerification": True,
    "isUserVerified": True, "automaticPresenceSimulation": True,
}  # fmt: skip


def test_a_passkey_opens_the_phone_and_a_removed_one_is_refused_in_words(chromium: Any, office: Office) -> None:
    context = chromium.new_context(**PHONE)
    page = context.new_page()
    tools = context.new_cdp_session(page)
    tools.send("WebAuthn.enable")
    made = tools.send("WebAuthn.addVirtualAuthenticator", {"options": AUTHENTICATOR})["authenticatorId"]
    hand = Hand(page, office.url.replace("127.0.0.1", "localhost"))  # a bare number has no passkeys
    page.goto(hand.url)
    hand.sees("[data-name='passkey']")
    enter(hand, "ann")

    page.evaluate("location.hash = '#/phone'")
    hand.sees("[data-name='passkeys'][data-state='known']")
    assert page.locator("[data-name='passkey']").count() == 0
    hand.tap("add-passkey")
    hand.sees("[data-name='passkey']:has-text('not used yet')")
    (kept,) = tools.send("WebAuthn.getCredentials", {"authenticatorId": made})["credentials"]
    assert (kept["rpId"], kept["isResidentCredential"]) == ("localhost", True)
    readable(page)

    for name in ("sign-out", "sign-out-sure"):
        hand.tap(name)
    page.wait_for_selector("#in-login")
    readable(page)
    hand.tap("passkey")
    hand.sees("[data-name='job']")
    assert "Ann" in page.inner_text(".strip")
    page.evaluate("location.hash = '#/phone'")
    hand.sees("[data-name='passkey']:has-text('last used')")

    enter(hand, "ben")  # who shares the phone
    page.evaluate("location.hash = '#/who'")
    hand.tap("who", office.people["ann"])
    hand.type("pin-digits", "1111")
    hand.tap("unlock")
    hand.sees(".strip:has-text('Ann')")
    page.evaluate("location.hash = '#/phone'")
    hand.sees("[data-name='passkeys'][data-state='sign_in_first']")
    hand.tap("sign-in-again")
    hand.tap("passkey")
    hand.sees("[data-name='job']")

    page.evaluate("location.hash = '#/phone'")
    hand.tap("remove-passkey")
    hand.tap("remove-passkey-sure")
    hand.sees("[data-name='passkeys']:has-text('no passkey yet')")
    page.evaluate("location.hash = '#/sign-in'")
    hand.tap("passkey")
    hand.sees(".problem:has-text('never added, or it was removed')")
    tools.send("WebAuthn.setUserVerified", {"authenticatorId": made, "isUserVerified": False})
    tools.send("WebAuthn.removeCredential", {"authenticatorId": made, "credentialId": kept["credentialId"]})
    hand.tap("passkey")
    hand.sees(".problem:has-text('No passkey was chosen')")
    context.close()
