"""The tour's way through a warranty survey: the place, what is recorded around it, what people say."""

from collections.abc import Iterator
from typing import Any


def the_survey(tour: Any) -> Iterator[str]:
    """Around the place where the tour's walk found a pinned panel."""
    walker, page = tour.walker, tour.page
    tour.at("survey")
    walker.tap('fieldset[data-name="survey-area"] button:has-text("Quay")')
    page.fill('.stepper[data-name="survey-panel"] input', "12")
    page.fill('.stepper[data-name="survey-at"] input', "7.5")
    yield "survey: the place"
    walker.named("show-survey")
    walker.sees('[data-name="survey-unseen"]')
    tour.unfold()
    yield "survey: what is recorded"
    tour.at("survey-ask", *tour.here()[1:])
    walker.sees('[data-name="sign-survey"]')
    tour.unfold()
    for name in ("substitutions", "samples"):
        walker.named(f"add-{name}")
    walker.named("add-custody")
    walker.choose("changed", "yes")
    walker.named("add-changes")
    page.fill("#in-event-day", "in March")
    page.fill('.stepper[data-name="wear"] input', "0.5")
    page.fill('.stepper[data-name="doubt"] input', "0.0625")
    walker.sees('[data-name="wear-against"]')
    yield "survey: what people say"
