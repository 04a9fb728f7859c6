"""Device wall time as text: ``2026-11-25T16:40:05.120-05:00``, always with milliseconds and a UTC offset."""

import re
from datetime import datetime

from inspect_app.entry.refusal import Refused

_FORM = re.compile(
    r"[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}\.[0-9]{3}[+-][0-9]{2}:[0-9]{2}\Z", re.ASCII
)


def moment(value: object, field: str) -> None:
    """Raises Refused ``bad_field`` for another form or a day that does not exist. Any year passes: a clock
    that is wrong is evidence, never a reason to refuse."""
    if not isinstance(value, str) or not _FORM.match(value):
        raise Refused("bad_field", field, value)
    try:
        datetime.fromisoformat(value)
    except ValueError:
        raise Refused("bad_field", field, value) from None
