"""Decide again, from the enclosed entries, all that a report says.

Fact ``contents_follow``: the code that decides what a report says, given the enclosed entries, people and checklists
and the number, moment, paper, language, units and scope that the report states, gives the very contents that it
encloses, byte for byte: every note, caption, reading and figure. Three things are taken as stated, since no entry tells
them: what picture files say of themselves (``pictures_follow``), that a photo was lost after its receipt, and how many
entries are kept apart. Where another release made the report and the two differ, it is not determinable which of them
is why.
"""

import hashlib
import json
from collections.abc import Mapping
from typing import Any

from inspect_app.again.differ import Difference, about, differences, shortened
from inspect_app.again.stated import apart_stated, held_by_receipts, pictures_stated
from inspect_app.evidence.enclosure import CONTENTS
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN, Fact
from inspect_app.evidence.scope_told import scope_of
from inspect_app.evidence.signed_record import SignedRecord, people_in, photos_received
from inspect_app.evidence.verify import Looked
from inspect_app.record.scope import narrowed
from inspect_app.report.basis import definitions_named, issuer, log_told, photos_named
from inspect_app.report.contents import contents_bytes, report_contents

NAME = "contents_follow"
FORM = 1  # of the contents, as this release makes them
STATED = ("number", "issued", "supersedes", "language", "units", "paper", "made_with")


def contents_fact(looked: Looked, ours: Mapping[str, str], here: Mapping[str, Any]) -> Fact:
    """The fact above. ``ours``: this release (``report.release``); ``here``: the ``checklists``. Never raises for
    anything in the report."""
    told, record = looked.told, looked.record
    if told is None or record is None:
        return Fact(NAME, UNKNOWN, "no_record")
    if told.get("v") != FORM:
        return Fact(NAME, UNKNOWN, "other_form", {"form": shortened(told.get("v"))})
    release = version_of(told)
    try:
        # What the report lacked it names, and nobody held it to that: of those it had, each must be here.
        had = {one["digest"] for one in told["hashes"]["definitions"]}
        wanted = [digest for digest in definitions_named(record.folded) if digest in had]
        if gone := [digest for digest in wanted if digest not in here]:
            return Fact(NAME, UNKNOWN, "checklist_gone", {"count": len(gone), "digest": gone[0]})
        made = contents_bytes(_made(told, record, {one: here[one] for one in wanted}, looked))
        differ = about(differences(told, json.loads(made)))
    except Exception as reason:  # contents of any other shape, entries that cannot be folded; or no room here
        status = UNKNOWN if isinstance(reason, (MemoryError, OSError)) else _unlike(told, ours)[0]
        return Fact(NAME, status, "cannot_be_made", {"error": type(reason).__name__, "version": release})
    if differ is None and looked.files[CONTENTS] != made:
        # The same to us, and perhaps not to another reader: a name that stands twice, say, with two values.
        digests = (hashlib.sha256(one).hexdigest() for one in (looked.files[CONTENTS], made))
        differ = about([Difference(CONTENTS, *digests)])
    if differ is None:
        return Fact(NAME, HOLDS, None, {"photos": len(told["photos"])})
    return Fact(NAME, *_unlike(told, ours), differ | {"version": release})


def version_of(told: Mapping[str, Any]) -> str:
    """The release that a report names, for people."""
    made = told.get("made_with")
    version = made.get("version") if isinstance(made, dict) else None
    return version[:20] if isinstance(version, str) else "?"


def _unlike(told: Mapping[str, Any], ours: Mapping[str, str]) -> tuple[str, str]:
    made = told.get("made_with")
    same = isinstance(made, dict) and made.get("contents") == ours["contents"]
    return (FAILS, "comes_out_otherwise") if same else (UNKNOWN, "other_release")


def _made(told: Mapping[str, Any], record: SignedRecord, definitions: dict[str, Any], looked: Looked) -> dict[str, Any]:
    folded, people = dict(record.folded), people_in(record.tokens)
    scope, received, stated = scope_of(told), photos_received(record.tokens), pictures_stated(told)
    photos = {sha256: held_by_receipts(sha256, stated.get(sha256, {}), received)
              for sha256 in photos_named(narrowed(folded, scope))}  # fmt: skip
    seal = looked.verification.signatures[0] if looked.verification.signatures else None
    head = (record.receipts["seq"], record.receipts["head"])
    log = log_told(folded, people, head, record.kid, seal and seal.fingerprint, apart_stated(told))
    options = {name: told.get(name) for name in STATED} | {"scope": scope, "final": True,
               "issuer": issuer(folded, seal and seal.name)}  # fmt: skip
    return report_contents(folded, people, definitions, log, photos, options)
