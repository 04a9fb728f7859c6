"""The morning's card without signal: the screw moves with the metal, a crew reads its language, paper is bare."""

import io
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from pyhanko.pdf_utils.reader import PdfFileReader

from tests.browser.roof import Roof
from tests.browser.test_journey import out_of_signal
from tests.browser.walker import Walker

PHONE = {"viewport": {"width": 390, "height": 844}, "locale": "en-US"}
AIM = '.card:not(.elsewhere) [data-part="far"] [data-column="now"] .opening-aim'
CONTROLS = "[...document.querySelectorAll('a, button, input, select, textarea')].filter((one) => one.checkVisibility())"
LISTEN = """window.printing = new Promise((told) => {
  setTimeout(told, 8000, 'nothing was printed')
  window.print = () => told(document.documentElement.lang + document.title)
}), null"""
SHEETS = "[...document.querySelectorAll('[data-name=sheet]')].filter((one) => one.checkVisibility()).length"


@pytest.fixture
def walker(chromium: Any, tmp_path: Path) -> Iterator[Walker]:
    """At the card of the invented job, the server gone."""
    roof = Roof(tmp_path / "data")
    roof.start()
    context = chromium.new_context(**PHONE)
    walker = out_of_signal(context.new_page(), roof, tmp_path)
    walker.named("card")
    walker.sees('[data-name="lead"]')
    yield walker
    context.close()
    roof.stop()


def lead(walker: Walker, area: str) -> str:
    walker.page.locator('fieldset[data-name="card-area"] button', has_text=area).click()
    return str(walker.page.locator('.card:not(.elsewhere) [data-name="lead"]').inner_text()).replace("\xa0", " ")


def place(walker: Walker, degrees: str) -> tuple[float, str | None]:
    """Where the tab far from the fixed line is drawn once the metal is typed, and the third it is said to lie in."""
    page = walker.page
    page.fill(".card:not(.elsewhere) .stepper input", degrees)
    page.locator(f'.card:not(.elsewhere) .seam.one [data-degrees="{degrees}"]').first.wait_for(timeout=60000)
    third = page.locator('.card:not(.elsewhere) .seam.one [data-part="far"] li').get_attribute("data-third")
    drawn = page.locator(AIM).first.get_attribute("style")
    return float(drawn.split("(")[1].split("px")[0]), third


def pages(page: Any, paper: str) -> int:
    return int(PdfFileReader(io.BytesIO(page.pdf(format=paper))).root["/Pages"]["/Count"])


def test_a_crew_is_shown_where_the_screw_belongs_in_its_language_and_on_paper_without_signal(walker: Walker) -> None:
    page = walker.page
    assert "do not go together" in lead(walker, "Quay") and "35 ft" in lead(walker, "Quay")  # 40 ft, 1 in slot, 1/8 in
    assert "68 and 92 °F" in lead(walker, "Yard")  # by hand: 67.82 to 92.18 °F, whole degrees inward
    cold, mild, hot = (place(walker, degrees) for degrees in ("30", "80", "130"))
    assert [one[1] for one in (cold, mild, hot)] == ["toward_eave", "middle", "toward_ridge"]
    assert cold[0] > mild[0] > hot[0], "ridge up: hot metal moves a tab above its fixed line up the drawing"
    assert cold[0] - mild[0] == pytest.approx(mild[0] - hot[0], abs=0.01)
    page.locator(".card:not(.elsewhere) .stepper button", has_text="+ 10").click()
    page.locator('.card:not(.elsewhere) [data-degrees="140"]').first.wait_for(timeout=60000)
    assert "no bare hand" in page.locator(".card:not(.elsewhere) .card-touch").inner_text()

    walker.choose("language", "es")
    assert "68 y 92 °F" in lead(walker, "Yard") and page.locator(".stepper input").last.input_value() == "140"
    page.evaluate(LISTEN)
    walker.named("print-en")  # the crew reads Spanish, this print is for somebody else
    assert page.evaluate("window.printing") == "enCard for today · Seamwalk"

    page.emulate_media(media="print")
    assert page.evaluate(CONTROLS + ".length") == 0 and page.evaluate(SHEETS) == 2
    assert not page.locator(".seam.one").first.is_visible(), "paper does not know the metal's temperature"
    page.emulate_media(media="null")
    assert page.evaluate(CONTROLS + ".length") > 10 and page.evaluate(SHEETS) == 1
    assert (pages(page, "Letter"), pages(page, "A4")) == (2, 2)
    assert walker.faults == []
