"""Wall time as it is handed to the parts that need it, and its spelling in statements."""

from collections.abc import Callable
from datetime import UTC, datetime

Clock = Callable[[], datetime]


def system_clock() -> datetime:
    """The time now, in UTC."""
    return datetime.now(UTC)


def spell(moment: datetime) -> str:
    """``2026-11-25T16:40:05.120+00:00``: milliseconds and offset, as in entries. Needs an aware time."""
    if moment.tzinfo is None:
        raise RuntimeError("a time without a zone says nothing")
    return moment.isoformat(timespec="milliseconds")
