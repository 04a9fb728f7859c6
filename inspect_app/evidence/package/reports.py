"""The reports of a package, each verified by itself, and what they show together.

Facts: ``reports_complete`` (each is the one that its file is named after, is of this package's job, and whichever a
report supersedes is here too); ``countersignatures_there`` of ``countersigned``, by the package's own statements and
those that its reports enclose; and ``reports_hold`` (every fact of every report).
"""

from collections.abc import Mapping, Sequence
from typing import Any, NamedTuple

from inspect_app.entry.jwk import Jwk
from inspect_app.evidence.countersigned import countersignatures_in, countersigned_fact
from inspect_app.evidence.enclosure import CONTENTS, ENROLMENTS, RECEIPTS
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN, Fact
from inspect_app.evidence.package.known import Known
from inspect_app.evidence.package.log import Receipt, Witness, receipts_in
from inspect_app.evidence.package.names import REPORT
from inspect_app.evidence.verify import Verification, read_contents, verify_with_files

HOLD, COMPLETE = "reports_hold", "reports_complete"


class ReportFound(NamedTuple):
    """One report of a package: its ``file``, what verification finds, what it encloses of the package's own server:
    ``receipts`` and the ``countersigned`` that are stated; and of its contents, where they are those of its pages,
    ``number``, ``supersedes`` and ``job``."""

    file: str
    verification: Verification
    receipts: list[Receipt] = []
    countersigned: list[Any] = []
    number: Any = None
    supersedes: Any = None
    job: Any = None

    def plain(self) -> dict[str, Any]:
        """For JSON."""
        return {"file": self.file, **self.verification.plain()}


def report_found(file: str, data: bytes, trust: Sequence[str], server_key: Jwk | None) -> ReportFound:
    """Verify one. Never raises for anything in the data."""
    verification, files = verify_with_files(data, trust)
    plain = ReportFound(file, verification)
    if server_key is not None:
        plain = plain._replace(
            receipts=receipts_in(files.get(RECEIPTS, b"").split(b"\n"), server_key),
            countersigned=[dict(one) for one in
                           countersignatures_in(files.get(ENROLMENTS, b"").split(b"\n"), server_key)],
        )  # fmt: skip
    told = read_contents(files.get(CONTENTS)) if _holds(verification, "contents_match") else None
    if told is None:
        return plain
    job = told.get("job")
    of = job.get("id") if isinstance(job, dict) else None
    return plain._replace(number=told.get("number"), supersedes=told.get("supersedes"), job=of)


def report_facts(reports: Sequence[ReportFound], known: Known, digests: Mapping[str, str]) -> list[Fact]:
    """The facts above; without any report there is nothing that could be otherwise. ``digests``: the SHA-256 found of
    each file."""
    about = {"count": len(reports)}
    stated = [*known.statements, *(said for one in reports for said in one.countersigned)]
    prints = {int(match[1]): digests.get(one.file, "") for one in reports if (match := REPORT.fullmatch(one.file))}
    return [_complete(reports, known, about), countersigned_fact(stated, known.job, prints), _hold(reports, about)]


def witness(report: ReportFound) -> Witness:
    """What it shows of how far the log reached."""
    return Witness(report.file, report.receipts, inside=True)


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
