"""A device's wall time as a number, to put what was said in order. The phone's interpreter has no dates of its own."""

from inspect_app.rules.day_number import day_number
from inspect_app.rules.refused import Refused


def moment(at: str, days: "dict | None" = None) -> int:
    """Milliseconds since 1970-01-01 in UTC of ``2026-11-25T16:40:05.120-05:00``; 0 for any other text, as a clock that
    cannot be read is no reason to drop what it stands on. ``days``: a place to keep the numbers of days in, for who
    reads many times of few days."""
    if len(at) != 29 or at[23] not in "+-":
        return 0
    try:
        day = days.get(at[:10]) if days is not None else None
        if day is None:
            day = day_number(at[:10], "at")
            if days is not None:
                days[at[:10]] = day
        hour, minute, second, milli = int(at[11:13]), int(at[14:16]), int(at[17:19]), int(at[20:23])
        ahead = int(at[24:26]) * 60 + int(at[27:29])
    except (Refused, ValueError):
        return 0
    minutes = day * 1440 + hour * 60 + minute - (ahead if at[23] == "+" else -ahead)
    return (minutes * 60 + second) * 1000 + milli
