"""``seamwalk rebuild``: make every derived table again from the log."""

import argparse
import os
from typing import Any

from inspect_app.application import create_app
from inspect_app.settings import settings_from
from inspect_app.store.rebuild import rebuild


def add_to(subparsers: Any) -> None:
    subparsers.add_parser("rebuild", help="make every derived table again from the log")


def run(args: argparse.Namespace) -> int:
    app = create_app(settings_from(os.environ))
    with app.app_context():
        parts = app.extensions["seamwalk"]
        done = rebuild(parts.transactions, parts.records)
    told = f"{done.entries} entries, {done.devices} keys, {done.tickets} tickets, {done.jobs} jobs"
    print(f"rebuilt from the log: {told}")
    return 0
