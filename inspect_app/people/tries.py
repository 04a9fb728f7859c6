"""Slow down guessing: after five wrong passwords for one login, or twenty links from one address that lead nowhere,
each further try has to wait longer."""

import threading

from inspect_app.clock import Clock
from inspect_app.errors import TooOften

FREE = 5
LONGEST = 300  # seconds: the wait may annoy its owner, it must not lock them out for a shift
MOST = 10_000  # logins remembered; the oldest is forgotten first


class Tries:
    """Wrong tries by login (or address), in memory: a restart forgives, which no guesser can cause."""

    def __init__(self, clock: Clock, free: int = FREE, code: str = "too_many_tries", field: str = "password") -> None:
        self.clock, self.free, self.code, self.field = clock, free, code, field
        self._wrong: dict[str, tuple[int, float]] = {}
        self._lock = threading.Lock()

    def check(self, login: str) -> None:
        """Raises ``TooOften`` with the seconds left to wait."""
        with self._lock:
            _, until = self._wrong.get(login, (0, 0.0))
        left = until - self.clock().timestamp()
        if left > 0:
            raise TooOften(self.code, self.field, int(left) + 1)

    def wrong(self, login: str) -> None:
        with self._lock:
            count = self._wrong.pop(login, (0, 0.0))[0] + 1
            wait = min(LONGEST, 2 ** min(count - self.free, 10)) if count > self.free else 0
            self._wrong[login] = (count, self.clock().timestamp() + wait)
            if len(self._wrong) > MOST:
                del self._wrong[next(iter(self._wrong))]

    def right(self, login: str) -> None:
        with self._lock:
            self._wrong.pop(login, None)
