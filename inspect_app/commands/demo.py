"""``seamwalk demo``: the main job on an invented roof, then the app to look at."""

import argparse
import os
import sys
from dataclasses import replace
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any

from inspect_app.application import create_app, create_serving_app
from inspect_app.clock import system_clock
from inspect_app.commands.again import verify_again
from inspect_app.commands.serve import serve
from inspect_app.commands.verify_told import told
from inspect_app.demo.firms import NOTE
from inspect_app.demo.run import LENGTH, Demonstration, known, make
from inspect_app.settings import Settings, settings_from, sqlite_in
from inspect_app.web.reports_desk import maker
from inspect_app.words import Words

FOLDER = "demo-data"


def add_to(subparsers: Any) -> None:
    parser = subparsers.add_parser("demo", help="an invented job, from the walk to the verified report")
    parser.add_argument("--once", action="store_true", help="stop after the verified report")
    parser.add_argument("--folder", default=FOLDER, help=f"where it is kept ({FOLDER})")
    parser.add_argument("--port", default=None, help="port to serve on (8000)")


def run(args: argparse.Namespace) -> int:
    """0 when the report verifies; 1 when a fact about it fails."""
    environment = {name: value for name, value in os.environ.items() if not name.startswith("SEAMWALK_DATA")}
    settings = settings_from(environment | ({"SEAMWALK_PORT": args.port} if args.port else {}))
    folder = Path(args.folder).resolve()
    made = known(folder)
    if made is None:
        print("making the demonstration: everything in it is invented", flush=True)
        begun = dusk(datetime.now().astimezone())
        made = make(folder, lambda data: create_app(_in(settings, data)), begun, os.urandom,
                    lambda said: print(said, flush=True))  # fmt: skip
    app = create_app(_in(settings, folder), system_clock)
    with app.app_context():
        shelved = maker().make(made.job).shelved
        fingerprint = maker().key().fingerprint
    assert shelved.pdf is not None
    verification = verify_again(shelved.pdf.read_bytes(), [fingerprint])
    print("\n".join(told(verification, Words(settings.static / "words"), "en")))
    print(f"report: {os.path.relpath(shelved.pdf)}")
    command = _as_called(sys.argv[0])
    print(f"again:  {command} verify {os.path.relpath(shelved.pdf)} --trust {fingerprint}")
    print(f"everything, to be checked: SEAMWALK_DATA={os.path.relpath(folder)} {command} package {made.job}",
          flush=True)  # fmt: skip
    if verification.failed:
        return 1
    if not args.once:
        _tell(made, settings)
        serve(create_serving_app(_in(settings, folder)), settings.host, settings.port)
    return 0


def _as_called(name: str) -> str:
    """The command so that it can be pasted: ``make`` runs one that no path names."""
    return os.path.relpath(name) if Path(name).name == "seamwalk" and os.sep in name else "seamwalk"


def dusk(now: datetime) -> datetime:
    """The last 17:40 from which the whole walk is over by ``now``: nobody reports a walk that is still to come."""
    today = now.replace(hour=17, minute=40, second=0, microsecond=0)
    return today if today + LENGTH <= now else today - timedelta(days=1)


def _in(settings: Settings, data: Path) -> Settings:
    """The embedded default, whatever database the environment names: a demonstration stays in its folder."""
    return replace(settings, data=data, database_url=sqlite_in(data))


def _tell(made: Demonstration, settings: Settings) -> None:
    print("sign in with (all invented, for this machine only):")
    for person in made.people:
        print(f"  {person['login']:<10} {person['password']}   {person['name']}, {person['role']}")
    link = made.folder / NOTE
    if link.is_file():
        here = f"http://{settings.host}:{settings.port}" if settings.port else ""  # 0: any that is free, told below
        print(f"to read without signing in, as a claims reviewer would: {here}{link.read_text('utf-8').strip()}")
