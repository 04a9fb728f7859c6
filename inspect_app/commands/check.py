"""``seamwalk check``: hold everything that is kept against everything else; change nothing."""

import argparse
import json
import os
from pathlib import Path
from typing import Any

from inspect_app.commands.fault_lines import fault_lines
from inspect_app.settings import settings_from, shipped, sqlite_in
from inspect_app.upkeep.backup_form import PAGE, check_files, read_page
from inspect_app.upkeep.check import check
from inspect_app.words import LANGUAGES, Words, spoken

FAULTY = 1


def add_to(subparsers: Any) -> None:
    parser = subparsers.add_parser("check", help="check what is kept: log, receipts, photos, derived tables")
    parser.add_argument("folder", nargs="?", type=Path, help="a backup's folder instead of SEAMWALK_DATA")
    parser.add_argument("--json", action="store_true", help="print one JSON object")
    parser.add_argument("--lang", choices=LANGUAGES, default=spoken(os.environ), help="language of words")


def run(args: argparse.Namespace) -> int:
    """0 when nothing is wrong, 1 when something is, 2 when there is nothing to check."""
    settings = settings_from(os.environ)
    data, url, faults = settings.data, settings.database_url, []
    if args.folder is not None:
        data, url = args.folder, sqlite_in(args.folder)
        if (data / PAGE).is_file():
            page = read_page((data / PAGE).read_bytes(), str(data))
            url = f"sqlite:///{(data / page.database).as_posix()}"
            faults = check_files(page, data)
    found = check(data, url)
    found = found._replace(faults=faults + found.faults)
    if args.json:
        print(json.dumps(found.plain(), ensure_ascii=False, indent=1))
    else:
        words = Words(shipped("static") / "words")
        lines = fault_lines([*found.faults, *found.notes], words, args.lang)
        lines.append(words.say("upkeep.check.counts", args.lang, found.counts))
        key = "upkeep.check.faults" if found.faults else "upkeep.check.whole"
        print("\n".join([*lines, words.say(key, args.lang, {"count": len(found.faults)})]))
    return FAULTY if found.faults else 0
