"""``seamwalk backup PLACE``: copy the whole store, also while it serves."""

import argparse
import os
import sys
from pathlib import Path
from typing import Any

from inspect_app.clock import system_clock
from inspect_app.commands.fault_lines import fault_lines
from inspect_app.settings import settings_from, shipped
from inspect_app.upkeep.backup import back_up
from inspect_app.words import LANGUAGES, Words, spoken

FAULTY = 1


def add_to(subparsers: Any) -> None:
    parser = subparsers.add_parser("backup", help="copy the whole store, also while it serves")
    parser.add_argument("place", type=Path, help="a folder, gone on with next time, or a file that ends in .tar")
    parser.add_argument("--lang", choices=LANGUAGES, default=spoken(os.environ), help="language of words")


def run(args: argparse.Namespace) -> int:
    """0 when all of it was copied, 1 when something could not be, 2 when nothing was."""
    settings = settings_from(os.environ)
    made = back_up(settings.data, settings.database_url, args.place.resolve(), system_clock())
    words = Words(shipped("static") / "words")
    print("\n".join(fault_lines(made.faults, words, args.lang)), end="\n" if made.faults else "", file=sys.stderr)
    facts = {"target": args.place, "last": made.page.last, "photos": len(made.page.photos), "new": made.new,
             "bytes": made.bytes, "reports": made.reports}  # fmt: skip
    print(words.say("upkeep.backup.done", args.lang, facts))
    print(words.say("upkeep.backup.secret", args.lang))
    if made.faults:
        print(words.say("upkeep.backup.faults", args.lang, {"count": len(made.faults)}), file=sys.stderr)
    return FAULTY if made.faults else 0
