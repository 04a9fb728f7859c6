"""``seamwalk import FILE``: bring in a copy of unsent work that somebody saved on their phone."""

import argparse
import json
import os
import sys
from pathlib import Path
from typing import Any, BinaryIO

from inspect_app.application import create_app
from inspect_app.commands.visible import visible
from inspect_app.errors import BadInput
from inspect_app.intake.copy_outcome import STATUSES, Brought, Came, plain
from inspect_app.settings import settings_from, shipped
from inspect_app.words import LANGUAGES, Words, spoken

SIGNS = {"accepted": "✓", "duplicate": "✓", "quarantined": "‖"}
FAMILIES = ("refusal", "error")  # where a reason has its words
INCOMPLETE = 1


def add_to(subparsers: Any) -> None:
    parser = subparsers.add_parser("import", help="bring in a saved copy of a phone's unsent work")
    parser.add_argument("file", help="the copy (.tar), or - for standard input")
    parser.add_argument("--json", action="store_true", help="print one JSON object")
    parser.add_argument("--lang", choices=LANGUAGES, default=spoken(os.environ), help="language of words")


def run(args: argparse.Namespace) -> int:
    """0 when all of it is here now, 1 when something of it is not or the file was damaged, 2 when it cannot be read."""
    due: list[str] = []
    app = create_app(settings_from(os.environ), after_intake=due.append)
    with app.app_context(), _opened(args.file) as stream:
        brought = app.extensions["copies"].bring(stream)
        people = {one.id: one.name for one in app.extensions["seamwalk"].accounts.everybody()}
    if brought.listing is None and not brought.came:
        raise BadInput("copy_empty", "file", args.file)
    if args.json:
        items = [_plain(one) for one in brought.came]
        print(json.dumps(plain(brought) | {"items": items}, ensure_ascii=False, indent=1))
    else:
        words = Words(shipped("static") / "words")
        print("\n".join(told(brought, people, words, args.lang)))
        for job in dict.fromkeys(due):  # a server at work does not notice what came in beside it
            print(words.say("copy.report_due", args.lang, {"job": job}))
    return 0 if brought.whole else INCOMPLETE


def told(brought: Brought, people: dict[str, str], words: Words, language: str) -> list[str]:
    """What became of it in words: the list and who vouches for it, how many of what, and each thing that did not simply
    arrive with its reason and the way out."""

    def say(key: str, **facts: object) -> str:
        return words.say(key, language, {name: visible(str(value)) for name, value in facts.items()})

    lines = [say("copy.made", at=brought.listing.at) if brought.listing else say("copy.no_list")]
    lines += [say(f"copy.seal.{one.state}", who=people.get(one.person, one.kid)) for one in brought.seals]
    lines += [] if brought.seals else [say("copy.unsealed")]
    lines += [say(f"copy.damage.{one.code}", at=one.at, value=one.value) for one in brought.damage]
    counted = brought.counted()
    lines += [say(f"copy.status.{status}", n=counted[status]) for status in STATUSES if counted[status]]
    lines += [_line(one, words, language) for one in brought.came if one.why]
    return [*lines, "", say("copy.end.whole" if brought.whole else "copy.end.incomplete")]


def _line(one: Came, words: Words, language: str) -> str:
    assert one.why is not None
    kind = f"kind.{one.listed.kind}" if one.listed else ""
    what = words.say(kind if kind in words else f"copy.{one.what}", language)
    keys = [f"{family}.{one.why.code}" for family in FAMILIES]
    key = next((key for key in keys if f"{key}.message" in words), "error.request_refused")
    facts = {"field": visible(one.why.field), "value": visible(one.why.value)}
    said = " ".join(words.say(f"{key}.{part}", language, facts) for part in ("message", "way_out"))
    return f"{SIGNS.get(one.status, '✗')} {what} {one.name} [{visible(one.job) or '?'}]: {said}"


def _plain(one: Came) -> dict[str, Any]:
    why = {"code": one.why.code, "field": one.why.field, "value": one.why.value} if one.why else {}
    listed = {"kind": one.listed.kind, "person": one.listed.person, "at": one.listed.at} if one.listed else {}
    return {"what": one.what, "name": one.name, "job": one.job, "status": one.status, **why, **listed}


def _opened(name: str) -> BinaryIO:
    try:
        return sys.stdin.buffer if name == "-" else Path(name).open("rb")
    except OSError:
        raise BadInput("file_unreadable", "file", name) from None


