"""Make reports in the background: what people asked for before what became due by itself, each job's due report once
however often it is called for; a few at a time, so that the server goes on answering.

A job that is being worked for waits behind every other: whoever asks for report after report of one job keeps neither
another job's people nor any report that is due waiting for more than one of them."""

import logging
import threading
import time
from collections.abc import Callable

from flask import Flask

log = logging.getLogger("seamwalk")
LOOKS = 30.0  # seconds
WORKERS = 2  # a short report need not wait for a long one; more would only share the same processor


class Background:
    """``due(job)`` and ``asked(id, job)`` may be called from any thread, before ``start`` too; they return at once.
    ``look(app)`` is called every ``seconds``: another server of the store may have ended."""

    def __init__(
        self, make_due: Callable[[Flask, str], object], make_asked: Callable[[Flask, int], object],
        look: Callable[[Flask], object] = lambda app: None, seconds: float = LOOKS,
    ) -> None:  # fmt: skip
        self.make_due, self.make_asked, self.look, self.seconds = make_due, make_asked, look, seconds
        self._asked: dict[int, str] = {}  # their jobs, in the order in which they were asked
        self._due: list[str] = []
        self._changed = threading.Condition()
        self._busy: dict[int | str, str] = {}
        self._app: Flask | None = None

    def due(self, job: str) -> None:
        """Have the job's report made."""
        with self._changed:
            if job not in self._due:
                self._due.append(job)
            self._changed.notify_all()

    def asked(self, identity: int, job: str) -> None:
        """Have made what somebody asked for of this job."""
        with self._changed:
            if identity not in self._busy:
                self._asked.setdefault(identity, job)
            self._changed.notify_all()

    def start(self, app: Flask) -> None:
        """Begin to work for this app, in threads that end with the process."""
        self._app = app
        for n in range(WORKERS):
            threading.Thread(target=self._work, name=f"reports-{n + 1}", daemon=True).start()
        threading.Thread(target=self._look, name="reports-look", daemon=True).start()

    def settled(self, seconds: float) -> bool:
        """Wait until nothing is asked, due or being made; whether that came to be in time."""
        with self._changed:
            return self._changed.wait_for(lambda: not (self._asked or self._due or self._busy), seconds)

    def pending(self, job: str) -> bool:
        """Whether the job's report is due and not begun."""
        with self._changed:
            return job in self._due

    def _look(self) -> None:
        assert self._app is not None
        while True:
            time.sleep(self.seconds)
            try:
                with self._app.app_context():
                    self.look(self._app)
            except Exception:  # a store that is busy or full now may be neither the next time
                log.exception("what other servers left could not be looked for")

    def _work(self) -> None:
        assert self._app is not None
        while True:
            with self._changed:
                self._changed.wait_for(lambda: self._next() is not None)
                item = self._next()
                assert item is not None
                if isinstance(item, int):
                    self._busy[item] = self._asked.pop(item)
                else:
                    self._busy[item] = item
                    self._due.remove(item)
            try:
                with self._app.app_context():
                    if isinstance(item, int):
                        self.make_asked(self._app, item)
                    else:
                        self.make_due(self._app, item)
            except Exception:  # one report's trouble must not end the work for all others
                log.exception("report %s could not be made", item)
            finally:
                with self._changed:
                    del self._busy[item]
                    self._changed.notify_all()

    def _next(self) -> int | str | None:
        # A job whose due report is being made waits for that one: two threads would only wait for each other.
        due = (job for job in self._due if job not in self._busy)
        others = (one for one, job in self._asked.items() if job not in self._busy.values())
        return next((one for every in (others, due, self._asked) for one in every), None)
