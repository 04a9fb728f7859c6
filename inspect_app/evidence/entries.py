"""Verify the entries that a report encloses: who signed them, what the server held, and what the report says.

Facts: ``record_enclosed`` (the tokens are in the file); ``keys_enrolled`` (every key was tied to its person by
the server's key); ``entries_signed`` (every entry by an enrolled key of its author, and what came once that key
was ended let in by an administrator's entry: ``late``); ``receipts_whole`` (one chain from the first, no gap, fork or
break); ``never_set_back`` of ``set_back``; ``entries_receipted`` (exactly the entries that have receipts, in
that order); ``chains_whole`` (every key's own chain: no gap, fork or orphan); ``heads_match`` (the heads that
the report prints); ``answers_follow`` (the entries, folded again, give the answers and results of the report, and
its fit checks line by line, and no others); ``verdicts_recompute`` (every verdict a rule gave, of an answer, of a
correction or recheck of a finding, or of a line of a fit check, judged again from its own inputs by this release's
rules, comes out the same); and ``draw_recomputes`` of ``draws``, ``lots_follow`` of ``lots_told``, ``days_follow`` of
``days_told``, ``findings_follow`` of ``findings_told``, and ``scope_follows`` of ``scope_told``. What a report says is
held to the entries as far as it speaks of them (``scope_told.scoped``); the tokens are always the whole job's.
"""

from collections.abc import Mapping
from typing import Any

from inspect_app.entry.receipts import verify_receipts
from inspect_app.entry.statement import parse_statement
from inspect_app.entry.thumbprint import thumbprint
from inspect_app.evidence.days_told import NAME as DAYS
from inspect_app.evidence.days_told import days_fact
from inspect_app.evidence.draws import NAME as DRAWS
from inspect_app.evidence.draws import draw_fact
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN, Fact
from inspect_app.evidence.findings_told import NAME as FINDINGS
from inspect_app.evidence.findings_told import findings_fact
from inspect_app.evidence.late import late
from inspect_app.evidence.lots_told import NAME as LOTS
from inspect_app.evidence.lots_told import lots_fact
from inspect_app.evidence.scope_told import NAME as SCOPE
from inspect_app.evidence.scope_told import scope_fact, scoped
from inspect_app.evidence.set_back import NAME as SET_BACK
from inspect_app.evidence.set_back import set_back_fact
from inspect_app.evidence.tokens import Fault, Tokens, read_tokens
from inspect_app.record.chain import chains
from inspect_app.record.fold import fold
from inspect_app.record.rejudge import rejudge, rejudge_line

REST = ("keys_enrolled", "entries_signed", "receipts_whole", SET_BACK, "entries_receipted", "chains_whole",
        "heads_match", SCOPE, "answers_follow", "verdicts_recompute", DRAWS, LOTS, DAYS, FINDINGS)  # fmt: skip
Contents = Mapping[str, Any]


def entry_facts(files: Mapping[str, bytes] | None, contents: Contents | None) -> list[Fact]:
    """The facts above. ``files``: as ``enclosed`` gives them, None without any; ``contents``: the enclosed
    ``contents.json``, None when it does not read. Never raises for anything in them."""
    if files is None:
        return [Fact(name, UNKNOWN, "no_record") for name in ("record_enclosed", *REST)]
    try:
        tokens = read_tokens(files)
        thumbprint(tokens.server_key)
    except Exception as reason:  # a missing file, no key: whatever it is, there is no record to read
        return [Fact("record_enclosed", FAILS, "unreadable_record", {"error": type(reason).__name__}),
                *(Fact(name, UNKNOWN, "unreadable_record") for name in REST)]  # fmt: skip
    receipts = verify_receipts(tokens.receipts, tokens.server_key)
    whole = _folded(tokens)
    record = scoped(contents, whole)
    return [
        Fact("record_enclosed", HOLDS, None, {"count": len(tokens.entries)}),
        _signed("keys_enrolled", len(tokens.enrolments), tokens.enrolment_faults),
        _signed("entries_signed", len(tokens.entries), tokens.entry_faults + late(tokens, whole)),
        _receipts(receipts),
        set_back_fact(tokens),
        _receipted(tokens),
        _chains(tokens),
        _said("heads_match", contents, lambda told: _heads(told, tokens, receipts)),
        scope_fact(contents, whole),
        _said("answers_follow", contents, lambda told: _answers(told, record)),
        _verdicts(tokens),
        draw_fact(tokens.entries, tokens.server_key, contents, record),
        lots_fact(contents, record),
        days_fact(contents, record),
        findings_fact(contents, record),
    ]


def _signed(name: str, count: int, faults: list[Fault]) -> Fact:
    if not faults:
        return Fact(name, HOLDS, None, {"count": count})
    about = {"count": count, "faults": len(faults), "line": faults[0].line, "code": faults[0].code}
    return Fact(name, FAILS, "not_signed", about)


def _receipts(found: Mapping[str, Any]) -> Fact:
    about = {name: len(found[name]) for name in ("refused", "gaps", "forks", "breaks")} | {"count": found["count"]}
    whole = found["count"] and not any(found[name] for name in ("refused", "gaps", "forks", "breaks"))
    return Fact("receipts_whole", HOLDS if whole else FAILS, None if whole else "chain_not_whole", about)


def _receipted(tokens: Tokens) -> Fact:
    held = []
    for token in tokens.receipts:
        try:
            held.append(parse_statement(token).payload.get("entry"))
        except Exception:  # counted by receipts_whole
            held.append("")
    wanted = [one for one in held if one is not None]
    found = [one.digest for one in tokens.entries]
    about = {"missing": len(set(wanted) - set(found)), "without": len(set(found) - set(wanted))}
    same = wanted == found
    return Fact("entries_receipted", HOLDS if same else FAILS, None if same else "other_entries", about)


def _own_chains(tokens: Tokens) -> dict[str, dict[str, Any]]:
    found: dict[str, dict[str, Any]] = chains(_plain(tokens))
    return found


def _chains(tokens: Tokens) -> Fact:
    every = _own_chains(tokens).values()
    about = {name: sum(len(one[name]) for one in every) for name in ("gaps", "forks", "orphans")}
    whole = not any(about.values())
    return Fact("chains_whole", HOLDS if whole else FAILS, None if whole else "chain_not_whole", about)


def _said(name: str, contents: Contents | None, wrong: Any) -> Fact:
    """What the report says against what it encloses. ``wrong``: the first thing that differs, or None."""
    if contents is None:
        return Fact(name, UNKNOWN, "no_record")
    try:
        what = wrong(contents)
    except Exception as reason:  # contents of any other shape
        what = type(reason).__name__
    return Fact(name, FAILS, "says_other", {"what": what}) if what else Fact(name, HOLDS)


def _heads(told: Contents, tokens: Tokens, receipts: Mapping[str, Any]) -> str | None:
    said = told["hashes"]
    if said["server_kid"] != thumbprint(tokens.server_key):
        return "server_kid"
    if (said["head_receipt"], said["head_seq"]) != (receipts["head"], receipts["seq"]):
        return "head_receipt"
    if any(one.job != told["job"]["id"] for one in tokens.entries):
        return "job"
    own = [(kid, one["count"], one["head"]) for kid, one in _own_chains(tokens).items()]
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


def _verdicts(tokens: Tokens) -> Fact:
    bodies: list[Any] = [one.payload["body"] for one in tokens.entries if one.kind == "answer"]
    found = [rejudge(body["verdict"], body["choice"]) for body in bodies]
    looks: list[Any] = [one.payload["body"] for one in tokens.entries if one.kind in ("correction", "recheck")]
    found += [rejudge(body["verdict"]) for body in looks if body["verdict"] is not None]
    checks: list[Any] = [one.payload["body"] for one in tokens.entries if one.kind == "fit"]
    found += [rejudge_line(line) for body in checks for line in body["lines"]]
    about = {name: found.count(name) for name in ("same", "different", "not_determinable")}
    if about["different"]:
        return Fact("verdicts_recompute", FAILS, "other_verdict", about)
    # A rule of a later release: whoever wants to know takes that release.
    return Fact("verdicts_recompute", UNKNOWN if about["not_determinable"] else HOLDS,
                "unknown_rule" if about["not_determinable"] else None, about)  # fmt: skip


def _folded(tokens: Tokens) -> Mapping[str, Any]:
    try:
        return fold(_plain(tokens), _people(tokens))
    except Exception:  # whatever breaks the fold: nothing that is said of such a record can be confirmed
        return {}


def _plain(tokens: Tokens) -> list[dict[str, Any]]:
    return [{"digest": one.digest, "kid": one.kid, "payload": one.payload} for one in tokens.entries]


def _people(tokens: Tokens) -> dict[str, Any]:
    """As the fold wants them; of a person enrolled more than once the last name and role stand, last as the
    server numbered them: in which order they are enclosed must decide nothing."""
    people: dict[str, Any] = {}
    for one in sorted(tokens.enrolments, key=lambda one: int(str(one.payload["seq"]))):
        if one.kind == "enrolment":
            told: Any = one.payload["person"]
            person = people.setdefault(told["id"], {"kids": []})
            person.update(name=told["name"], role=told["role"])
            person["kids"].append(one.payload["kid"])
    return people
