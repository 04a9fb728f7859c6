"""``seamwalk report JOB``: make a job's sealed report as it stands now."""

import argparse
import os
import shutil
import sys
from pathlib import Path
from typing import Any

from inspect_app.application import create_app
from inspect_app.commands.known_job import require_job
from inspect_app.errors import BadInput
from inspect_app.report.seal_key import UnreadableKey
from inspect_app.settings import settings_from
from inspect_app.web.reports_desk import maker
from inspect_app.words import LANGUAGES, spoken


def add_to(subparsers: Any) -> None:
    parser = subparsers.add_parser("report", help="make a job's sealed report")
    parser.add_argument("job", help="the job's id")
    parser.add_argument("--out", help="also copy the PDF to this file")
    parser.add_argument("--paper", choices=("letter", "a4"), help="instead of the job's own")
    parser.add_argument("--lang", choices=LANGUAGES, help="instead of the job's own and, here, the machine's")


def run(args: argparse.Namespace) -> int:
    app = create_app(settings_from(os.environ))
    with app.app_context():
        parts = app.extensions["seamwalk"]
        require_job(parts, args.job, args.lang or spoken(os.environ))
        try:
            made = maker().make(args.job, args.paper, args.lang)
        except UnreadableKey as reason:
            raise BadInput(f"seal_{reason.reason}", "SEAMWALK_SEAL_PKCS12", str(reason.path)) from None
    pdf = made.shelved.pdf
    assert pdf is not None
    if args.out:
        try:
            shutil.copyfile(pdf, args.out)
        except OSError:
            raise BadInput("file_unwritable", "out", args.out) from None
        pdf = Path(args.out)
    say, language = parts.words.say, args.lang or spoken(os.environ)
    facts = {"number": made.shelved.number, "file": pdf, "digest": made.shelved.contents,
             "fingerprint": made.contents["hashes"]["fingerprint"]}  # fmt: skip
    print(say("report.command.made" if made.new else "report.command.same", language, facts))
    if not made.contents["final"]:
        missing = len(made.contents["missing"])
        key = "report.command.draft.one" if missing == 1 else "report.command.draft"
        print(say(key, language, {"count": missing}), file=sys.stderr)
    return 0
