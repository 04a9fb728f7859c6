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
    tour.at("coverage")
    walker.tap('[data-name="coverage-area"]:has-text("Quay")')
    walker.sees('[data-name="run"]')
    yield "coverage of an area"
