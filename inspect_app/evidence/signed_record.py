"""A job's signed record by itself: what its tokens show, whatever a report says of them.

Facts: ``keys_enrolled`` (every key was tied to its person by the server's key); ``entries_signed`` (every entry by an
enrolled key of its author, and what came once that key was ended let in by an administrator's entry: ``late``);
``receipts_whole`` (one chain from the first, no gap, fork or break); ``never_set_back`` of ``set_back``;
``entries_receipted`` (exactly the entries that have receipts, in that order, each of the job of its receipt);
``chains_whole`` (every key's own chain: no gap, fork or orphan); and ``verdicts_recompute`` (every verdict a rule gave,
of an answer, of a correction or recheck of a finding, of a line of a fit check, or of a survey's wear mark, judged
again from its own inputs by this release's rules, comes out the same).
"""

from collections.abc import Mapping
from typing import Any, NamedTuple

from inspect_app.entry.receipts import verify_receipts
from inspect_app.entry.thumbprint import thumbprint
from inspect_app.evidence import once
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN, Fact
from inspect_app.evidence.late import late
from inspect_app.evidence.set_back import NAME as SET_BACK
from inspect_app.evidence.set_back import set_back_fact
from inspect_app.evidence.tokens import Fault, Tokens, read_tokens
from inspect_app.record.chain import chains
from inspect_app.record.fold import fold
from inspect_app.record.rejudge import rejudge, rejudge_line, rejudge_mark

VERDICTS = "verdicts_recompute"
OWN = ("keys_enrolled", "entries_signed", "receipts_whole", SET_BACK, "entries_receipted", "chains_whole", VERDICTS)


class SignedRecord(NamedTuple):
    """``tokens``, their chain of ``receipts`` as checked, the server's key as ``kid``, and the whole ``folded`` record:
    empty where it cannot be folded."""

    tokens: Tokens
    receipts: Mapping[str, Any]
    kid: str
    folded: Mapping[str, Any]

    @property
    def chains(self) -> dict[str, dict[str, Any]]:
        """Every key's own chain."""
        found: dict[str, dict[str, Any]] = chains(_plain(self.tokens))
        return found


def read_record(files: Mapping[str, bytes]) -> SignedRecord:
    """The record in the token files (``enclosure``). Raises whatever a missing or broken file makes of it: then there
    is none."""
    tokens = read_tokens(files)
    receipts = verify_receipts(tokens.receipts, tokens.server_key, once.receipt)
    return SignedRecord(tokens, receipts, thumbprint(tokens.server_key), _folded(tokens))


def record_facts(record: SignedRecord) -> dict[str, Fact]:
    """The facts above by their names, in that order. Never raises for anything in the record."""
    tokens = record.tokens
    late_faults = late(tokens, record.folded)
    every = [
        _signed("keys_enrolled", len(tokens.enrolments), tokens.enrolment_faults),
        _signed("entries_signed", len(tokens.entries), tokens.entry_faults + late_faults),
        _receipts(record.receipts),
        set_back_fact(tokens),
        _receipted(tokens),
        _chains(record),
        _verdicts(tokens),
    ]
    return {fact.name: fact for fact in every}


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
    held: list[tuple[object, object]] = []
    for token in tokens.receipts:
        try:
            told = once.statement(token).payload
            held.append((told.get("entry"), told.get("job")))
        except Exception:  # counted by receipts_whole
            held.append(("", None))
    kept = [(entry, job) for entry, job in held if entry is not None]
    wanted = [entry for entry, _ in kept]
    found = [one.digest for one in tokens.entries]
    about = {"missing": len(set(wanted) - set(found)), "without": len(set(found) - set(wanted))}
    if wanted != found:
        return Fact("entries_receipted", FAILS, "other_entries", about)
    other = sum(one.job != job for one, (_, job) in zip(tokens.entries, kept, strict=True))
    if other:
        return Fact("entries_receipted", FAILS, "other_job", about | {"other": other})
    return Fact("entries_receipted", HOLDS, None, about)


def _chains(record: SignedRecord) -> Fact:
    every = record.chains.values()
    about = {name: sum(len(one[name]) for one in every) for name in ("gaps", "forks", "orphans")}
    whole = not any(about.values())
    return Fact("chains_whole", HOLDS if whole else FAILS, None if whole else "chain_not_whole", about)


def _verdicts(tokens: Tokens) -> Fact:
    bodies: list[Any] = [one.payload["body"] for one in tokens.entries if one.kind == "answer"]
    found = [rejudge(body["verdict"], body["choice"]) for body in bodies]
    looks: list[Any] = [one.payload["body"] for one in tokens.entries if one.kind in ("correction", "recheck")]
    found += [rejudge(body["verdict"]) for body in looks if body["verdict"] is not None]
    surveys: list[Any] = [one.payload["body"] for one in tokens.entries if one.kind == "survey"]
    found += [rejudge_mark(body["wear"]["verdict"]) for body in surveys if body["wear"] is not None]
    checks: list[Any] = [one.payload["body"] for one in tokens.entries if one.kind == "fit"]
    found += [rejudge_line(line) for body in checks for line in body["lines"]]
    about = {name: found.count(name) for name in ("same", "different", "not_determinable")}
    if about["different"]:
        return Fact(VERDICTS, FAILS, "other_verdict", about)
    # A rule of a later release: whoever wants to know takes that release.
    return Fact(VERDICTS, UNKNOWN if about["not_determinable"] else HOLDS,
                "unknown_rule" if about["not_determinable"] else None, about)  # fmt: skip


def _folded(tokens: Tokens) -> Mapping[str, Any]:
    try:
        return fold(_plain(tokens), people_in(tokens))
    except Exception:  # whatever breaks the fold: nothing that is said of such a record can be confirmed
        return {}


def _plain(tokens: Tokens) -> list[dict[str, Any]]:
    return [{"digest": one.digest, "kid": one.kid, "payload": one.payload} for one in tokens.entries]


def people_in(tokens: Tokens) -> dict[str, Any]:
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


def photos_received(tokens: Tokens) -> dict[str, int]:
    """``{SHA-256: size}`` of the photos that have a receipt. Those of receipts that do not hold count too: they are
    told of as faults elsewhere, and a photo is wanted all the more."""
    found: dict[str, int] = {}
    for line in tokens.receipts:
        try:
            told: Any = once.statement(line).payload
        except Exception:  # counted by receipts_whole
            continue
        if told.get("photo") is not None:
            found[told["photo"]] = told["size"]
    return found
