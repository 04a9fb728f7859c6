"""Notice when a signed walk is whole: its sign-off is here and so is every photo it speaks of."""

import logging
from collections.abc import Callable, Iterable

from inspect_app.intake.batch import Answer
from inspect_app.store.log_reading import LogReading
from inspect_app.store.records import Records

log = logging.getLogger("seamwalk")


class Completion:
    """Calls ``after_intake(job)`` when what arrived may have made a report due: a sign-off, anything further
    about a walk that is signed already, or the last photo that a signed walk was waiting for. It may call
    twice for one report: whoever listens finds out whether there is something new to say. What listens may
    fail; the receipts of what has arrived are given all the same."""

    def __init__(self, log: LogReading, records: Records, after_intake: Callable[[str], None]) -> None:
        self.log, self.records, self.after_intake = log, records, after_intake

    def entries_arrived(self, answers: Iterable[Answer]) -> None:
        """After a batch is durable."""
        for job in sorted({str(answer.job) for answer in answers if answer.status == "accepted"}):
            if self.log.has_kind(job, "signoff"):
                self._tell(job)

    def photo_arrived(self, job: str) -> None:
        """After a photo is durable."""
        if self.log.has_kind(job, "signoff") and self._whole(job):
            self._tell(job)

    def look_again(self) -> None:
        """At the start of a server: the one before may have ended between a commit and the call."""
        for job in self.log.jobs_with("signoff"):
            self._tell(job)

    def _tell(self, job: str) -> None:
        try:
            self.after_intake(job)
        except Exception:
            log.exception("after the intake of job %s", job)

    def _whole(self, job: str) -> bool:
        record, held = self.records.record(job), self.log.photos(job)
        return any(
            walk["signoff"] and all(photo in held for photo in walk["photos"])
            for walk in record["walks"].values()
        )
