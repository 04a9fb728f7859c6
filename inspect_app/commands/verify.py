"""``seamwalk verify FILE``: separate facts about a report, for people and (``--json``) for programs."""

import argparse
import json
import os
import sys
from pathlib import Path
from typing import Any

from inspect_app.commands.bounded import verify_bounded
from inspect_app.commands.visible import visible
from inspect_app.errors import BadInput
from inspect_app.evidence.fact import FAILS, HOLDS, Fact
from inspect_app.evidence.verify import Verification, fingerprint_in
from inspect_app.settings import shipped
from inspect_app.words import LANGUAGES, Words, spoken

SIGNS = {HOLDS: "✓", FAILS: "✗"}
FAILED = 1


def add_to(subparsers: Any) -> None:
    parser = subparsers.add_parser("verify", help="verify a sealed report, fact by fact")
    parser.add_argument("file", help="the PDF")
    parser.add_argument(
        "--trust", metavar="FINGERPRINT", help="SHA-256 of the certificate, got by another way"
    )
    parser.add_argument("--contents", metavar="FILE", help="the contents.json that came with it")
    parser.add_argument("--json", action="store_true", help="print one JSON object")
    parser.add_argument("--lang", choices=LANGUAGES, default=spoken(os.environ), help="language of words")


def run(args: argparse.Namespace) -> int:
    """0 when nothing failed, 1 when something did, 2 when a file cannot be read or what to trust is mistyped:
    a slip of the hand must not read as a forged report."""
    if args.trust is not None and fingerprint_in(args.trust) is None:
        raise BadInput("not_a_fingerprint", "--trust", visible(args.trust) or "—")
    found = verify_bounded(
        _read(args.file, "file"), args.trust, _read(args.contents, "contents") if args.contents else None
    )
    if args.json:
        print(json.dumps(found.plain() | {"failed": found.failed}, ensure_ascii=False, indent=1))
    else:
        print("\n".join(told(found, Words(shipped("static") / "words"), args.lang)))
    return FAILED if found.failed else 0


def told(found: Verification, words: Words, language: str) -> list[str]:
    """The facts in words, one a line; then what follows and what does not."""
    lines = [_line(fact, words, language) for fact in found.facts]
    for one in found.signatures:
        facts = {"field": one.field, "name": one.name, "time": one.time, "fingerprint": one.fingerprint}
        lines.append(words.say("report.verify.signature", language, facts))
    if found.contents:
        lines.append(words.say("report.verify.contents", language, {"digest": found.contents}))
    unknown = [words.say(f"report.verify.{fact.name}", language, fact.about) for fact in found.facts
               if fact.status not in (HOLDS, FAILS)]  # fmt: skip
    key = "failed" if found.failed else "open" if unknown else "all"
    return [*lines, "", words.say(f"report.verify.end.{key}", language, {"unknown": "; ".join(unknown)})]


def _line(fact: Fact, words: Words, language: str) -> str:
    text = f"{SIGNS.get(fact.status, '?')} {words.say(f'report.verify.{fact.name}', language, fact.about)}"
    if fact.about.get("field"):
        text += f" [{fact.about['field']}]"
    if fact.status == HOLDS:
        return text
    state = words.say(f"report.verify.status.{fact.status}", language)
    key = f"report.verify.reason.{(fact.reason or '').split(':')[0]}"
    reason = words.say(key, language, fact.about) if key in words else fact.reason
    return f"{text}: {state}. {reason}"


def _read(name: str, field: str) -> bytes:
    try:
        return sys.stdin.buffer.read() if name == "-" else Path(name).read_bytes()
    except OSError:
        raise BadInput("file_unreadable", field, name) from None
