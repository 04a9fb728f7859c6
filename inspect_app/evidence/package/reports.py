"""The reports of a package, each verified by itself, and what they show together.

Facts: ``reports_complete`` (each is the one that its file is named after, alone under its number, is of this package's
job, and whichever a report supersedes is here too, or was countersigned; a number that is left out below the highest
may be of a report that was never finished, and a countersignature that the server does not state may be one of this
moment: then it is not determinable); ``countersignatures_there`` of ``countersigned``, by the package's own statements
and those that its reports enclose; and ``reports_hold`` (every fact of every report).
"""

from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import Any, NamedTuple

from inspect_app.entry.jwk import Jwk
from inspect_app.evidence.countersigned import countersigned, countersigned_fact, statements_in
from inspect_app.evidence.enclosure import ENROLMENTS, RECEIPTS
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN, Fact
from inspect_app.evidence.package.known import Known
from inspect_app.evidence.package.log import Receipt, Witness, receipts_in
from inspect_app.evidence.package.names import REPORT
from inspect_app.evidence.verify import Looked, Verification, look

HOLD, COMPLETE = "reports_hold", "reports_complete"
More = Callable[[bytes, Looked], Iterable[Fact]]


class ReportFound(NamedTuple):
    """One report of a package: its ``file``, what verification finds, what it encloses of the package's own server:
    ``receipts`` and the other ``statements``, as payloads; and of its contents, where they are those of its pages (then
    it is ``told``), ``number``, ``supersedes``, ``job`` and ``kind``."""

    file: str
    verification: Verification
    receipts: list[Receipt] = []
    statements: list[Any] = []
    told: bool = False
    number: Any = None
    supersedes: Any = None
    job: Any = None
    kind: Any = None

    def plain(self) -> dict[str, Any]:
        """For JSON."""
        return {"file": self.file, **self.verification.plain()}


def report_found(
    file: str, data: bytes, trust: Sequence[str], server_key: Jwk | None, more: More = lambda data, looked: ()
) -> ReportFound:
    """Verify one. ``more(data, looked)``: further facts of it. Never raises for anything in the data."""
    looked = look(data, trust)
    verification, files = looked.verification.further(more(data, looked)), looked.files
    plain = ReportFound(file, verification)
    if server_key is not None:
        plain = plain._replace(
            receipts=receipts_in(files.get(RECEIPTS, b"").split(b"\n"), server_key),
            statements=[dict(one) for one in statements_in(files.get(ENROLMENTS, b"").split(b"\n"), server_key)],
        )  # fmt: skip
    told = looked.told
    if told is None:
        return plain
    job = told.get("job")
    of = job.get("id") if isinstance(job, dict) else None
    return plain._replace(told=True, number=told.get("number"), supersedes=told.get("supersedes"), job=of,
                          kind=told.get("kind"))  # fmt: skip


def report_facts(
    reports: Sequence[ReportFound], known: Known, digests: Mapping[str, str], page: Mapping[str, Any]
) -> list[Fact]:
    """The facts above. ``digests``: the SHA-256 found of each file; ``page``: what ``package.json`` says."""
    about = {"count": len(reports)}
    stated = [*known.statements, *(said for one in reports for said in one.statements)]
    prints = {int(match[1]): digests.get(one.file, "") for one in reports if (match := REPORT.fullmatch(one.file))}
    signed = countersigned(stated, known.job)
    complete = _misplaced(reports, known, about) or _left_out(reports, signed, page, about)
    return [complete, countersigned_fact(stated, known.job, prints), _hold(reports, about)]


def witness(report: ReportFound) -> Witness:
    """What it shows of how far the log reached."""
    return Witness(report.file, report.receipts, inside=True, statements=report.statements)


def _hold(reports: Sequence[ReportFound], about: dict[str, Any]) -> Fact:
    for status in (FAILS, UNKNOWN):
        found = [(one.file, fact.name) for one in reports for fact in one.verification.facts if fact.status == status]
        if found:
            files = sorted({file for file, _ in found})
            named = {"faults": len(files), "files": files, "file": found[0][0], "fact": found[0][1]}
            return Fact(HOLD, status, "report_fact", about | named)
    return Fact(HOLD, HOLDS, None, about)


def _misplaced(reports: Sequence[ReportFound], known: Known, about: dict[str, Any]) -> Fact | None:
    """The first report that is not what its name says, or stands beside another of its number."""
    numbers: set[int] = set()
    for one in reports:
        match = REPORT.fullmatch(one.file)
        number = int(match[1]) if match else None
        if number is not None and number in numbers:
            return Fact(COMPLETE, FAILS, "report_twice", about | {"file": one.file, "number": number})
        numbers |= {number} if number is not None else set()
        if not one.told:
            continue  # that its contents do not read is told of it already
        if number is None or type(one.number) is not int or one.number != number:
            return Fact(COMPLETE, FAILS, "report_misnamed", about | {"file": one.file, "number": str(one.number)})
        if match and one.kind is not None and match[2] != one.kind:
            return Fact(COMPLETE, FAILS, "report_of_another_kind", about | {"file": one.file, "kind": str(one.kind)})
        if known.job is not None and one.job != known.job:
            return Fact(COMPLETE, FAILS, "report_of_another_job", about | {"file": one.file})
    return None


def _left_out(
    reports: Sequence[ReportFound], signed: Mapping[int, Sequence[Mapping[str, Any]]], page: Mapping[str, Any],
    about: dict[str, Any],
) -> Fact:  # fmt: skip
    here = {int(match[1]): one for one in reports if (match := REPORT.fullmatch(one.file))}
    for one in reports:
        old = one.supersedes
        if old is not None and not (type(old) is int and old in here):
            return Fact(COMPLETE, FAILS, "report_missing", about | {"file": one.file, "number": str(old)})
    gone = sorted(signed.keys() - here.keys())
    if gone:
        named = {"number": gone[0], "name": str(signed[gone[0]][-1]["name"])}
        return Fact(COMPLETE, FAILS, "countersigned_missing", about | named)
    lacking = page.get("missing_reports")
    wanted = {one for one in (lacking if isinstance(lacking, list) else []) if type(one) is int} - here.keys()
    # The first that is left out below the highest; a number may have nine digits, so that none is counted up to.
    wanted |= {at for at, number in enumerate(sorted(here), 1) if number != at and at not in here}
    if wanted:
        return Fact(COMPLETE, UNKNOWN, "number_left_out", about | {"number": min(wanted)})
    for number, one in sorted(here.items()):
        if len(one.verification.signatures) > 1 and number not in signed:
            last = one.verification.signatures[-1].name
            return Fact(COMPLETE, UNKNOWN, "countersignature_unstated", about | {"file": one.file, "name": last or ""})
    return Fact(COMPLETE, HOLDS, None, about)
