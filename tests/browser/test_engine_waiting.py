"""The page is killed behind the camera: the person finds the place, all they had typed, and what did not arrive."""

import io
from pathlib import Path
from typing import Any

import pytest
from PIL import Image

from tests.browser.profile import Profile
from tests.browser.roof import Roof
from tests.browser.test_journey import out_of_signal
from tests.browser.walker import Walker
from tests.seed import chance

UNSENT = """async () => { const { everyRow } = await import('/static/outbox/counts.js')
  return (await everyRow()).filter((row) => row.what === 'photo').map((row) => row.name) }"""
UNSENT_ALL = """async () => { const { everyRow } = await import('/static/outbox/counts.js')
  return (await everyRow()).map((row) => row.name).sort() }"""
MISSING = '[data-role="{role}"] .problem'


def jpeg(n: int) -> bytes:
    """Another picture for each number."""
    out = io.BytesIO()
    Image.new("RGB", (640, 480), (n % 256, n // 256 % 256, 90)).save(out, "JPEG")
    return out.getvalue() + n.to_bytes(4, "big")


class AtAnItem:
    """A foreman without signal at one item of one place, whose page is killed again and again."""

    def __init__(self, profile: Profile, roof: Roof, folder: Path) -> None:
        self.profile, self.url, self.folder = profile, roof.url, folder
        self.walker = out_of_signal(profile.start().new_page(), roof, folder)
        self.walker.begin_walk()
        self.walker.place("Quay", "12", "7.5", "field")
        self.walker.named("look")
        self.walker.item("slot_place")
        self.walker.sees("#in-note")
        self.pid = profile.process_of(self.page)
        self.place = self.page.evaluate("location.hash")

    @property
    def page(self) -> Any:
        return self.walker.page

    def camera(self, role: str, note: str) -> Any:
        """Type, press, and have the camera open."""
        self.page.fill("#in-note", note)
        with self.page.expect_file_chooser() as opened:
            self.page.locator(f'[data-name="camera-{role}"] button').click()
        return opened.value

    def killed(self, after: float) -> None:
        """Come back cold, at no address, once the page is gone."""
        self.page.wait_for_timeout(after)
        with self.page.expect_event("crash"):
            self.profile.kill_page(self.pid)
        old = self.page
        self.come_back(self.profile.context.new_page())
        old.close()

    def come_back(self, page: Any) -> None:
        self.walker = Walker(page, self.url, self.folder)
        page.goto(self.url + "/")
        self.walker.sees("#in-note")
        self.pid = self.profile.process_of(page)

    def wrong(self, note: str) -> list[str]:
        """What is not as it was left: the place and what was typed."""
        found = (self.page.evaluate("location.hash"), self.page.input_value("#in-note"))
        return [] if found == (self.place, note) else [f"{found}, not {(self.place, note)}"]

    def told_missing(self, role: str) -> bool:
        return self.page.locator(MISSING.format(role=role)).count() == 1


def killed_behind_the_camera(at: AtAnItem, times: int) -> list[str]:
    dice, wrong = chance("camera"), []
    for n in range(times):
        note = f"left at {n}"
        at.camera("where", note)
        at.killed(dice.uniform(0, 300))
        wrong += at.wrong(note) + ([] if at.told_missing("where") else [f"{n}: nobody says that it did not arrive"])
    return wrong


def killed_while_it_is_kept(at: AtAnItem, times: int) -> list[str]:
    """Either the picture is kept, or it is said that it did not arrive; and never both."""
    dice, wrong, kept = chance("keeping"), [], 0
    for n in range(times):
        before = set(at.page.evaluate(UNSENT))
        chooser = at.camera("what", f"taken {n}")
        chooser.set_files({"name": "camera.jpg", "mimeType": "image/jpeg", "buffer": jpeg(n)})
        at.killed(dice.uniform(0, 250))
        new = set(at.page.evaluate(UNSENT)) - before
        kept += len(new)
        wrong += at.wrong(f"taken {n}")
        if bool(new) == at.told_missing("what"):
            wrong.append(f"{n}: {len(new)} kept, told missing {at.told_missing('what')}")
    print(f"{times} pages killed while a picture was kept: {kept} kept, {times - kept} told as not arrived")
    return wrong


def test_a_page_and_a_browser_killed_come_back_to_all_that_was_saved_and_say_what_did_not_arrive(
    profile: Profile, roof: Roof, tmp_path: Path
) -> None:
    at = AtAnItem(profile, roof, tmp_path)
    assert killed_behind_the_camera(at, 1) == []
    assert killed_while_it_is_kept(at, 1) == []
    waiting = at.page.evaluate(UNSENT_ALL)
    assert len(waiting) > 1, "the walk and the place at least"
    profile.kill()
    at.come_back(profile.start().new_page())
    assert at.wrong("taken 0") == []
    assert at.page.evaluate(UNSENT_ALL) == waiting
    at.page.locator(f'.strip:has-text("{len(waiting)} only on this phone")').wait_for(timeout=60000)


@pytest.mark.soak
def test_two_hundred_pages_killed_behind_the_camera_come_back_whole(
    profile: Profile, roof: Roof, tmp_path: Path
) -> None:
    at = AtAnItem(profile, roof, tmp_path)
    wrong = killed_behind_the_camera(at, 100) + killed_while_it_is_kept(at, 100)
    print(f"200 pages killed: {len(wrong)} wrong")
    assert wrong == []
