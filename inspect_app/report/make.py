"""Make one job's report, end to end: gather, decide, lay out, seal, shelve."""

import json
import threading
from collections import defaultdict
from collections.abc import Callable
from pathlib import Path
from typing import Any, NamedTuple
from uuid import uuid4

from inspect_app.clock import Clock, spell
from inspect_app.evidence.enclosure import enclosures
from inspect_app.report.contents import contents_bytes, contents_digest, report_contents
from inspect_app.report.pages import write_pages
from inspect_app.report.pages.voice import Texts, Voice
from inspect_app.report.seal import paint_seal, seal
from inspect_app.report.seal_key import SealKey
from inspect_app.report.shelf import Shelf, Shelved, synced
from inspect_app.report.source import Gathered, Source

ISSUERS = ("issuer", "inspection", "contractor", "installer")  # whose report it is: the first party there is
OWN = ("number", "issued", "supersedes")  # what differs between two reports that say the same


class Made(NamedTuple):
    """A report that is ready: where it stands, its contents, and whether it is ``new`` or said all before."""

    shelved: Shelved
    contents: dict[str, Any]
    new: bool


class Maker:
    """Makes reports; one at a time for each job, from any thread that has an app context."""

    def __init__(
        self,
        source: Source,
        shelf: Shelf,
        texts: Texts,
        fonts: Path,
        key: Callable[[], SealKey],
        clock: Clock,
    ) -> None:
        self.source, self.shelf, self.texts, self.fonts = source, shelf, texts, fonts
        self.key, self.clock = key, clock
        self._guard = threading.Lock()
        self._locks: dict[str, threading.Lock] = defaultdict(threading.Lock)

    def make(self, job: str, paper: str | None = None, language: str | None = None) -> Made:
        """The report of the job as it stands. Where the last one says the very same, that one is returned.

        ``paper`` and ``language`` take the place of the job's own. Raises ``OSError``, ``UnreadableKey`` and
        what the store raises; then the number it had taken is marked failed.
        """
        with self._guard:
            lock = self._locks[job]
        with lock:
            number = self.shelf.begin(job)
            try:
                return self._make(job, number, paper, language)
            except BaseException as reason:
                self.shelf.fail(job, number, f"{type(reason).__name__}: {reason}")
                raise

    def _make(self, job: str, number: int, paper: str | None, language: str | None) -> Made:
        key = self.key()
        now = self.clock()
        last = self.shelf.newest_ready(job)
        gathered = self.source.gather(job, key.fingerprint)
        options = {
            "number": number,
            "issued": spell(now),
            "supersedes": last.number if last else None,
            "final": True,
            "paper": paper,
            "language": language,
            "issuer": _issuer(gathered, key),
        }
        contents = report_contents(
            gathered.record, gathered.people, gathered.definitions, gathered.log, gathered.photos, options
        )
        before = _read(last)
        if last is not None and before is not None and _substance(before) == _substance(contents):
            self.shelf.withdraw(job, number)
            return Made(last, before, False)
        sealed = self._write(job, contents, gathered, key)
        try:
            shelved = self.shelf.finish(
                job, number, sealed, contents_bytes(contents), contents_digest(contents), gathered.up_to
            )
        finally:
            sealed.unlink(missing_ok=True)
        return Made(shelved, contents, True)

    def _write(self, job: str, contents: dict[str, Any], gathered: Gathered, key: SealKey) -> Path:
        """The sealed PDF as a temporary file, durable, in the job's folder."""
        folder = self.shelf.work(job)
        unsealed, sealed = folder / f"{uuid4().hex}.part", folder / f"{uuid4().hex}.part"
        try:
            with open(unsealed, "wb") as out:
                laid = write_pages(contents, self.texts, self.fonts, gathered.copies.get, out)
            voice = Voice(self.texts, contents["language"], contents["units"])
            paint = paint_seal(
                self.fonts,
                key.name,
                voice.say("seal_says_by"),
                voice.moment(contents["issued"]),
                voice.say("seal_print"),
                key.fingerprint,
            )
            with open(unsealed, "rb") as source, open(sealed, "wb+") as out:
                inside = enclosures(contents_bytes(contents), gathered.signed)
                seal(source, out, key, self.clock(), laid["seal"], paint, inside)
            synced(sealed)
        except BaseException:
            sealed.unlink(missing_ok=True)
            raise
        finally:
            unsealed.unlink(missing_ok=True)
        return sealed


def _issuer(gathered: Gathered, key: SealKey) -> str:
    parties = (gathered.record["job"] or {}).get("parties") or []
    for role in ISSUERS:
        for party in parties:
            if party.get("role") == role and party.get("name"):
                return str(party["name"])
    return key.name


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
