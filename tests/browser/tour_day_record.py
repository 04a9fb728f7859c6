"""The tour's way through the day's record: the list, the sheet with a lighter coil, what was written, a day of rain."""

from collections.abc import Iterator
from typing import Any


def the_day_record(tour: Any) -> Iterator[str]:
    walker, page = tour.walker, tour.page
    walker.named("day-records")
    walker.sees('[data-name="record-of"]')
    yield "day's records"
    walker.named("write-day")
    walker.sees('[data-name="sign-day"]')
    yield "day's record: nothing told"
    walker.choose("sky-now", "wet")
    walker.choose("none", "offsite")
    page.fill('.stepper[data-name="metal-0"] input', "38")
    tour.unfold()
    walker.choose("material-what", "coil")
    walker.choose("gauge", "26")
    walker.sees('[data-name="against"][data-gauge="lighter"]')
    walker.choose("equipment", "driver")
    walker.choose("delays", "wind")
    tour.unfold()
    yield "day's record: a lighter coil"
    walker.named("sign-day")
    walker.sees('[data-name="day-told"]')
    yield "day's record: written"
    tour.at("day-record", "2026-09-11", "~Two")
    walker.named("idle")
    walker.choose("why", "rain")
    tour.unfold()
    yield "day's record: no work"
