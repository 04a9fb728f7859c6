"""A warranty survey on a phone without signal: the place tapped, everything told, what people say signed."""

from pathlib import Path
from typing import Any

from tests.browser.lots import Crew
from tests.browser.roof import Roof
from tests.browser.test_journey import ready
from tests.browser.test_lots import at, person, settles
from tests.browser.walker import Walker


def pick(walker: Walker) -> None:
    """A tap on the drawing sets panel and distance; the steps beside it set them finer."""
    walker.sees('[data-name="survey-panel"]')
    walker.page.locator(".plan svg").click(position={"x": 150, "y": 60})
    assert walker.page.input_value('.stepper[data-name="survey-panel"] input')
    walker.page.fill('.stepper[data-name="survey-panel"] input', "9")
    walker.page.fill('.stepper[data-name="survey-at"] input', "7.5")
    walker.named("show-survey")
    walker.sees('[data-name="survey-unseen"]')


def write_down(walker: Walker) -> None:
    page = walker.page
    walker.named("survey-ask")
    walker.choose("warranty-shown", "contradicted")
    walker.tap('[data-name="open-event"]')
    page.fill("#in-event-what", "Wind (invented)")
    page.fill("#in-event-day", "2031-02-30")
    sign = page.locator('button[data-name="sign-survey"]')
    assert sign.is_disabled(), "no such day"
    page.fill("#in-event-day", "2031-03-02")
    walker.tap('[data-name="open-samples"]')
    walker.named("add-samples")
    assert sign.is_disabled(), "a sample without its bag is nobody's"
    page.fill("#in-sample-0-bag", "7")
    page.fill("#in-sample-0-taken_by", "Rey (invented)")
    walker.named("add-custody")
    page.fill("#in-sample-0-hand-0-to", "the owner (invented)")
    page.fill('.stepper[data-name="wear"] input', "0.5")
    assert sign.is_disabled(), "a mark without its doubt is no measure"
    page.fill('.stepper[data-name="doubt"] input', "0.0625")
    walker.sees('[data-name="wear-against"]')
    page.reload()
    walker.sees('[data-name="wear-against"]')
    walker.named("sign-survey")
    walker.sees('[data-name="survey-unseen"]')
    page.evaluate("document.querySelectorAll('details').forEach((one) => { one.open = true })")
    walker.sees('[data-name="survey-told"]:has-text("the owner (invented)")')
    for part in ("survey-told", "survey-wear"):
        walker.sees(f'[data-name="{part}"]:has-text("panel 9, 7.5 ft from its low end")')


def test_a_place_is_surveyed_without_signal_and_what_people_say_arrives_signed(
    chromium: Any, roof: Roof, tmp_path: Path
) -> None:
    crew = Crew(roof, "foreman", 1)
    crew.bad_day()
    crew.deliver()
    inspector = person(chromium, roof, tmp_path, "inspector")
    ready(inspector)
    roof.stop()
    at(inspector, roof, "survey", crew.areas["Quay slope"]["id"])
    pick(inspector)
    inspector.sees('[data-name="in-force"]')
    assert "-" not in inspector.page.locator('[data-name="survey-set"] h3').first.inner_text(), "a day as people say it"
    assert inspector.page.locator('[data-name="beside-panel"]').count() == 5
    write_down(inspector)
    roof.start()
    assert settles(lambda: roof.kinds().count("survey") == 1)
    (survey,) = roof.record()["surveys"].values()
    assert (survey["panel"], survey["event"]["day"], survey["warranty"]["shown"]) == (9, "2031-03-02", "contradicted")
    assert survey["samples"][0]["custody"][0]["from"] == "Rey (invented)"
    assert survey["wear"]["verdict"]["rule"] == "wear@1" and survey["wear"]["uncertainty"]["value"] == "0.0625"
    assert not [flag for flag in roof.record()["flags"] if flag["digest"] == survey["digest"]]
    assert inspector.faults == []
