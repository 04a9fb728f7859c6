"""A hand on the phone's screen: it taps what a person taps, and counts the taps."""

import io
from typing import Any

from PIL import Image, ImageDraw
from playwright.sync_api import TimeoutError

from tests.browser.office import PASSWORD


class Hand:
    """``page`` is a Playwright page of the app. ``taps`` counts every tap since it was last set to 0."""

    def __init__(self, page: Any, url: str) -> None:
        self.page, self.url, self.taps = page, url, 0

    def tap(self, name: str, value: str | None = None, nth: int = 0) -> None:
        """Tap the control of this data-name, or the choice of this value in it."""
        inside = f" [data-value='{value}']" if value is not None else ""
        self.page.locator(f"[data-name='{name}']{inside}").nth(nth).tap()
        self.taps += 1

    def steps(self, name: str, label: str, times: int) -> None:
        """Tap the step named, such as ``+ 10``, of a stepper."""
        button = self.page.locator(f"[data-name='{name}'] .steps button", has_text=label).first
        for _ in range(times):
            button.tap()
            self.taps += 1

    def type(self, name: str, text: str) -> None:
        self.page.locator(f"#in-{name}").fill(text)

    def tap_at(self, selector: str, across: float, down: float) -> None:
        """Tap at a share of the width and height of what ``selector`` finds."""
        place = self.page.locator(selector).first
        place.scroll_into_view_if_needed()
        box = place.bounding_box()
        place.tap(position={"x": box["width"] * across, "y": box["height"] * down})
        self.taps += 1

    def sees(self, selector: str, limit: float = 60000) -> Any:
        """What ``selector`` finds, once it shows; else a failure that says what stood on the screen instead."""
        place = self.page.locator(selector).first
        try:
            place.wait_for(state="visible", timeout=limit)
        except TimeoutError as late:
            raise AssertionError(f"{selector} is not there, but:\n{self.page.inner_text('body')}") from late
        return place

    def sign_in(self, login: str) -> None:
        self.page.goto(self.url + "/")
        self.sees("#in-login")
        self.type("login", login)
        self.type("password", PASSWORD)
        self.tap("sign-in")
        self.sees("[data-name='job']")

    def open_job(self) -> None:
        self.tap("job")
        self.sees("[data-name='area'], [data-name='add-area']")

    def start_walk(self) -> None:
        """From the job: the gate, the metal's temperature, the sky, and no panels placed."""
        self.tap("start")
        self.sees("[data-name='safe']")
        self.tap("safe")
        self.steps("metal", "+ 1", 1)
        self.tap("by", "contact")
        self.tap("sky", "clear")
        self.tap("wind", "calm")
        self.tap("begin")
        self.sees("[data-name='new-place']")

    def photograph(self, name: str, picture: bytes) -> None:
        """Give the file of a camera to the input; the tap opens the camera, the second one takes the photo."""
        self.page.locator(f"[data-name='{name}'] input[type=file]").set_input_files(
            {"name": "camera.jpg", "mimeType": "image/jpeg", "buffer": picture}
        )
        self.taps += 2


def slot_picture(share: float = 0.5, size: tuple[int, int] = (1200, 1600)) -> bytes:
    """A drawn slot, ridge up: from 20 % to 80 % of the height at mid-width, a screw at ``share`` of the slot."""
    width, height = size
    image = Image.new("RGB", size, (150, 160, 168))
    draw = ImageDraw.Draw(image)
    draw.rounded_rectangle((width * 0.46, height * 0.2, width * 0.54, height * 0.8), 40, fill=(40, 44, 48))
    x, y = width / 2, height * (0.2 + 0.6 * share)
    draw.ellipse((x - 90, y - 90, x + 90, y + 90), fill=(215, 215, 210), outline=(0, 0, 0), width=4)
    out = io.BytesIO()
    image.save(out, "JPEG", quality=80)
    return out.getvalue()
