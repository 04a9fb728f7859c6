"""Notice when a signed walk is whole: its sign-off is here and so is every photo it speaks of."""

import logging
from collections import defaultdict
from collections.abc import Callable, Iterable

from inspect_app.entry.format import parse
from inspect_app.intake.batch import Answer
from inspect_app.store.log_reading import LogReading
from inspect_app.store.records import Records

log = logging.getLogger("seamwalk")
# What every walk of the job is judged and printed with, and what lets in others.
STANDS_ON = ("job", "assembly", "area", "fit", "admission")


class Completion:
    """Calls ``after_intake(job)`` when what arrived may have made a report due: a sign-off, anything further
    about a walk that is signed already, a job, assembly, area or fit check once a walk is signed, or the last photo
    that a signed walk was waiting for. It calls once for all that arrived together, and may call twice for one
    report: whoever listens finds out whether there is something new to say. What listens may fail; the receipts of
    what has arrived are given all the same."""

    def __init__(self, log: LogReading, records: Records, after_intake: Callable[[str], None]) -> None:
        self.log, self.records, self.after_intake = log, records, after_intake

    def entries_arrived(self, answers: Iterable[Answer]) -> None:
        """After a batch is durable."""
        arrived: dict[str, list[Answer]] = defaultdict(list)
        for answer in answers:
            if answer.status == "accepted":
                arrived[str(answer.job)].append(answer)
        for job in sorted(arrived):
            kinds = {one.kind for one in arrived[job]}
            stands_on = kinds & set(STANDS_ON) and self.log.has_kind(job, "signoff")
            if "signoff" in kinds or stands_on or self._speaks_of_signed(job, arrived[job]):
                self._tell(job)

    def photo_arrived(self, job: str, sha256: str) -> None:
        """After a photo is durable."""
        if self.log.has_kind(job, "signoff") and self._makes_whole(job, sha256):
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

    def _speaks_of_signed(self, job: str, arrived: list[Answer]) -> bool:
        walks = {one.walk for one in arrived if one.walk is not None}
        # Folding costs more than this question, and most of what arrives is a walk still going on beside signed ones.
        if not any(parse(item.token).payload["subject"] in walks for item in self.log.job_entries(job, "signoff")):
            return False
        folded = self.records.record(job)["walks"]
        return any(walk in folded and folded[walk]["signoff"] for walk in walks)

    def _makes_whole(self, job: str, sha256: str) -> bool:
        walks, held = self.records.record(job)["walks"].values(), self.log.photos(job)
        of_it = [walk["photos"] for walk in walks if walk["signoff"] and sha256 in walk["photos"]]
        return any(all(photo in held for photo in photos) for photos in of_it)
