"""Verify a sealed report, fact by fact.

Facts: ``is_pdf``; ``sealed`` (it carries a certifying seal); ``seal_intact`` and ``container_intact`` of every
signature; ``only_allowed_changes``; ``covers_file`` (the last signature covers every byte but its own);
``nothing_appended``; ``signer_known`` (only against a fingerprint given from elsewhere); ``contents_match``
(the enclosed ``contents.json``, and one given, against the digest on every page); then those of ``entries``.
There is no single yes: a reader decides which facts they need.
"""

import hashlib
import io
import json
import re
from typing import Any, NamedTuple

from pyhanko.pdf_utils.reader import PdfFileReader

from inspect_app.evidence.enclosure import CONTENTS as CONTENTS_FILE
from inspect_app.evidence.enclosure import enclosed
from inspect_app.evidence.entries import entry_facts
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN, Fact
from inspect_app.evidence.signature import Signature, examine
from inspect_app.evidence.time_stamps import stamp_facts

CONTENTS = re.compile(r"seamwalk contents sha256 ([0-9a-f]{64})")
FINGERPRINT = re.compile(r"[0-9a-f]{64}")


class Verification(NamedTuple):
    """The facts, the signatures, and the digest of the contents that the report names (or None)."""

    facts: list[Fact]
    signatures: list[Signature]
    contents: str | None

    @property
    def failed(self) -> bool:
        """Whether any fact fails. What is not determinable has not failed, and has not held either."""
        return any(fact.status == FAILS for fact in self.facts)

    def plain(self) -> dict[str, Any]:
        """For JSON."""
        return {"facts": [fact.plain() for fact in self.facts], "contents": self.contents,
                "signatures": [one.plain() for one in self.signatures]}  # fmt: skip


def verify(data: bytes, trust: str | None = None, contents: bytes | None = None) -> Verification:
    """Verify the bytes of a report. ``trust``: SHA-256 fingerprint of the certificate expected, in
    hexadecimal (colons and blanks allowed); ``contents``: the bytes of a ``contents.json`` that lay beside it.
    Never raises for anything in the data."""
    facts: list[Fact] = []
    signatures: list[Signature] = []
    named, files = None, None
    try:
        if not data.startswith(b"%PDF-"):
            raise ValueError("not_a_pdf")
        reader = _opened(data)
        found = list(reader.embedded_signatures)
        facts.append(Fact("is_pdf", HOLDS))
        signatures = [examine(one, data) for one in found]
        named = _named(reader)
        files = _files(reader)
    except Exception as reason:  # whatever breaks the reader is the answer: not intact
        code = "not_a_pdf" if str(reason) == "not_a_pdf" else "unreadable"
        facts.append(Fact("is_pdf", FAILS, code, {"error": type(reason).__name__}))
    facts += _seals(signatures)
    facts += _coverage(signatures, data)
    facts.append(_signer(signatures, trust))
    own = (files or {}).get(CONTENTS_FILE)
    facts.append(_contents(named, own, contents))
    # Contents that are not those of the printed pages say nothing about the pages; and a report of ours whose
    # record was left out is not one that never had any.
    told = _read(own) if facts[-1].status == HOLDS else None
    facts += entry_facts({} if files is None and named else files, told)
    return Verification(facts, signatures, named)


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


def fingerprint_in(text: str) -> str | None:
    """The 64 digits that were meant, whatever blanks, colons and capitals they were typed with; None for no
    fingerprint."""
    digits = re.sub(r"[\s:]", "", text).lower()
    return digits if FINGERPRINT.fullmatch(digits) else None


def _signer(signatures: list[Signature], trust: str | None) -> Fact:
    first = signatures[0].fingerprint if signatures else None
    if trust is None:
        return Fact("signer_known", UNKNOWN, "no_fingerprint_given", {"fingerprint": first})
    wanted = fingerprint_in(trust)
    if wanted is None:
        return Fact("signer_known", FAILS, "not_a_fingerprint", {"given": trust[:100]})
    if first == wanted and signatures[0].intact:
        return Fact("signer_known", HOLDS, None, {"fingerprint": first})
    return Fact("signer_known", FAILS, "other_signer", {"fingerprint": first, "given": wanted})


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


def _read(contents: bytes | None) -> dict[str, Any] | None:
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
