"""Dates as text: ``2028-03-01`` as a number of days, in the Gregorian calendar. The phone's interpreter has none."""

from inspect_app.rules.refused import Refused

MONTHS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
DIGITS = "0123456789"


def day_number(text: str, field: str) -> int:
    """Days since 1970-01-01, below zero before. Raises Refused ``not_date`` for what is no day of the calendar as
    ISO 8601 writes it, years 1 to 9999."""
    if len(text) != 10 or text[4] != "-" or text[7] != "-":
        raise Refused("not_date", field, text[:60])
    if not all(character in DIGITS for character in text[:4] + text[5:7] + text[8:]):
        raise Refused("not_date", field, text)
    year, month, day = int(text[:4]), int(text[5:7]), int(text[8:])
    if year < 1 or not 1 <= month <= 12 or not 1 <= day <= _length(year, month):
        raise Refused("not_date", field, text)
    before = year - 1
    days = 365 * before + before // 4 - before // 100 + before // 400
    for earlier in range(1, month):
        days = days + _length(year, earlier)
    return days + day - 1 - 719162  # from 0001-01-01 to 1970-01-01


def _length(year: int, month: int) -> int:
    leap = year % 4 == 0 and (year % 100 != 0 or year % 400 == 0)
    return MONTHS[month - 1] + (1 if month == 2 and leap else 0)
