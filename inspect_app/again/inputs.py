"""Whether verdicts were computed from the readings that stand beside them.

Fact ``inputs_follow``: of every answer, correction and recheck that a rule judged, the rule is the one that its
checklist item names, in whatever version, and each input that the item takes from the reading is what the reading says,
each that it states itself (a limit) is that, and there is no other. ``verdicts_recompute`` judges a verdict again from
its own inputs, so a phone that was made to write other inputs beside a true reading would pass there. What an item
takes from the roof is not compared: a later drawing changes that.
"""

from collections.abc import Iterator, Mapping
from decimal import Decimal, InvalidOperation
from typing import Any

from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN, Fact
from inspect_app.evidence.signed_record import SignedRecord
from inspect_app.evidence.verify import Looked
from inspect_app.record.paths import ROOTS, follow

NAME = "inputs_follow"
KINDS = ("answer", "correction", "recheck")
Item = Mapping[str, Any]


def inputs_fact(looked: Looked, definitions: Mapping[str, Any]) -> Fact:
    """The fact above. ``definitions``: those that are here, compiled, by digest. Never raises for anything in the
    report."""
    if looked.record is None:
        return Fact(NAME, UNKNOWN, "no_record")
    count, unknown, wrong = 0, 0, list[dict[str, Any]]()
    try:
        items = {(digest, item["id"]): item for digest, one in definitions.items() for item in one["items"]}
        for digest, body, item in _judged(looked.record, items):
            count += 1
            if item is None:
                unknown += 1
            elif (name := _other(body, item)) is not None:
                wrong.append({"digest": digest, "input": name})
    except Exception as reason:  # a checklist of any other shape, which somebody named by its digest
        return Fact(NAME, UNKNOWN, "checklist_strange", {"error": type(reason).__name__})
    about = {"count": count}
    if wrong:
        return Fact(NAME, FAILS, "other_input", about | {"faults": len(wrong), "list": wrong[:20]} | wrong[0])
    return Fact(NAME, UNKNOWN, "item_gone", about | {"faults": unknown}) if unknown else Fact(NAME, HOLDS, None, about)


def _judged(record: SignedRecord, items: Mapping[Any, Item]) -> Iterator[tuple[str, Mapping[str, Any], Item | None]]:
    findings: Mapping[str, Any] = record.folded.get("findings") or {}
    for entry in record.tokens.entries:
        body: Any = entry.payload["body"]
        if entry.kind in KINDS and (body.get("verdict") or {}).get("rule"):
            asked = body if entry.kind == "answer" else findings.get(str(body["finding"])) or {}
            yield entry.digest, body, items.get((asked.get("definition"), asked.get("item")))


def _other(body: Mapping[str, Any], item: Item) -> str | None:
    """The first input that is not what the reading says; ``rule`` where another rule judged it."""
    rule, verdict = item.get("rule") or {}, body["verdict"]
    if str(rule.get("name")).split("@")[0] != str(verdict["rule"]).split("@")[0]:
        return "rule"
    recorded, paths = verdict.get("inputs") or {}, rule["inputs"]
    # Where one is missing the others may be left out too, as ``record/judge.py`` does: an unknown claims nothing.
    needed = recorded if verdict.get("result") == "not_determinable" else paths
    for name in sorted({*needed, *recorded}):
        if name not in paths:
            return str(name)
        if _told(paths[name]) and not _same(recorded.get(name), follow(paths[name], {"reading": body.get("reading")})):
            return str(name)
    return None


def _told(path: Any) -> bool:
    """Whether the reading or the item itself says it, rather than the roof."""
    root = path.split(".")[0] if isinstance(path, str) and "." in path else None
    return root == "reading" or root not in ROOTS


def _same(one: Any, other: Any) -> bool:
    """Whether they say the same: a verdict writes every number as text."""
    if isinstance(one, dict) and isinstance(other, dict):
        return one.keys() == other.keys() and all(_same(one[name], other[name]) for name in one)
    if isinstance(one, list) and isinstance(other, list):
        return len(one) == len(other) and all(map(_same, one, other))
    if type(one) is bool or type(other) is bool or one is None or other is None:
        return one is other
    try:
        return Decimal(str(one)) == Decimal(str(other))
    except InvalidOperation:
        return bool(one == other)
