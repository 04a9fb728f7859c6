"""``seamwalk remember FILE [KEY…]``: after a restoration, let in the key of a phone that is gone, by the enrolments
that a report or an evidence package of before encloses."""

import argparse
import os
import sys
from pathlib import Path
from typing import Any

from pyhanko.pdf_utils.misc import PdfError
from pyhanko.pdf_utils.reader import PdfFileReader

from inspect_app.application import create_app
from inspect_app.commands.visible import visible
from inspect_app.errors import BadInput
from inspect_app.evidence.enclosure import ENROLMENTS, enclosed
from inspect_app.people.forgotten import Forgotten, forgotten, know_again
from inspect_app.settings import settings_from, shipped
from inspect_app.words import LANGUAGES, Words, spoken

LARGEST = 16 * 1024 * 1024  # of statements, some 500 bytes each
SHORTEST = 8  # signs of a key that say which it is


def add_to(subparsers: Any) -> None:
    parser = subparsers.add_parser("remember", help="after a restore: know again the key of a phone that is gone")
    parser.add_argument("file", type=Path, help="a report (PDF) or a package's enrolments.txt, made before the restore")
    parser.add_argument(
        "keys", nargs="*", metavar="KEY", help="keys to let in (their first 8 signs do); none: only list"
    )
    parser.add_argument("--ended", action="store_true", help="end them at once: what they signed is kept apart")
    parser.add_argument("--lang", choices=LANGUAGES, default=spoken(os.environ), help="language of words")


def run(args: argparse.Namespace) -> int:
    """0 when done or listed. Raises ``BadInput`` for a file without enrolments, and for a key that is none of them."""
    words = Words(shipped("static") / "words")
    app = create_app(settings_from(os.environ))
    with app.app_context():
        parts, office = app.extensions["seamwalk"], app.extensions["office"]
        found = forgotten(parts.devices, parts.statements.key.jwk, _statements(args.file))
        chosen = [_one(found, key) for key in args.keys]
        for one in chosen:
            know_again(parts.devices, parts.accounts, office.trail, one, args.ended)
    for one in found:
        key = "let_in" if one in chosen else "listed"
        state = words.say(
            "remember.ended" if one.ended or (one in chosen and args.ended) else "remember.good", args.lang
        )
        print(words.say(f"remember.{key}", args.lang, {
            "key": one.kid, "who": visible(one.person["name"]), "role": one.person["role"],
            "device": visible(one.device), "at": one.at, "state": state}))  # fmt: skip
    print(words.say(f"remember.{'next' if chosen else 'choose' if found else 'none'}", args.lang), file=sys.stderr)
    return 0


def _one(found: list[Forgotten], key: str) -> Forgotten:
    like = [one for one in found if one.kid.startswith(key)] if len(key) >= SHORTEST else []
    if len(like) != 1:
        raise BadInput("not_forgotten", "KEY", visible(key))
    return like[0]


def _statements(file: Path) -> list[str]:
    try:
        with file.open("rb") as source:
            if source.read(5) == b"%PDF-":
                data = (enclosed(PdfFileReader(source)) or {}).get(ENROLMENTS, b"")
            else:
                source.seek(0)
                data = source.read(LARGEST)
    except OSError:
        raise BadInput("file_unreadable", "file", visible(str(file))) from None
    except (PdfError, ValueError, KeyError, TypeError, AttributeError, RecursionError):
        data = b""
    lines = data.decode("latin-1").split("\n")
    if not any(line.count(".") == 2 for line in lines):
        raise BadInput("no_enrolments", "file", visible(str(file)))
    return [line for line in lines if line]
