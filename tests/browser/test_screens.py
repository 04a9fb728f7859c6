"""Every screen, in both languages, with text doubled on the smallest phone: readable, pressable, in words."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from tests.browser.eye import Eye
from tests.browser.roof import Roof
from tests.browser.tour import Tour

SMALL = {"viewport": {"width": 320, "height": 568}, "locale": "en-US"}
SPEAK = "async (code) => (await import('/static/words/say.js')).setLanguage(code)"


@pytest.fixture
def tour(chromium: Any, tmp_path: Path) -> Iterator[Tour]:
    roof = Roof(tmp_path / "data")
    roof.start()
    context = chromium.new_context(**SMALL)
    yield Tour(context.new_page(), roof, tmp_path)
    context.close()
    roof.stop()


def test_every_screen_can_be_read_and_pressed_in_both_languages_with_doubled_text(tour: Tour) -> None:
    eye, wrong, seen = Eye(tour.page), [], []
    for screen in tour.screens():
        for code in ("es", "en"):
            tour.page.evaluate(SPEAK, code)
            eye.enlarge()
            wrong += [f"{screen} ({code}): {fault}" for fault in eye.faults()]
        seen.append(screen)
    assert not wrong, "\n".join(wrong)
    assert len(seen) == len(set(seen)) > 40
    assert tour.walker.faults == []
