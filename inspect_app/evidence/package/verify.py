"""Verify an evidence package, fact by fact: what was found in it, put beside what its record says.

Facts, in this order: ``package_readable``; ``archive_sound`` (of a zip alone: ``archive``); ``bag_complete`` and
``bag_matches`` of ``bag``; ``record_enclosed``; ``server_known`` of ``trust``; those of ``signed_record`` but verdicts;
``log_not_cut`` of ``log``; ``photos_match`` and ``photos_complete`` of ``photos``; ``definitions_match`` of
``definitions``; ``verdicts_recompute``; ``draw_recomputes`` of ``draws``; ``package_says`` of ``says``;
``reports_complete``, ``countersignatures_there`` and ``reports_hold`` of ``reports``, whose own facts stand beside
them, report by report.
"""

from collections.abc import Mapping, Sequence
from typing import Any, NamedTuple

from inspect_app.evidence.draws import NAME as DRAWS
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN, Fact
from inspect_app.evidence.package.bag import bag_facts
from inspect_app.evidence.package.definitions import NAME as DEFINITIONS
from inspect_app.evidence.package.definitions import definitions_fact
from inspect_app.evidence.package.known import ENCLOSED, Known
from inspect_app.evidence.package.log import NAME as LOG
from inspect_app.evidence.package.log import Witness, log_fact
from inspect_app.evidence.package.names import NEEDED, PAGE, Strange
from inspect_app.evidence.package.photos import COMPLETE, MATCH, photo_facts
from inspect_app.evidence.package.reports import ReportFound, report_facts, witness
from inspect_app.evidence.package.says import package_fact, package_page
from inspect_app.evidence.signed_record import OWN, VERDICTS
from inspect_app.evidence.trust import key_print, server_fact

READS, ARCHIVE = "package_readable", "archive_sound"


class Found(NamedTuple):
    """What was found in a package. ``sizes`` and ``digests`` (SHA-256, hexadecimal) of its plain files; ``strange``:
    whatever else stands there; ``texts``: the bytes of the bag's own files, of ``package.json``, ``keys.json`` and the
    token files; ``archive``: faults of the archive ``(name, code)``, None for a folder; ``no_archive``: why it has no
    directory that reads; ``firsts``: the first bytes of its photos."""

    sizes: Mapping[str, int]
    digests: Mapping[str, str]
    strange: Sequence[Strange]
    texts: Mapping[str, bytes]
    archive: Sequence[tuple[str, str]] | None = None
    no_archive: str | None = None
    firsts: Mapping[str, bytes] = {}


class PackageVerification(NamedTuple):
    """The facts; ``reports`` with their own; ``page``: SHA-256 of ``verify.html``, which is no evidence; ``server``:
    the fingerprint of its key."""

    facts: list[Fact]
    reports: list[ReportFound]
    page: str | None
    server: str | None

    @property
    def failed(self) -> bool:
        """Whether any fact fails, of a report too."""
        return any(fact.status == FAILS for fact in self.facts)

    def plain(self) -> dict[str, Any]:
        """For JSON."""
        return {"facts": [fact.plain() for fact in self.facts], "reports": [one.plain() for one in self.reports],
                "page": self.page, "server": self.server}  # fmt: skip


def verify_package(
    found: Found, known: Known, reports: Sequence[ReportFound], trust: Sequence[str], later: Sequence[Witness] = ()
) -> PackageVerification:
    """``known``: ``known_from`` the texts; ``trust``: fingerprints that were expected; ``later``: receipts that were
    kept elsewhere. Never raises for anything in the package."""
    readable = _readable(found)
    facts = [readable] if found.archive is None else [readable, _archive(found)]
    facts += bag_facts(found.sizes, found.strange, found.digests, found.texts)
    server = key_print(found.texts.get("data/server-key.json", b"")) if known.kid else None
    facts += [known.facts[ENCLOSED], _server(server, reports, trust, package_page(found.texts) or {})]
    facts += [known.facts[name] for name in OWN if name != VERDICTS]
    facts += _of_the_record(found, known, [*map(witness, reports), *later])
    facts.append(package_fact(found.texts, found.sizes, known))
    facts += report_facts(reports, known, found.digests, package_page(found.texts) or {})
    if found.no_archive is not None or found.sizes.keys().isdisjoint(NEEDED):
        # Of what does not read at all nothing is known; it is not that something was taken out.
        packed = [fact for fact in facts if fact.name == ARCHIVE and fact.status == FAILS]
        facts = [readable, *packed, *(Fact(fact.name, UNKNOWN, "unread") for fact in facts[1:] if fact not in packed)]
    return PackageVerification(facts, list(reports), found.digests.get(PAGE), server)


def _readable(found: Found) -> Fact:
    if found.no_archive is not None:
        return Fact(READS, FAILS, "no_archive", {"code": found.no_archive})
    told = package_page(found.texts)
    return Fact(READS, HOLDS, None, {"made": told.get("made")}) if told else Fact(READS, FAILS, "no_package")


def _archive(found: Found) -> Fact:
    faults = sorted(found.archive or ())
    if not faults:
        return Fact(ARCHIVE, HOLDS, None, {"count": len(found.sizes)})
    named = [{"file": name, "code": code} for name, code in faults[:20]]
    first = {"file": faults[0][0], "code": faults[0][1]}
    return Fact(ARCHIVE, FAILS, "not_plain", {"faults": len(faults), "files": named} | first)


def _server(
    server: str | None, reports: Sequence[ReportFound], trust: Sequence[str], page: Mapping[str, Any]
) -> Fact:
    signatures = [one for report in reports for one in report.verification.signatures]
    seals: list[str | None] = [one.fingerprint for one in signatures]
    seals += [one.stamp.fingerprint for one in signatures if one.stamp is not None]
    if not reports:  # no seal is here to compare: who has the seal's fingerprint alone knows nothing of the server
        seals.append(str(page.get("seal_fingerprint")))
    vouched = any(
        fact.status == HOLDS and fact.name == "server_known" and fact.about.get("fingerprint") == server
        for report in reports for fact in report.verification.facts
    )  # fmt: skip
    return server_fact(server, trust, seals, vouched)


def _of_the_record(found: Found, known: Known, witnesses: Sequence[Witness]) -> list[Fact]:
    verdicts, draw = known.facts[VERDICTS], known.facts[DRAWS]
    if known.facts[ENCLOSED].status != HOLDS:
        unread = [Fact(name, UNKNOWN, "unreadable_record") for name in (LOG, MATCH, COMPLETE, DEFINITIONS)]
        return [*unread, verdicts, draw]
    return [
        log_fact(known.receipts, witnesses, known.statements),
        *photo_facts(found.digests, found.sizes, known.named, known.photos, found.firsts),
        definitions_fact(found.digests, known.definitions),
        verdicts,
        draw,
    ]
