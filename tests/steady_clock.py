"""A clock that moves only when a test says so."""

from datetime import UTC, datetime, timedelta


class SteadyClock:
    def __init__(self, now: datetime = datetime(2026, 11, 25, 21, 40, 5, 120_000, UTC)) -> None:
        self.now = now

    def __call__(self) -> datetime:
        return self.now

    def forward(self, **by: float) -> None:
        self.now += timedelta(**by)
