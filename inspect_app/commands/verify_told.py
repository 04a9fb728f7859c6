"""The facts of a report or a package in words: what is so, what is not, and what it means."""

import re
from collections.abc import Sequence

from inspect_app.commands.visible import visible
from inspect_app.evidence.fact import FAILS, HOLDS, Fact
from inspect_app.evidence.package.verify import PackageVerification
from inspect_app.evidence.signature import Signature
from inspect_app.evidence.verify import Verification
from inspect_app.words import Words

UNFILLED = re.compile(r" \([^()]*\{\w+\}[^()]*\)")
SIGNS = {HOLDS: "✓", FAILS: "✗"}


def told(found: Verification, words: Words, language: str) -> list[str]:
    """The facts of a report, one a line, with their meaning where they do not hold; then what follows and what does
    not."""
    lines = _facts(found.facts, words, language)
    lines += _signatures(found.signatures, words, language)
    if found.contents:
        lines.append(words.say("report.verify.contents", language, {"digest": found.contents}))
    return [*lines, "", _end("report.verify.end", found.facts, found.failed, words, language)]


def told_of_package(found: PackageVerification, words: Words, language: str) -> list[str]:
    """The facts of a package, then report by report those of each that do not hold."""
    lines = _facts(found.facts, words, language)
    for report in found.reports:
        facts = report.verification.facts
        other = [fact for fact in facts if fact.status != HOLDS]
        about = {"file": visible(report.file), "count": len(facts), "hold": len(facts) - len(other)}
        lines += ["", words.say("verify.report", language, about), *_facts(other, words, language)]
        lines += _signatures(report.verification.signatures, words, language)
    lines.append("")
    if found.server:
        lines.append(words.say("verify.server", language, {"fingerprint": found.server}))
    if found.page:
        lines.append(words.say("verify.page", language, {"digest": found.page}))
    return [*lines, "", _end("verify.end", found.facts, found.failed, words, language)]


def _facts(facts: Sequence[Fact], words: Words, language: str) -> list[str]:
    return [line for fact in facts for line in _fact(fact, words, language)]


def _fact(fact: Fact, words: Words, language: str) -> list[str]:
    about = {name: _shown(value) for name, value in fact.about.items()}
    text = f"{SIGNS.get(fact.status, '?')} {_named(fact, words, language)}"
    if fact.about.get("field"):
        text += f" [{about['field']}]"
    if fact.status == HOLDS:
        return [text]
    state = words.say(f"report.verify.status.{fact.status}", language)
    key = f"report.verify.reason.{(fact.reason or '').split(':')[0]}"
    reason = words.say(key, language, about) if key in words else fact.reason
    means = f"report.verify.{fact.name}.{fact.status}"
    return [f"{text}: {state}. {reason}", *([f"   {words.say(means, language, about)}"] if means in words else [])]


def _named(fact: Fact, words: Words, language: str) -> str:
    """The fact in words, without the bracket whose numbers nobody knows, since there was nothing to count."""
    about = {name: _shown(value) for name, value in fact.about.items()}
    return UNFILLED.sub("", words.say(f"report.verify.{fact.name}", language, about))


def _shown(value: object) -> object:
    return visible(value) if isinstance(value, str) else value


def _signatures(signatures: Sequence[Signature], words: Words, language: str) -> list[str]:
    lines = []
    for one in signatures:
        facts = {"field": one.field, "name": one.name, "time": one.time, "fingerprint": one.fingerprint}
        lines.append(words.say("report.verify.signature", language, {name: _shown(facts[name]) for name in facts}))
        if one.stamp:
            stamp = {name: _shown(value) for name, value in one.stamp.plain().items()}
            lines.append(words.say("report.verify.stamp", language, stamp))
    return lines


def _end(key: str, facts: Sequence[Fact], failed: bool, words: Words, language: str) -> str:
    unknown = [_named(fact, words, language) for fact in facts if fact.status not in (HOLDS, FAILS)]
    state = "failed" if failed else "open" if unknown else "all"
    return words.say(f"{key}.{state}", language, {"unknown": "; ".join(dict.fromkeys(unknown))})
