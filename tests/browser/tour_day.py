"""The tour's way through a crew's day: planned, held, looked at, something failed, and the night leg."""

from collections.abc import Iterator
from typing import Any

from tests.browser.tour_day_record import the_day_record


def the_day(tour: Any) -> Iterator[str]:
    """Three panels of Quay slope, all of them drawn, with a place on the first that fails."""
    walker, page = tour.walker, tour.page
    tour.at("day")
    walker.sees('[data-name="plan-day"]')
    yield "day: nothing planned"
    walker.named("plan-day")
    walker.sees('[data-name="draw"]')
    first = int(page.input_value('.stepper[data-name="from"] input'))  # an earlier walk has set some
    page.fill('.stepper[data-name="to"] input', str(first + 2))
    yield "plan the day"
    walker.named("draw")
    walker.named("mark")
    walker.sees('[data-name="front"][data-state="hold"]')
    walker.named("against")
    walker.sees('[data-name="against-sure"]')
    tour.unfold()
    yield "day: hold, against it?"
    walker.named("to-hold")
    begin(walker, "begin-look")
    walker.sees('[data-name="release"]')
    yield "hold: the first panel"
    walker.named("release")
    walker.sees('[data-name="release-sure"]')
    yield "hold: nobody looked, release it?"
    walker.named("release-sure")
    yield from failed(tour)
    yield from night(tour)
    yield from the_day_record(tour)


def begin(walker: Any, name: str) -> None:
    walker.named(name)
    walker.named("safe")
    walker.page.fill('.stepper[data-name="metal"] input', "74")
    for field, value in (("by", "contact"), ("sky", "clear"), ("wind", "calm")):
        walker.choose(field, value)
    walker.named("begin")


def failed(tour: Any) -> Iterator[str]:
    walker, page = tour.walker, tour.page
    walker.named("to-stop")
    walker.sees('[data-name="drawn-place"]')
    walker.named("place-covered")
    walker.sees('[data-name="seen-place"]')
    yield "stop"
    walker.named("look")
    walker.item("fixed_point")
    page.fill("#in-note", "Two rivets through the pan at mid-length")
    walker.named("fail")
    walker.named("back-to-walk")
    walker.named("to-failed")
    walker.choose("way", "both_ways")
    walker.sees('[data-name="both-ways"]')
    yield "hold: something failed"
    walker.choose("way", "finding_open")
    walker.named("release")
    walker.sees('[data-name="front"]:not([data-state="hold"])')


def night(tour: Any) -> Iterator[str]:
    walker = tour.walker
    walker.named("to-night")
    walker.sees('[data-name="night-mark"]')
    yield "night: which panel"
    walker.named("night-mark")
    begin(walker, "begin-night")
    walker.sees('[data-step="1"] details[open]')
    tour.unfold()
    yield "night leg"
    walker.named("release")
    walker.sees('[data-name="closed-lot"]')
    yield "day: over"
