"""``seamwalk package JOB``: everything of a job that a stranger needs to check it, as a folder or a zip file."""

import argparse
import os
import sys
from pathlib import Path
from typing import Any

from inspect_app.application import create_app
from inspect_app.commands.known_job import require_job
from inspect_app.errors import BadInput
from inspect_app.package.archive import write_zip
from inspect_app.package.folder import write_folder
from inspect_app.settings import settings_from
from inspect_app.words import LANGUAGES, Words, spoken

LACKS = ("missing_photos", "damaged_photos", "missing_definitions", "missing_reports")


def add_to(subparsers: Any) -> None:
    parser = subparsers.add_parser("package", help="make a job's evidence package")
    parser.add_argument("job", help="the job's id")
    where = "a new or empty folder, or a new file; else a folder in the data folder"
    parser.add_argument("--to", type=Path, metavar="FOLDER|FILE.zip", help=where)
    parser.add_argument("--lang", choices=LANGUAGES, default=spoken(os.environ), help="language of words")


def run(args: argparse.Namespace) -> int:
    """0 when the package was made, also where something is missing in it: that is said on standard error."""
    app = create_app(settings_from(os.environ))
    parts, packer = app.extensions["seamwalk"], app.extensions["packages"]
    with app.app_context():
        require_job(parts, args.job, args.lang)
        packed = packer.pack(args.job, parts.clock())
        target = args.to or packer.folder / packed.bag.name
        try:
            if target.suffix.lower() == ".zip":
                write_zip(packed.bag, target)
            else:
                write_folder(packed.bag, target, parts.settings.data)
        except OSError as error:
            raise BadInput("package_unwritable", "to", f"{target} ({error.strerror or error})") from error
    tell(packed.told["counts"], target, parts.words, args.lang)
    return 0


def tell(counts: dict[str, int], target: Path, words: Words, language: str) -> None:
    """Where it is and what is in it; on standard error what is not."""
    print(words.say("package.command.made", language, counts | {"target": target}))
    for lack in LACKS:
        if counts[lack]:
            print(words.say(f"package.command.{lack}", language, {"count": counts[lack]}), file=sys.stderr)
