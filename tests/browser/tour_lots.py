"""The tour's way through what a lot comes to: its decision, the draw after rework, coverage, series, sampling."""

from collections.abc import Iterator
from typing import Any


def the_lots(tour: Any) -> Iterator[str]:
    """The day of the tour is over, and its lot not accepted."""
    walker = tour.walker
    tour.at("day")
    walker.named("closed-lot")
    walker.sees('[data-name="decision"][data-state="not_accepted"]')
    yield "lot: not accepted"
    walker.named("draw-rework")
    walker.sees('[data-name="audit-panel"]')
    yield "lot after rework: its drawn panels"
    walker.named("audit-panel")
    walker.sees("h1")
    yield "lot after rework: a panel"
    for name, sign in (
        ("coverage", '[data-name="coverage-area"]'), ("series", '[data-name="series-lot"]'),
        ("sampling", '[data-sampling="audit"] [data-name="comes"] li'), ("audit", "h1"),
    ):  # fmt: skip
        tour.at(name)
        walker.sees(sign)
        yield f"{name} of the job"
    yield from the_trends(tour)
    tour.at("coverage")
    walker.tap('[data-name="coverage-area"]:has-text("Quay")')
    walker.sees('[data-name="run"]')
    yield "coverage of an area"


def the_trends(tour: Any) -> Iterator[str]:
    """Without signal, from what the phone holds."""
    walker = tour.walker
    tour.at()
    walker.named("trends")
    walker.sees('[data-name="pareto"] [data-name="group"]')
    tour.unfold()
    yield "trends"
    walker.tap('[data-name="trend-lot"]')
    walker.sees('[data-name="decision"]')
    tour.at("trends")
    walker.choose("by", "zone")
    walker.sees('[data-name="pareto"][data-by="zone"]')
    tour.unfold()
    tour.page.fill("#in-narrow-from", "2001-01-02")
    tour.page.fill("#in-narrow-to", "2001-01-01")
    walker.sees(".trends .problem")
    yield "trends: days the wrong way round"
    walker.named("narrow-all")
    walker.tap('[data-name="pareto"] [data-name="group"]')
    walker.sees('[data-name="found"] ~ .rows [data-name="finding"]')
    yield "trends: the findings behind a bar"
    tour.at("trends", "pairs", "both_bad")
    walker.sees("h1")
    yield "trends: the looks behind a number"
