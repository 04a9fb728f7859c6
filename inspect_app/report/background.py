"""Make reports in the background: what is due is made one after another, each job once however often it is
asked."""

import logging
import threading
from collections.abc import Callable

from flask import Flask

log = logging.getLogger("seamwalk")


class Background:
    """``due(job)`` may be called from any thread, before ``start`` too; it returns at once."""

    def __init__(self, make: Callable[[Flask, str], object]) -> None:
        self.make = make
        self._waiting: list[str] = []
        self._changed = threading.Condition()
        self._busy = False
        self._app: Flask | None = None

    def due(self, job: str) -> None:
        """Have the job's report made."""
        with self._changed:
            if job not in self._waiting:
                self._waiting.append(job)
            self._changed.notify_all()

    def start(self, app: Flask) -> None:
        """Begin to work for this app, in a thread that ends with the process."""
        self._app = app
        threading.Thread(target=self._work, name="reports", daemon=True).start()

    def settled(self, seconds: float) -> bool:
        """Wait until nothing is due or being made; whether that came to be in time."""
        with self._changed:
            return self._changed.wait_for(lambda: not self._waiting and not self._busy, seconds)

    def pending(self, job: str) -> bool:
        """Whether the job's report is due and not begun."""
        with self._changed:
            return job in self._waiting

    def _work(self) -> None:
        assert self._app is not None
        while True:
            with self._changed:
                self._changed.wait_for(lambda: bool(self._waiting))
                job = self._waiting.pop(0)
                self._busy = True
            try:
                with self._app.app_context():
                    self.make(self._app, job)
            except Exception:  # one job's trouble must not end the work for all others
                log.exception("the report of job %s could not be made", job)
            finally:
                with self._changed:
                    self._busy = False
                    self._changed.notify_all()
