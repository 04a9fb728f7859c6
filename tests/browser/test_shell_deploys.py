"""A new build comes in the middle of a draft with three photos, at every point of it: all waits until it is quiet."""

import os
import random
import threading
from collections.abc import Callable, Iterator
from typing import Any

import pytest

from tests.browser.hand import Hand, slot_picture
from tests.browser.office import Office
from tests.browser.test_phone_update import CONTROLLED, PHONE, until

DRAFTS = """async () => { const { withDb } = await import('/static/storage/database.js')
  const rows = await withDb(['drafts'], 'readonly', (tx) => tx.store.getAll())
  return rows.map(({ key, value }) => [key, value]) }"""
COME = """async () => { const found = await navigator.serviceWorker.getRegistration(), before = found.waiting
  for (let tries = 0; tries < 300 && (!found.waiting || found.waiting === before); tries += 1) {
    if (tries % 20 === 0) await found.update() // one under way already may have asked before the build came
    await new Promise((done) => setTimeout(done, 50)) }
  return Boolean(found.waiting) && found.waiting !== before }"""
SEEN_AGAIN = """() => { dispatchEvent(new Event('pageshow')); document.dispatchEvent(new Event('visibilitychange'));
  return new Promise((done) => setTimeout(done, 250)) }"""
PHASE = "async () => (await import('/static/sync/status.js')).status().phase"
WORDS = {
    "found": ("Two ", "seams ", "open ", "at ", "the ", "eave"),
    "required": ("Closed ", "to the ", "hem, ", "all along"),
}
OFFICE_HAS_IT = "[data-name='standing']:has-text('The office has everything')"


class Deploys:
    """New builds of the app, each looked for by the page, which is then seen again as after a pocket."""

    def __init__(self, page: Any, own: Office) -> None:
        self.page, self.own, self.file = page, own, own.static / "words" / "shell.json"
        self.faults: list[str] = []
        page.on("pageerror", lambda fault: self.faults.append(str(fault)))
        page.on("response", self._answered)
        page.evaluate("window.same = true")

    def _answered(self, answer: Any) -> None:
        if answer.status == 404:
            self.faults.append(answer.url)

    def deploy(self, point: str) -> None:
        before = self.page.evaluate(DRAFTS)
        self.file.write_text(self.file.read_text() + "\n")
        assert self.page.evaluate(COME), "whole, and waiting"
        self.page.evaluate(SEEN_AGAIN)
        assert self.page.evaluate("window.same"), f"the page was loaded anew at {point}"
        if "being kept" not in point:  # there the photo joins the draft meanwhile
            assert self.page.evaluate(DRAFTS) == before, point
        assert self.faults == [], point


def take(hand: Hand, number: int, shots: int) -> Iterator[str]:
    """A photo by the camera: the page may be killed behind it, so what is waited for is kept first."""
    with hand.page.expect_file_chooser() as chosen:
        hand.page.locator("[data-name='camera-what'] button").tap()
    yield f"photo {number}: the camera is open"
    picture = slot_picture(0.3 + number / 10)
    chosen.value.set_files({"name": "camera.jpg", "mimeType": "image/jpeg", "buffer": picture})
    yield f"photo {number}: being kept"
    hand.sees(f"[data-name='shot'] >> nth={shots - 1}")
    yield f"photo {number}: kept"


def write(hand: Hand, own: Office, release: threading.Event) -> Iterator[str]:
    """A finding with three photos, written down and sent: a name for each point where a new build may come."""
    page, here = hand.page, f"#/job/{own.job}/new-finding"
    page.evaluate("(hash) => { location.hash = hash }", here)
    hand.sees("#in-found")
    for field, words in WORDS.items():
        for number, word in enumerate(words):
            page.locator(f"#in-{field}").press_sequentially(word)
            yield f"{field} {number}"
    for value in ("minor", "major"):
        hand.tap("severity", value)
        yield value
    for number in range(3):
        yield from take(hand, number, number + 1)
    hand.tap("leave-out", nth=2)
    yield "one left out"
    yield from list(take(hand, 3, 3))[2:]
    page.evaluate("location.hash = '#/phone'")
    hand.tap("lock")
    hand.sees("[data-name='unlock']")
    yield "the phone is locked"
    hand.tap("unlock")
    hand.sees("[data-name='job']")
    yield "on another screen"
    page.evaluate("(hash) => { location.hash = hash }", here)
    hand.sees("[data-name='shot'] >> nth=2")
    yield "back again"
    page.locator("#in-found").press_sequentially(", both")
    yield "one word more"
    hand.tap("keep-finding")
    until(page, f"({PHASE})().then((phase) => phase === 'sending')")
    yield "on its way"
    release.set()


def walk(chromium: Any, own: Office, chosen: Callable[[int], bool]) -> list[str]:
    page = chromium.new_context(**PHONE).new_page()
    hand = Hand(page, own.url)
    hand.sign_in("ann")
    until(page, CONTROLLED)
    release = threading.Event()

    app = own.gate.app

    def held(environ: dict, start_response: Callable) -> Any:
        if environ["REQUEST_METHOD"] == "PATCH":
            release.wait(15)
        return app(environ, start_response)

    own.gate.app = held
    deploys = Deploys(page, own)
    met = []
    for number, point in enumerate(write(hand, own, release)):
        if chosen(number):
            deploys.deploy(point)
            met.append(point)
    hand.sees(OFFICE_HAS_IT)
    until(page, f"({PHASE})().then((phase) => phase === 'idle')")
    with page.expect_navigation():
        page.evaluate(SEEN_AGAIN)  # nothing is open, nothing on its way
    found = next(one.payload for one in own.entries() if one.payload["kind"] == "finding")
    assert found["body"]["found"] == "".join(WORDS["found"]) + ", both"
    assert len(found["body"]["photos"]) == 3 and all(own.photo(one) for one in found["body"]["photos"])
    return met


def test_builds_that_come_while_a_finding_with_three_photos_is_open_wait_for_it(chromium: Any, own: Office) -> None:
    dice = random.Random(int(os.environ.get("SEED") or 20261125))
    some = {dice.randrange(12), dice.randrange(12, 21), 26}
    assert walk(chromium, own, some.__contains__)[2:] == ["one word more"]


@pytest.mark.soak
def test_a_build_that_comes_at_every_point_of_a_finding_with_three_photos_waits_for_it(
    chromium: Any, own: Office
) -> None:
    met = walk(chromium, own, lambda number: True)
    print(f"{len(met)} builds while a draft with 3 photos was open or on its way: none took over, nothing was lost")
