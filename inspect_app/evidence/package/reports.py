"""The reports of a package, each verified by itself, and what they show together.

Facts: ``reports_hold`` (every fact of every report) and ``reports_complete`` (each is the one that its file is named
after, is of this package's job and server, and whichever a report supersedes is here too).
"""

from collections.abc import Sequence
from typing import Any, NamedTuple

from inspect_app.entry.jwk import Jwk
from inspect_app.evidence.enclosure import CONTENTS, RECEIPTS
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN, Fact
from inspect_app.evidence.package.known import Known
from inspect_app.evidence.package.log import Receipt, Witness, receipts_in
from inspect_app.evidence.package.names import REPORT
from inspect_app.evidence.verify import Verification, read_contents, verify_with_files

HOLD, COMPLETE = "reports_hold", "reports_complete"


class ReportFound(NamedTuple):
    """One report of a package: its ``file``, what verification finds, the receipts that it encloses by the package's
    own server, and of its contents, where they are those of its pages, ``number``, ``supersedes`` and ``job``."""

    file: str
    verification: Verification
    receipts: list[Receipt]
    number: Any = None
    supersedes: Any = None
    job: Any = None

    def plain(self) -> dict[str, Any]:
        """For JSON."""
        return {"file": self.file, **self.verification.plain()}


def report_found(file: str, data: bytes, trust: Sequence[str], server_key: Jwk | None) -> ReportFound:
    """Verify one. Never raises for anything in the data."""
    verification, files = verify_with_files(data, trust)
    lines = files.get(RECEIPTS, b"").split(b"\n")
    receipts = receipts_in(lines, server_key) if server_key is not None else []
    told = read_contents(files.get(CONTENTS)) if _holds(verification, "contents_match") else None
    if told is None:
        return ReportFound(file, verification, receipts)
    job = told.get("job")
    return ReportFound(file, verification, receipts, told.get("number"), told.get("supersedes"),
                       job.get("id") if isinstance(job, dict) else None)  # fmt: skip


def report_facts(reports: Sequence[ReportFound], known: Known) -> list[Fact]:
    """Both facts; without any report there is nothing that could be otherwise."""
    about = {"count": len(reports)}
    return [_hold(reports, about), _complete(reports, known, about)]


def witness(report: ReportFound) -> Witness:
    """What it shows of how far the log reached."""
    return Witness(report.file, report.receipts)


def _hold(reports: Sequence[ReportFound], about: dict[str, Any]) -> Fact:
    for status in (FAILS, UNKNOWN):
        found = [(one.file, fact.name) for one in reports for fact in one.verification.facts if fact.status == status]
        if found:
            files = sorted({file for file, _ in found})
            named = {"faults": len(files), "files": files, "file": found[0][0], "fact": found[0][1]}
            return Fact(HOLD, status, "report_fact", about | named)
    return Fact(HOLD, HOLDS, None, about)


def _complete(reports: Sequence[ReportFound], known: Known, about: dict[str, Any]) -> Fact:
    numbers = {int(match[1]) for one in reports if (match := REPORT.fullmatch(one.file))}
    for one in reports:
        if one.number is None:
            continue  # that its contents do not read is told of it already
        match = REPORT.fullmatch(one.file)
        if match is None or one.number != int(match[1]):
            return Fact(COMPLETE, FAILS, "report_misnamed", about | {"file": one.file, "number": one.number})
        if known.job is not None and one.job != known.job:
            return Fact(COMPLETE, FAILS, "report_of_another_job", about | {"file": one.file})
        if one.supersedes is not None and one.supersedes not in numbers:
            return Fact(COMPLETE, FAILS, "report_missing", about | {"file": one.file, "number": one.supersedes})
    return Fact(COMPLETE, HOLDS, None, about)


def _holds(verification: Verification, name: str) -> bool:
    return any(fact.name == name and fact.status == HOLDS for fact in verification.facts)
