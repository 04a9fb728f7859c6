"""``seamwalk restore BACKUP``: make a server of a backup again, in an empty data folder."""

import argparse
import os
import sys
from dataclasses import replace
from datetime import datetime
from pathlib import Path
from typing import Any

from inspect_app.application import create_app
from inspect_app.clock import Clock, system_clock
from inspect_app.commands.fault_lines import fault_lines
from inspect_app.entry.statement import parse_statement
from inspect_app.errors import BadInput
from inspect_app.settings import Settings, settings_from, shipped, sqlite_in
from inspect_app.store.database import db
from inspect_app.upkeep.restore import Restored, restore
from inspect_app.words import LANGUAGES, Words, spoken

FAULTY = 1


def add_to(subparsers: Any) -> None:
    parser = subparsers.add_parser("restore", help="set the store back to a backup, in an empty data folder")
    parser.add_argument("backup", type=Path, help="the folder or .tar file that `seamwalk backup` made")
    parser.add_argument("--despite-faults", action="store_true", help="restore a damaged backup as it is")
    parser.add_argument("--lang", choices=LANGUAGES, default=spoken(os.environ), help="language of words")


def run(args: argparse.Namespace) -> int:
    """0 when it was restored whole, 1 when the backup has faults, 2 when nothing could be done."""
    made = set_back(settings_from(os.environ), args.backup.resolve(), args.despite_faults)
    words = Words(shipped("static") / "words")
    print("\n".join(fault_lines(made.faults, words, args.lang)), end="\n" if made.faults else "", file=sys.stderr)
    if not made.done:
        print(words.say("upkeep.restore.faulty", args.lang, {"count": len(made.faults)}), file=sys.stderr)
        return FAULTY
    facts = {"data": settings_from(os.environ).data, "at": made.page.at, "last": made.page.last, "seq": made.seq,
             "invitations": made.invitations}  # fmt: skip
    for part in ("done", "said", "by_hand"):
        print(words.say(f"upkeep.restore.{part}", args.lang, facts))
    return FAULTY if made.faults else 0


def set_back(settings: Settings, backup: Path, despite: bool = False, clock: Clock = system_clock) -> Restored:
    """As ``upkeep.restore``; what the laid out store has to say is said here, with every part at hand."""

    def say(folder: Path) -> tuple[int, int]:
        app = create_app(replace(settings, data=folder, database_url=sqlite_in(folder)), clock)
        with app.app_context():
            parts, invitations = app.extensions["seamwalk"], app.extensions["office"].invitations
            newest = parts.statements.last()
            if newest and datetime.fromisoformat(_at(parts.statements.at(newest))) > clock():
                raise BadInput("restore_clock", "clock", clock().isoformat())
            with parts.transactions.writing():
                seq = parts.statements.restore().seq
                withdrawn = invitations.withdraw_all()
            db.engine.dispose()
        return seq, withdrawn

    return restore(backup, settings.data, settings.database_url, say, despite)


def _at(statement: str) -> str:
    return str(parse_statement(statement).payload["at"])
