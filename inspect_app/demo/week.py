"""The demonstration's week: two crews over five days, before the last evening's walk.

The days hold what a roof has to show: a lot accepted, one not accepted and looked at again, a hold gone over, a crew
moved to tightened inspection, a stop to which nobody came.
"""

from collections.abc import Callable
from datetime import datetime, timedelta
from typing import Any

from inspect_app.demo.crew_day import CrewDay, Plan
from inspect_app.demo.day_record import write_day, write_rain
from inspect_app.demo.phone import Phone
from inspect_app.demo.walk import Walk

DAYS = 6  # before the last evening: the job is registered, then a day of rain, then five of work
NAIL, CLIPS = "Crew 2 (invented)", "Crew 1 (invented)"
SECOND = Plan("ferry", NAIL, 27, 47, tight_at=2)
WEEK: tuple[tuple[int, Plan], ...] = (
    (4, Plan("ferry", NAIL, 1, 26)),
    (3, SECOND),
    (2, Plan("quay", NAIL, 1, 20, tight_at=3, went_over=10)),
    (1, Plan("yard", CLIPS, 1, 22)),
    (0, Plan("quay", NAIL, 21, 32, nobody_at=2)),
)


def walk_the_week(week: tuple[tuple[int, Plan], ...], walk: Callable[[], Walk], office: Phone,
                  fold: Callable[[], dict[str, Any]], dusk: datetime) -> None:  # fmt: skip
    """``week``: each plan with how many days before the last evening it was; ``walk()``: a fresh walk of the foreman;
    ``fold()``: everything said is delivered, and its record. ``dusk``: the last evening; the mornings before it
    begin at seven."""
    morning = dusk.replace(hour=7, minute=0, second=0, microsecond=0)
    lots: dict[Plan, str] = {}
    if week:
        _rain(week, walk(), morning)
    for ago, plan in week:
        own = walk()
        own.clock.to(max(own.clock(), morning - timedelta(days=ago)))
        lots[plan] = CrewDay(own, fold, plan).make()
        write_day(own, plan.crew, ago)
        if plan != SECOND:
            continue
        fold()
        own.clock.advance(minutes=40)
        _open(office, own.job["id"], lots[plan])
        office.deliver()
        own = walk()
        own.clock.to(morning - timedelta(days=ago - 1))
        CrewDay(own, fold, SECOND._replace(tight_at=0, reworks=lots[SECOND])).make()


def _rain(week: tuple[tuple[int, Plan], ...], own: Walk, morning: datetime) -> None:
    """The day before the first one of work."""
    day = morning - timedelta(days=max(ago for ago, _ in week) + 1)
    own.clock.to(max(own.clock(), day))
    write_rain(own.phone, own.job["id"], sorted({plan.crew for _, plan in week}), day)


def _open(office: Phone, job: str, lot: str) -> None:
    office.say(job, "disposition", lot, {
        "lot": lot, "choice": "open", "document": None, "reference": "invented note 7",
        "reason": "Seams of the panels beside it opened, screws backed off and set again, five panels drawn anew.",
        "name": office.person["name"], "role": office.person["role"],
    })  # fmt: skip
