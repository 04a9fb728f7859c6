"""Dates reckoned without a calendar library are those of Python's own."""

from datetime import date, timedelta

import pytest

from inspect_app.rules.day_number import day_number
from inspect_app.rules.refused import Refused

FIRST = date(1970, 1, 1)


def test_every_day_is_the_number_that_python_s_calendar_gives_it():
    """Every day of 1895 to 2105: a century that is no leap year on either side of one that is; the ends of time too."""
    days = [date(1895, 1, 1) + timedelta(n) for n in range(211 * 365)] + [date.min, date.max, date(1600, 2, 29)]
    assert [day_number(one.isoformat(), "day") for one in days] == [(one - FIRST).days for one in days]


@pytest.mark.parametrize(
    "text",
    ["", "2026-11-25T00:00", "2026-11-25 ", "2026", "2026-11", "20261125", "2026/11/25", "2026-13-01", "2026-00-10",
     "2026-04-31", "2026-02-29", "1900-02-29", "0000-01-01", "2026-1-005", "+026-11-25", "2026-11-٢٥", "March 2028"],
)  # fmt: skip
def test_what_python_s_calendar_does_not_have_is_refused(text):
    if len(text) == 10 and text.isascii():
        with pytest.raises(ValueError):
            date.fromisoformat(text)
    with pytest.raises(Refused) as refused:
        day_number(text, "expires")
    assert (refused.value.code, refused.value.field) == ("not_date", "expires")
