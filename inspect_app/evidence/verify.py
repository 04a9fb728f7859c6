"""Verify a sealed report, fact by fact.

Facts: ``is_pdf``; ``sealed`` (it carries a certifying seal); ``seal_intact`` and ``container_intact`` of every
signature; ``only_allowed_changes``; ``covers_file`` (the last signature covers every byte but its own);
``nothing_appended``; ``signer_known``, ``server_known`` and ``authority_known`` of ``trust`` (only against what was
given from elsewhere); ``contents_match`` (the enclosed ``contents.json``, and one given, against the digest on every
page); then those of ``entries``. There is no single yes: a reader decides which facts they need.
"""

import hashlib
import io
import json
import re
from collections.abc import Iterable, Sequence
from typing import Any, NamedTuple

from pyhanko.pdf_utils.reader import PdfFileReader

from inspect_app.evidence.enclosure import CONTENTS as CONTENTS_FILE
from inspect_app.evidence.enclosure import SERVER_KEY, enclosed
from inspect_app.evidence.entries import facts_and_record
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN, Fact
from inspect_app.evidence.signature import Signature, examine
from inspect_app.evidence.signed_record import SignedRecord
from inspect_app.evidence.time_stamps import stamp_facts
from inspect_app.evidence.trust import authority_fact, countersigner_fact, key_print, server_fact, signer_fact

CONTENTS = re.compile(r"seamwalk contents sha256 ([0-9a-f]{64})")
READS = "is_pdf"


class Verification(NamedTuple):
    """The facts, the signatures, and the digest of the contents that the report names (or None)."""

    facts: list[Fact]
    signatures: list[Signature]
    contents: str | None

    @property
    def failed(self) -> bool:
        """Whether any fact fails. What is not determinable has not failed, and has not held either."""
        return any(fact.status == FAILS for fact in self.facts)

    def further(self, facts: Iterable[Fact]) -> "Verification":
        """With these facts after the others."""
        return self._replace(facts=[*self.facts, *facts])

    def plain(self) -> dict[str, Any]:
        """For JSON."""
        return {"facts": [fact.plain() for fact in self.facts], "contents": self.contents,
                "signatures": [one.plain() for one in self.signatures]}  # fmt: skip


class Looked(NamedTuple):
    """What was found in a report: the ``verification``; the enclosed ``files`` that read; ``told``, its contents where
    they are those of its pages; the signed ``record``; each None where it does not read."""

    verification: Verification
    files: dict[str, bytes]
    told: dict[str, Any] | None
    record: SignedRecord | None


def verify(data: bytes, trust: str | Sequence[str] | None = None, contents: bytes | None = None) -> Verification:
    """Verify the bytes of a report. ``trust``: fingerprints of the seal, the server and the time authority expected
    (``trust``), one or several; ``contents``: the bytes of a ``contents.json`` that lay beside it. Never raises for
    anything in the data."""
    return look(data, trust, contents).verification


def look(data: bytes, trust: str | Sequence[str] | None = None, contents: bytes | None = None) -> Looked:
    """As ``verify``, with what the facts were found from."""
    given = [trust] if isinstance(trust, str) else list(trust or ())
    facts: list[Fact] = []
    signatures: list[Signature] = []
    named, files = None, None
    try:
        if not data.startswith(b"%PDF-"):
            raise ValueError("not_a_pdf")
        reader = _opened(data)
        found = list(reader.embedded_signatures)
        facts.append(Fact(READS, HOLDS))
        signatures = [examine(one, data) for one in found]
        named = _named(reader)
        files = _files(reader)
    except Exception as reason:  # whatever breaks the reader is the answer: not intact
        code = "not_a_pdf" if str(reason) == "not_a_pdf" else "unreadable"
        facts = [Fact(READS, FAILS, code, {"error": type(reason).__name__})]
    seal = [*_seals(signatures), *_coverage(signatures, data)]
    # Of what does not read at all nothing is known; it is not that there is no seal.
    unread = not signatures and facts[0].status == FAILS
    facts += [Fact(fact.name, UNKNOWN, "unread") for fact in seal] if unread else seal
    own = (files or {}).get(CONTENTS_FILE)
    matching = _contents(named, own, contents)
    # Contents that are not those of the printed pages say nothing about the pages; and a report of ours whose
    # record was left out is not one that never had any.
    told = read_contents(own) if matching.status == HOLDS else None
    facts_of_record, record = facts_and_record({} if files is None and named else files, told)
    whose = _whose(signatures, facts_of_record, files or {}, given)
    facts += [Fact(fact.name, UNKNOWN, "unread") for fact in whose] if unread else whose
    facts += [matching, *facts_of_record]
    return Looked(Verification(facts, signatures, named), files or {}, told, record)


def enclosed_in(data: bytes) -> dict[str, bytes]:
    """The enclosed files that read, of a report of any standing; none of what is no report."""
    try:
        return _files(_opened(data)) or {}
    except Exception:  # as in ``verify``
        return {}


def _opened(data: bytes) -> PdfFileReader:
    """A strict reader where one can be had, else one that repairs, to say what is wrong with the file."""
    try:
        reader = PdfFileReader(io.BytesIO(data))
        if not reader.xrefs.hybrid_xrefs_present:
            list(reader.embedded_signatures)
            return reader
    except Exception:  # whatever a strict reader refuses
        pass
    return PdfFileReader(io.BytesIO(data), strict=False)


def _seals(signatures: list[Signature]) -> list[Fact]:
    certifying = bool(signatures) and signatures[0].certifies
    facts = [
        Fact(
            "sealed",
            HOLDS if certifying else FAILS,
            None if certifying else "no_seal",
            {"count": len(signatures)},
        )
    ]
    if not signatures:
        return [*facts, Fact("seal_intact", FAILS, "no_seal"), Fact("container_intact", FAILS, "no_seal"),
                Fact("only_allowed_changes", FAILS, "no_seal")]  # fmt: skip
    for name, attribute in (
        ("seal_intact", "intact"),
        ("container_intact", "container"),
        ("only_allowed_changes", "allowed"),
    ):
        for one in signatures:
            state = getattr(one, attribute)
            status = HOLDS if state else UNKNOWN if state is None else FAILS
            reason = None if status == HOLDS else (one.reasons[0] if one.reasons else "changed")
            facts.append(Fact(name, status, reason, {"field": one.field}))
    return facts


def _coverage(signatures: list[Signature], data: bytes) -> list[Fact]:
    if not signatures:
        return [Fact("covers_file", FAILS, "no_seal"), Fact("nothing_appended", FAILS, "no_seal"),
                *stamp_facts([])]  # fmt: skip
    last = signatures[-1]
    whole = last.whole_file and last.intact is True
    covers = Fact("covers_file", HOLDS if whole else FAILS, None if whole else "not_whole_file", {"field": last.field})
    appended = (
        Fact("nothing_appended", HOLDS)
        if last.whole_file
        else Fact("nothing_appended", FAILS, "bytes_after", {"size": len(data)})
    )
    return [covers, appended, *stamp_facts(signatures)]


def _whose(
    signatures: list[Signature], record: list[Fact], files: dict[str, bytes], given: Sequence[str]
) -> list[Fact]:
    first = signatures[0].fingerprint if signatures else None
    server = key_print(files.get(SERVER_KEY, b""))
    stamped = [(one.field, one.stamp) for one in signatures if one.stamp is not None]
    authorities = [stamp.fingerprint for _, stamp in stamped]
    signer = signer_fact(first, bool(signatures) and signatures[0].intact is True, given, [server, *authorities])
    printed = any(fact.name == "heads_match" and fact.status == HOLDS for fact in record)
    seals = [*(one.fingerprint for one in signatures), *authorities]
    further = [countersigner_fact(one.field, one.name, one.fingerprint, one.intact is True, given)
               for one in signatures[1:]]  # fmt: skip
    return [signer, *further, server_fact(server, given, seals, signer.status == HOLDS and printed),
            *(authority_fact(field, stamp, given) for field, stamp in stamped)]  # fmt: skip


def _contents(named: str | None, own: bytes | None, given: bytes | None) -> Fact:
    every = [one for one in (own, given) if one is not None]
    if not every:
        return Fact("contents_match", UNKNOWN, "no_contents_given", {"named": named})
    found = [hashlib.sha256(one).hexdigest() for one in every]
    if named is None:
        return Fact("contents_match", FAILS, "no_digest_named", {"found": found[0]})
    other = next((one for one in found if one != named), None)
    if other:
        return Fact("contents_match", FAILS, "other_contents", {"named": named, "found": other})
    return Fact("contents_match", HOLDS, None, {"named": named, "found": named})


def _files(reader: PdfFileReader) -> dict[str, bytes] | None:
    try:
        return enclosed(reader)
    except Exception:  # damaged, doubled or packed in another way: there are files, and none that can be read
        return {}


def read_contents(contents: bytes | None) -> dict[str, Any] | None:
    """The enclosed ``contents.json`` as an object, None for anything else."""
    try:
        told = json.loads(contents or b"")
    except (ValueError, RecursionError, MemoryError):  # no JSON, nested without end, or too wide to hold
        return None
    return told if isinstance(told, dict) else None


def _named(reader: PdfFileReader) -> str | None:
    try:
        found = CONTENTS.fullmatch(str(reader.trailer_view["/Info"]["/Subject"]))
    except Exception:  # no such entry, or a damaged one
        return None
    return found[1] if found else None
