"""Verify the entries that a report encloses: who signed them, what the server held, and what the report says.

Facts: ``record_enclosed`` (the tokens are in the file); those of ``signed_record``; ``heads_match`` (the heads that
the report prints); ``answers_follow`` (the entries, folded again, give the answers and results of the report, and
its fit checks line by line, and no others); and ``draw_recomputes`` of ``draws``, ``lots_follow`` of ``lots_told``,
``days_follow`` of ``days_told``, ``findings_follow`` of ``findings_told``, ``signoffs_follow`` of ``signoffs_told``
and ``scope_follows`` of ``scope_told``. What a report says is held to the entries as far as it speaks of them
(``scope_told.scoped``); the tokens themselves are always the whole job's.
"""

from collections.abc import Mapping
from typing import Any

from inspect_app.evidence.days_told import NAME as DAYS
from inspect_app.evidence.days_told import days_fact
from inspect_app.evidence.draws import NAME as DRAWS
from inspect_app.evidence.draws import draw_fact
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN, Fact
from inspect_app.evidence.findings_told import NAME as FINDINGS
from inspect_app.evidence.findings_told import findings_fact
from inspect_app.evidence.lots_told import NAME as LOTS
from inspect_app.evidence.lots_told import lots_fact
from inspect_app.evidence.scope_told import NAME as SCOPE
from inspect_app.evidence.scope_told import scope_fact, scoped
from inspect_app.evidence.signed_record import OWN, VERDICTS, SignedRecord, read_record, record_facts
from inspect_app.evidence.signoffs_told import NAME as SIGNOFFS
from inspect_app.evidence.signoffs_told import signoffs_fact

REST = (*OWN[:-1], "heads_match", SCOPE, "answers_follow", VERDICTS, DRAWS, LOTS, DAYS, FINDINGS, SIGNOFFS)
Contents = Mapping[str, Any]


def entry_facts(files: Mapping[str, bytes] | None, contents: Contents | None) -> list[Fact]:
    """The facts above. ``files``: as ``enclosed`` gives them, None without any; ``contents``: the enclosed
    ``contents.json``, None when it does not read. Never raises for anything in them."""
    return facts_and_record(files, contents)[0]


def facts_and_record(
    files: Mapping[str, bytes] | None, contents: Contents | None
) -> tuple[list[Fact], SignedRecord | None]:
    """As ``entry_facts``, and the record where one can be read."""
    if files is None:
        return [Fact(name, UNKNOWN, "no_record") for name in ("record_enclosed", *REST)], None
    try:
        held = read_record(files)
    except Exception as reason:  # a missing file, no key: whatever it is, there is no record to read
        return [Fact("record_enclosed", FAILS, "unreadable_record", {"error": type(reason).__name__}),
                *(Fact(name, UNKNOWN, "unreadable_record") for name in REST)], None  # fmt: skip
    return _facts(held, contents), held


def _facts(held: SignedRecord, contents: Contents | None) -> list[Fact]:
    tokens = held.tokens
    record = scoped(contents, held.folded)
    own = record_facts(held)
    verdicts = own.pop(VERDICTS)
    return [
        Fact("record_enclosed", HOLDS, None, {"count": len(tokens.entries)}),
        *own.values(),
        _said("heads_match", contents, lambda told: _heads(told, held)),
        scope_fact(contents, held.folded),
        _said("answers_follow", contents, lambda told: _answers(told, record)),
        verdicts,
        draw_fact(tokens.entries, tokens.server_key, contents, record),
        lots_fact(contents, record),
        days_fact(contents, record),
        findings_fact(contents, record),
        signoffs_fact(contents, record),
    ]


def _said(name: str, contents: Contents | None, wrong: Any) -> Fact:
    """What the report says against what it encloses. ``wrong``: the first thing that differs, or None."""
    if contents is None:
        return Fact(name, UNKNOWN, "no_record")
    try:
        what = wrong(contents)
    except Exception as reason:  # contents of any other shape
        what = type(reason).__name__
    return Fact(name, FAILS, "says_other", {"what": what}) if what else Fact(name, HOLDS)


def _heads(told: Contents, held: SignedRecord) -> str | None:
    said = told["hashes"]
    if said["server_kid"] != held.kid:
        return "server_kid"
    if (said["head_receipt"], said["head_seq"]) != (held.receipts["head"], held.receipts["seq"]):
        return "head_receipt"
    if any(one.job != told["job"]["id"] for one in held.tokens.entries):
        return "job"
    own = [(kid, one["count"], one["head"]) for kid, one in held.chains.items()]
    return None if sorted(own) == sorted((one["kid"], one["count"], one["head"]) for one in said["keys"]) else "keys"


def _answers(told: Contents, record: Mapping[str, Any]) -> str | None:
    folded = {subject: [(one["digest"], one["result"])] for subject, one in record["answers"].items()}
    said: dict[str, list[tuple[Any, Any]]] = {}
    for one in told["answers"]:  # a list of each: a second answer beside the true one is printed too
        said.setdefault(one["id"], []).append((one["digest"], one["result"]))
    wrong = next((name for name in sorted(folded.keys() | said.keys()) if folded.get(name) != said.get(name)), None)
    return wrong or _fits(told, record["fits"])


def _fits(told: Contents, folded: Mapping[str, Any]) -> str | None:
    """The area of the first fit check that is printed otherwise, left out or doubled. Reports of releases without fit
    checks enclose none."""
    said = [(one["area"], one["digest"], one["result"], [_line(line["line"], line["result"], line["working"])
             for line in one["lines"]], one["day"], one["found"], one["said_by"], one["note"])
            for one in told.get("fits", [])]  # fmt: skip
    true = [(area, one["digest"], one["result"], [_line(line["line"], line["verdict"]["result"], line["verdict"])
             for line in one["lines"]], one["day"], one["found"], {"name": one["name"], "role": one["role"]},
             one["note"]) for area, one in folded.items()]  # fmt: skip
    wrong = [one for one in said if one not in true] + [one for one in true if said.count(one) != 1]
    return f"fit {wrong[0][0]}" if wrong else None


def _line(name: str, result: Any, working: Mapping[str, Any]) -> tuple[Any, ...]:
    return (name, result, working["rule"], working["reason"], working["inputs"], working["values"])
