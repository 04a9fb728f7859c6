"""``seamwalk job``: register a job, its approved assemblies and its roof areas from one file."""

import argparse
import os
from pathlib import Path
from typing import Any

from inspect_app.application import create_app
from inspect_app.errors import NotFound
from inspect_app.intake.job_file import read_yaml
from inspect_app.intake.register_job import register_job
from inspect_app.settings import settings_from


def add_to(subparsers: Any) -> None:
    parser = subparsers.add_parser("job", help="register a job from a file")
    actions = parser.add_subparsers(dest="action", required=True, metavar="ACTION")
    add = actions.add_parser("add", help="register a job; prints its id")
    add.add_argument("file", type=Path, help="a job file, as inspect_app/demo/scenario.yaml")
    add.add_argument("--by", required=True, metavar="LOGIN", help="the administrator who answers for it")


def run(args: argparse.Namespace) -> int:
    page = read_yaml(args.file.read_text("utf-8"))
    app = create_app(settings_from(os.environ))
    with app.app_context():
        parts = app.extensions["seamwalk"]
        person = parts.accounts.by_login(args.by)
        if person is None:
            raise NotFound("login_unknown", "login", args.by)
        definitions = parts.definitions.newest()
        job = register_job(page, person, definitions, parts.devices, parts.batches, parts.new_id, parts.clock())
    print(job)
    return 0
