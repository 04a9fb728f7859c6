"""The invented walk lies in the past, whatever the hour at which the demonstration is made."""

from datetime import datetime, timedelta, timezone

import pytest

from inspect_app.commands.demo import dusk
from inspect_app.demo.run import LENGTH

ZONE = timezone(timedelta(hours=-5))


@pytest.mark.parametrize("hour", range(24))
@pytest.mark.parametrize("minute", [0, 30, 40, 59])
def test_the_walk_is_over_before_its_report_is_made_and_no_older_than_a_day(hour, minute):
    now = datetime(2026, 3, 1, hour, minute, tzinfo=ZONE)
    begun = dusk(now)
    assert (begun.hour, begun.minute, begun.utcoffset()) == (17, 40, now.utcoffset())
    assert now - timedelta(days=1) < begun + LENGTH <= now


def test_a_walk_that_is_just_over_is_today_s_and_one_that_is_not_is_yesterday_s():
    end = datetime(2026, 3, 1, 17, 40, tzinfo=ZONE) + LENGTH
    assert dusk(end).day == 1
    assert dusk(end - timedelta(seconds=1)).isoformat() == "2026-02-28T17:40:00-05:00"
