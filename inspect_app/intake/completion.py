"""Notice when a signed walk is whole: its sign-off is here and so is every photo it speaks of."""

from collections.abc import Callable, Iterable

from inspect_app.intake.batch import Answer
from inspect_app.store.log_reading import LogReading
from inspect_app.store.records import Records


class Completion:
    """Calls ``after_intake(job)`` when what arrived may have made a report due: a sign-off, anything further
    about a walk that is signed already, or the last photo that a signed walk was waiting for. It may call
    twice for one report: whoever listens finds out whether there is something new to say."""

    def __init__(self, log: LogReading, records: Records, after_intake: Callable[[str], None]) -> None:
        self.log, self.records, self.after_intake = log, records, after_intake

    def entries_arrived(self, answers: Iterable[Answer]) -> None:
        """After a batch is durable."""
        for job in sorted({str(answer.job) for answer in answers if answer.status == "accepted"}):
            if self.log.has_kind(job, "signoff"):
                self.after_intake(job)

    def photo_arrived(self, job: str) -> None:
        """After a photo is durable."""
        if self.log.has_kind(job, "signoff") and self._whole(job):
            self.after_intake(job)

    def _whole(self, job: str) -> bool:
        record, held = self.records.record(job), self.log.photos(job)
        return any(
            walk["signoff"] and all(photo in held for photo in walk["photos"])
            for walk in record["walks"].values()
        )
