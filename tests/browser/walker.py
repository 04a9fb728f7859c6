"""A person at the phone: taps what the screens show, by the names that the screens give their controls."""

from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from playwright.sync_api import TimeoutError

from inspect_app.demo import picture
from tests.browser.roof import PASSWORD

UNFOLD = """(one) => { const fold = one.closest('summary') ? null : one.closest('.folded > details:not([open])')
  if (fold) fold.open = true; return fold ? 1 : 0 }"""


class Walker:
    """``page`` of a phone-sized window; ``taps`` counts presses."""

    def __init__(self, page: Any, url: str, folder: Path) -> None:
        self.page, self.url, self.folder, self.taps = page, url, folder, 0
        self.faults: list[str] = []
        page.on("pageerror", lambda fault: self.faults.append(str(fault)))

    def tap(self, selector: str) -> None:
        """Press it; what stands behind a closed heading is opened first, by a press too."""
        one = self.page.locator(selector).first
        one.wait_for(state="attached", timeout=60000)
        self.taps += 1 + int(one.evaluate(UNFOLD, timeout=60000))
        one.click(timeout=60000)

    def named(self, name: str) -> None:
        self.tap(f'[data-name="{name}"]')

    def choose(self, name: str, value: str) -> None:
        self.tap(f'fieldset[data-name="{name}"] [data-value="{value}"]')

    def sees(self, selector: str) -> None:
        """Waits for it; else a failure that says what stood on the screen instead."""
        try:
            self.page.wait_for_selector(selector, timeout=60000)
        except TimeoutError as late:
            shown = f"{self.page.evaluate('location.hash')}:\n{self.page.inner_text('body')}"
            raise AssertionError(f"{selector} is not there, but at {shown}\n{self.faults}") from late

    def sign_in(self, login: str) -> None:
        self.page.goto(self.url)
        self.page.fill("#in-login", login, timeout=60000)
        self.page.fill("#in-password", PASSWORD)
        self.page.fill("#in-pin", "1234")
        self.named("sign-in")
        self.sees('[data-name="job"]')

    def open_job(self) -> None:
        self.named("job")
        self.sees('[data-name="fold-lots"]')

    def begin_walk(self) -> None:
        self.named("start")
        self.named("safe")
        self.page.fill('.stepper[data-name="metal"] input', "74")
        self.choose("by", "contact")
        self.choose("sky", "clear")
        self.choose("wind", "calm")
        self.page.fill("#in-crew", "Crew 2 (invented)")
        self.named("begin")
        self.sees('[data-name="new-place"]')

    def place(self, area: str, panel: str, distance: str, zone: str) -> None:
        """Choose a place by hand and open its sheet. ``area``: the name as it is shown."""
        self.named("new-place")
        self.tap(f'fieldset[data-name="area"] button:has-text("{area}")')
        self.page.fill('.stepper[data-name="panel"] input', panel)
        self.page.fill('.stepper[data-name="at"] input', distance)
        self.choose("zone", zone)

    def take(self, role: str, offset: float = 0.0) -> None:
        """Hand over a picture of the slot (``what``) or the panel (``where``)."""
        now = datetime(2026, 9, 14, 17, 40, tzinfo=UTC)
        tag = f"{role} {self.taps}"
        data = picture.flange(offset, 0.34, tag, now) if role == "what" else picture.panel(tag, now)
        file = self.folder / f"{tag}.jpg"
        file.write_bytes(data)
        self.page.locator(f'[data-name="picked-{role}"] input').first.set_input_files(str(file))
        self.sees(f'[data-role="{role}"] .done-bar')

    def item(self, name: str) -> None:
        self.tap(f'[data-name="item"][data-item="{name}"]')

    def tap_slot(self, offset: float) -> None:
        """Three taps on the picture where the slot and its screw are drawn."""
        shown = self.page.locator('[data-name="tap-picture"]')
        shown.wait_for(timeout=60000)
        shown.scroll_into_view_if_needed()
        for x in (-0.5, 0.5, -offset):
            box = shown.bounding_box()
            at = picture.SIZE[0] / 2 + x * picture.PER_INCH
            scale = box["width"] / picture.SIZE[0]
            shown.click(position={"x": at * scale, "y": 760 * scale})
            self.taps += 1

    def _pad(self) -> Any:
        """Go to sign; where the pad is, once it listens: a screen takes the focus and scrolls up after it is drawn."""
        self.named("sign")
        self.sees('main:has([data-name="pad"]) h1:focus')
        pad = self.page.locator('[data-name="pad"]')
        pad.scroll_into_view_if_needed()
        return pad.bounding_box()

    def sign(self) -> None:
        box = self._pad()
        mouse = self.page.mouse
        mouse.move(box["x"] + 30, box["y"] + 100)
        mouse.down()
        for step in range(1, 9):
            mouse.move(box["x"] + 30 + 28 * step, box["y"] + (60 if step % 2 else 130))
        mouse.up()
        self.page.locator('button[data-name="sign"]').click(timeout=60000)
        self.taps += 1
        self.sees(".done-bar")

    def sign_with_a_finger(self) -> None:
        """As ``sign``, by touch: what a phone's screen sends."""
        box = self._pad()
        touch = self.page.context.new_cdp_session(self.page)
        for step in range(9):
            at = {"x": box["x"] + 30 + 28 * step, "y": box["y"] + (60 if step % 2 else 130)}
            kind = "touchMove" if step else "touchStart"
            touch.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": [at]})
        touch.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})
        touch.detach()
        self.page.locator('button[data-name="sign"]').click(timeout=60000)
        self.taps += 1
        self.sees(".done-bar")

    def judged(self, result: str) -> None:
        """The reading's verdict is shown with its working, the rule in words and its source; then it is recorded."""
        verdict = self.page.locator(f'[data-name="verdict"][data-result="{result}"]')
        verdict.wait_for(timeout=60000)
        verdict.locator("details summary").click()
        working = verdict.inner_text()
        assert "undefined" not in working and "rule." not in working
        assert all(len(one) > 5 for one in verdict.locator("details > p").all_text_contents())
        assert verdict.locator("details > p").count() == 2
        self.named("record")
