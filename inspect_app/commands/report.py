"""``seamwalk report JOB``: make a sealed report of a job as it stands now, of the whole of it or of a part; or list
those that were made."""

import argparse
import os
import shutil
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

from inspect_app.application import create_app
from inspect_app.commands import report_scope
from inspect_app.commands.known_job import require_job
from inspect_app.errors import BadInput
from inspect_app.report.make import Made
from inspect_app.report.seal_key import UnreadableKey
from inspect_app.report.shelf_list import listed
from inspect_app.settings import settings_from
from inspect_app.web.reports_desk import maker
from inspect_app.words import LANGUAGES, spoken


def add_to(subparsers: Any) -> None:
    parser = subparsers.add_parser("report", help="make a job's sealed report")
    parser.add_argument("job", help="the job's id")
    report_scope.add_to(parser)
    parser.add_argument("--out", help="also copy the PDF to this file")
    parser.add_argument("--paper", choices=("letter", "a4"), help="instead of the job's own")
    parser.add_argument("--units", choices=("US", "SI"), help="instead of the job's own")
    parser.add_argument("--lang", "--language", dest="lang", choices=LANGUAGES,
                        help="instead of the job's own and, here, the machine's")  # fmt: skip
    parser.add_argument("--list", action="store_true", help="make none: tell which there are")


def run(args: argparse.Namespace) -> int:
    app = create_app(settings_from(os.environ))
    with app.app_context():
        parts = app.extensions["seamwalk"]
        language = args.lang or spoken(os.environ)

        def say(key: str, **facts: object) -> str:
            return str(parts.words.say(key, language, facts))

        require_job(parts, args.job, language)
        if args.list:
            _list(args.job, say)
            return 0
        scope = report_scope.scope_in(args, parts.records.record(args.job), say)
        try:
            made = maker().make(args.job, args.paper, args.lang, args.units, scope)
        except UnreadableKey as reason:
            raise BadInput(f"seal_{reason.reason}", "SEAMWALK_SEAL_PKCS12", str(reason.path)) from None
    _tell(made, _copied(made, args.out), say)
    return 0


def _copied(made: Made, out: str | None) -> Path:
    pdf = made.shelved.pdf
    assert pdf is not None
    if not out:
        return pdf
    try:
        shutil.copyfile(pdf, out)
    except OSError:
        raise BadInput("file_unwritable", "out", out) from None
    return Path(out)


def _tell(made: Made, pdf: Path, say: Callable[..., str]) -> None:
    facts = {"number": made.shelved.number, "file": pdf, "digest": made.shelved.contents,
             "fingerprint": made.contents["hashes"]["fingerprint"]}  # fmt: skip
    print(say("report.command.made" if made.new else "report.command.same", **facts))
    if not made.contents["final"]:
        missing = len(made.contents["missing"])
        print(say("report.command.draft.one" if missing == 1 else "report.command.draft", count=missing),
              file=sys.stderr)  # fmt: skip


def _list(job: str, say: Callable[..., str]) -> None:
    told = listed(maker().shelf.ready(job))
    if not told:
        print(say("report.command.none"))
    for one in told:
        state = "superseded" if one["superseded_by"] else "holds" if one["final"] else "draft"
        facts = {name: one[name] for name in ("number", "superseded_by")}
        print(say(f"report.command.listed.{state}", kind=say(f"report.kind.{one['kind']}"),
                  issued=str(one["issued"])[:16].replace("T", " "), **facts))  # fmt: skip
