"""Every screen, in both languages, with text doubled on the smallest phone: readable, pressable, in words."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from tests.browser.eye import SMALLEST, SPEAK, Eye
from tests.browser.roof import Roof
from tests.browser.tour import Tour

SMALL = {"viewport": SMALLEST, "locale": "en-US"}


# What to look for, and an element that has just this fault: tag, what it is, how it looks.
GREY, LINE = {"color": "#5a5a5a", "background": "#fff"}, {"width": "60px", "whiteSpace": "nowrap"}
PLANTED: tuple[tuple[str, str, dict[str, str], dict[str, str]], ...] = (
    ("wide: the page", "p", {"textContent": "wide"}, {"width": "400px"}),
    ("wide: off the screen", "p", {"textContent": "off"}, {"position": "fixed", "left": "310px"}),
    ("wide: out of its box", "p", {"textContent": "no end", "className": "press"}, LINE),
    ("wide: cut off", "p", {"textContent": "no end of words"}, LINE | {"overflow": "hidden"}),
    ("small: 200 × 47", "button", {"textContent": "Go"}, {"width": "200px", "height": "47px"}),
    ("pale: 6.9", "p", {"textContent": "pale"}, GREY),
    ("pale: 12.6, in the sun 1.58", "p", {"textContent": "dim"}, {"color": "#000", "background": "#c8c8c8"}),
    ("untold: “job.nothing”", "p", {"textContent": "job.nothing"}, {}),
    ("untold: “{n} places”", "p", {"textContent": "{n} places"}, {}),
    ("untold: not es “Start a walk”", "p", {"textContent": "Start a walk"}, {}),
    ("untold: not es “Start a walk”", "p", {"ariaLabel": "Start a walk"}, {}),
    ("axe color-contrast-enhanced", "p", {"textContent": "pale"}, GREY),
    ("axe button-name", "button", {}, {}),
    ("axe heading-order", "h4", {"textContent": "deep"}, {}),
)
PLANT = """([tag, what, style]) => {
  const one = Object.assign(document.createElement(tag), { id: 'planted', ...what })
  Object.assign(one.style, style)
  document.querySelector('main').append(one)
}"""


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
        eye.size(16)
        wrong += [f"{screen}: {fault}" for fault in eye.places()]
        eye.size(32)
        for again, code in enumerate(("es", "en")):
            tour.page.evaluate(SPEAK, code)
            wrong += [f"{screen} ({code}): {fault}" for fault in eye.faults(bool(again))]
        seen.append(screen)
    assert not wrong, "\n".join(wrong)
    assert len(seen) == len(set(seen)) > 40
    assert tour.walker.faults == []


def test_the_eye_sees_each_fault_that_is_planted_and_none_that_is_not(tour: Tour) -> None:
    eye, page = Eye(tour.page), tour.page
    next(tour.screens())
    page.evaluate(SPEAK, "es")
    for expected, tag, what, style in PLANTED:
        page.evaluate(PLANT, [tag, what, style])
        assert any(fault.startswith(expected) for fault in eye.faults()), f"{expected} in {eye.faults()}"
        page.evaluate("document.getElementById('planted').remove()")
    page.evaluate(PLANT, ["p", {"textContent": "plain"}, {"color": "#333", "background": "#fff"}])
    assert eye.faults() == []
    assert page.evaluate("eye.contrast('rgb(0, 0, 0)', 'rgb(255, 255, 255)')") == 21, "WCAG 2.2, contrast ratio"


def test_another_language_and_a_second_question_leave_the_person_where_they_were(tour: Tour) -> None:
    walker, page = tour.walker, tour.page
    focused = "document.activeElement.dataset.name ?? document.activeElement.innerText"
    walker.sign_in("foreman")
    tour.to("phone")
    walker.sees('h1:has-text("This phone")')
    page.locator('[data-value="es"]').focus()
    page.locator('[data-value="es"]').scroll_into_view_if_needed()
    where = page.evaluate("scrollY")
    page.locator('[data-value="es"]').press("Enter")  # focuses again: a heading just shown may have taken the focus
    walker.sees('h1:has-text("Este teléfono")')
    assert page.title().startswith("Este teléfono")
    assert where > 0 and page.evaluate("document.activeElement.dataset.value") == "es"
    assert abs(page.evaluate("scrollY") - where) < 100, "other words are longer, the place is the same"
    page.locator('[data-name="sign-out"]').focus()
    page.keyboard.press("Enter")
    walker.sees('[data-name="sign-out-sure"]')
    assert page.evaluate(focused) == "No, dejarlo", "the harmless answer first"
    page.keyboard.press("Enter")
    walker.sees('[data-name="sign-out"]')
    assert page.evaluate(focused) == "sign-out"
