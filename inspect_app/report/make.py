"""Make one report of a job, end to end: gather, decide, lay out, seal, shelve."""

import json
import threading
from collections import defaultdict
from collections.abc import Callable
from pathlib import Path
from typing import Any, NamedTuple
from uuid import uuid4

from inspect_app.clock import Clock, spell
from inspect_app.evidence.enclosure import enclosures
from inspect_app.record.scope import WHOLE
from inspect_app.report.asked import Asked, meaning_of
from inspect_app.report.authority import Authority
from inspect_app.report.basis import issuer
from inspect_app.report.contents import contents_bytes, contents_digest, report_contents
from inspect_app.report.pages import write_pages
from inspect_app.report.pages.voice import Texts, Voice
from inspect_app.report.progress import Tell, part_of, quiet
from inspect_app.report.seal import seal
from inspect_app.report.seal_box import box_of
from inspect_app.report.seal_key import SealKey
from inspect_app.report.shelf import Shelf, Shelved, held_as, synced
from inspect_app.report.shelf_list import says, told_of
from inspect_app.report.source import Gathered, Source
from inspect_app.rules.refused import Refused

OWN = ("number", "issued", "supersedes", "made_with")  # what differs between two reports that say the same


class Made(NamedTuple):
    """A report that is ready: where it stands, its contents, and whether it is ``new`` or said all before."""

    shelved: Shelved
    contents: dict[str, Any]
    new: bool


class Maker:
    """Makes reports; one at a time for each scope of each job, whatever threads (that have an app context) and whatever
    servers of the store want it."""

    def __init__(
        self,
        source: Source,
        shelf: Shelf,
        texts: Texts,
        fonts: Path,
        key: Callable[[], SealKey],
        clock: Clock,
        made_with: dict[str, str],
        authority: Authority | None = None,
    ) -> None:
        self.source, self.shelf, self.texts, self.fonts = source, shelf, texts, fonts
        self.key, self.clock, self.made_with, self.authority = key, clock, made_with, authority
        self._guard = threading.Lock()
        self._locks: dict[tuple[str, str], threading.Lock] = defaultdict(threading.Lock)

    def make(self, job: str, paper: str | None = None, language: str | None = None, units: str | None = None,
             scope: dict[str, Any] = WHOLE, tell: Tell = quiet) -> Made:  # fmt: skip
        """The report of the job, or of a part of it (``record.scope``), as it stands. Where one that holds says the
        very same in the same form, that one is returned.

        ``paper``, ``language`` and ``units`` take the place of the job's own; ``tell`` is told how far it is
        (``progress``). Raises ``Refused`` (``scope_unknown``) for a scope that is not in the record, ``OSError``,
        ``UnreadableKey`` and what the store raises; then the number it had taken is marked failed.
        """
        with self._guard:
            lock = self._locks[job, meaning_of(scope)]
        with lock, self.shelf.holds.hold("report", held_as(job, scope)):
            scope = self.shelf.spelled(job, scope)
            asked = Asked(scope, paper, language, units)
            number = self.shelf.begin(job, scope)
            try:
                return self._make(job, number, asked, tell)
            except Refused:
                self.shelf.withdraw(job, number)
                raise
            except BaseException as reason:
                self.shelf.fail(job, number, f"{type(reason).__name__}: {reason}")
                raise

    def make_due(self, job: str) -> Made:
        """The report of the whole job, where the last one no longer says what is so: in the form it was asked for, it
        is held against what is so now, and made anew in the job's own form."""
        last = self.shelf.newest_ready(job)
        before = _read(last)
        if last is not None and before is not None:
            asked = Asked(WHOLE, before["paper"], before["language"], before["units"])
            key = self.key()
            now = self._contents(self.source.gather(job, key.fingerprint), key, last.number, asked)
            if _substance(before) == _substance(now):
                return Made(last, before, False)
        return self.make(job)

    def _make(self, job: str, number: int, asked: Asked, tell: Tell) -> Made:
        key = self.key()
        gathered = self.source.gather(job, key.fingerprint, asked.scope, part_of(tell, "gather"))
        part_of(tell, "decide")(0.0)
        contents = self._contents(gathered, key, number, asked)
        for last in self.shelf.of_scope(job, asked.scope):
            before = _read(last)
            if before is None or says(before) != says(contents):
                contents["supersedes"] = last.number
                break
            if _substance(before) == _substance(contents):
                self.shelf.withdraw(job, number)
                return Made(last, before, False)
        sealed = self._write(job, contents, gathered, key, tell)
        try:
            shelved = self.shelf.finish(
                job, number, sealed, contents_bytes(contents), contents_digest(contents), gathered.up_to,
                told_of(contents),
            )  # fmt: skip
        finally:
            sealed.unlink(missing_ok=True)
        return Made(shelved, contents, True)

    def _contents(self, gathered: Gathered, key: SealKey, number: int, asked: Asked) -> dict[str, Any]:
        options = {
            "number": number,
            "issued": spell(self.clock()),
            "final": True,
            **asked._asdict(),
            "issuer": issuer(gathered.record, key.name),
            "made_with": self.made_with,
        }
        told = report_contents(
            gathered.record, gathered.people, gathered.definitions, gathered.log, gathered.photos, options
        )
        # As they are enclosed: pages list some things in the order of their names, and whoever draws them again has
        # these names in the order of the file alone.
        contents: dict[str, Any] = json.loads(contents_bytes(told))
        return contents

    def _write(self, job: str, contents: dict[str, Any], gathered: Gathered, key: SealKey, tell: Tell) -> Path:
        """The sealed PDF as a temporary file, durable, in the job's folder."""
        folder = self.shelf.work(job)
        unsealed, sealed = folder / f"{uuid4().hex}.part", folder / f"{uuid4().hex}.part"
        try:
            with open(unsealed, "wb") as out:
                laid = write_pages(contents, self.texts, self.fonts, gathered.copies.get, out,
                                   part_of(tell, "count"), part_of(tell, "lay_out"))  # fmt: skip
            part_of(tell, "seal")(0.0)
            voice = Voice(self.texts, contents["language"], contents["units"])
            paint = box_of(self.fonts, voice, key, contents["issued"])
            with open(unsealed, "rb") as source, open(sealed, "wb+") as out:
                inside = enclosures(contents_bytes(contents), gathered.signed, gathered.compiled)
                seal(source, out, key, self.clock(), laid["seal"], paint, inside, self.authority)
            synced(sealed)
        except BaseException:
            sealed.unlink(missing_ok=True)
            raise
        finally:
            unsealed.unlink(missing_ok=True)
        return sealed


def _read(last: Shelved | None) -> dict[str, Any] | None:
    """The contents of the last report; None when they or its PDF are no longer there: then it is made
    anew."""
    if last is None or last.pdf is None or last.contents_file is None or not last.pdf.is_file():
        return None
    try:
        kept: dict[str, Any] = json.loads(last.contents_file.read_bytes())
    except (OSError, ValueError):
        return None
    return kept if contents_digest(kept) == last.contents else None


def _substance(contents: dict[str, Any]) -> bytes:
    return contents_bytes(contents | dict.fromkeys(OWN))
