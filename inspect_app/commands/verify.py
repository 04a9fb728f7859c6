"""``seamwalk verify FILE|FOLDER``: separate facts about a report or an evidence package, for people and (``--json``)
for programs."""

import argparse
import json
import os
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

from inspect_app.commands.bounded import verify_bounded
from inspect_app.commands.opened import is_archive, open_archive, open_folder
from inspect_app.commands.package_check import check_package
from inspect_app.commands.verify_later import Later
from inspect_app.commands.verify_told import told, told_of_package
from inspect_app.commands.visible import visible
from inspect_app.errors import BadInput
from inspect_app.evidence.fact import FAILS, UNKNOWN, Fact
from inspect_app.evidence.trust import fingerprint_in
from inspect_app.settings import shipped
from inspect_app.words import LANGUAGES, Words, spoken

ALL_HOLD, FALSE, OPEN = 0, 1, 2


def add_to(subparsers: Any) -> None:
    parser = subparsers.add_parser("verify", help="verify a sealed report or an evidence package, fact by fact")
    parser.add_argument("file", help="a report (PDF), or a package: its folder or its zip")
    parser.add_argument(
        "--trust", metavar="FINGERPRINT", action="append", default=[],
        help="of the seal's certificate (SHA-256), of the server's key or of the time authority's certificate, got by "
        "another way; again for each",
    )  # fmt: skip
    parser.add_argument(
        "--later", metavar="FILE", action="append", default=[],
        help="a report, a package or receipts from elsewhere that the package's log must reach; again for more",
    )  # fmt: skip
    parser.add_argument("--contents", metavar="FILE", help="the contents.json that came with a report")
    parser.add_argument(
        "--redraw", action="store_true",
        help="draw pages and printed copies again and compare them too, which takes as long as making the report",
    )  # fmt: skip
    parser.add_argument("--json", action="store_true", help="print one JSON object")
    parser.add_argument("--lang", choices=LANGUAGES, default=spoken(os.environ), help="language of words")


def run(args: argparse.Namespace) -> int:
    """0 when every fact holds; 1 when one is false; 2 when none is, and something is not determinable, does not read,
    or what to trust is mistyped: a slip of the hand must not read as a forged report."""
    for one in args.trust:
        if fingerprint_in(one) is None:
            raise BadInput("not_a_fingerprint", "--trust", visible(one) or "—")
    if _is_package(args.file):
        if args.contents:
            raise BadInput("not_of_a_package", "--contents", visible(args.contents))
        return _package(args)
    if args.later:
        raise BadInput("of_a_package_alone", "--later", visible(args.later[0]))
    found = verify_bounded(
        _read(args.file, "file"), args.trust, _read(args.contents, "contents") if args.contents else None, args.redraw
    )
    return _answered("report", found, told, args)


def exit_code(facts: Sequence[Fact]) -> int:
    """What the shell is told. The first fact says whether the thing reads at all: where nothing else is false either,
    it is unreadable rather than false."""
    if any(fact.status == FAILS for fact in facts[1:]):
        return FALSE
    return OPEN if facts[0].status == FAILS or any(fact.status == UNKNOWN for fact in facts) else ALL_HOLD


def _package(args: argparse.Namespace) -> int:
    path = Path(args.file)
    try:
        opened = open_folder(path) if path.is_dir() else open_archive(path)
        later = Later([Path(one) for one in args.later])
    except OSError:
        raise BadInput("file_unreadable", "file", args.file) from None
    found = check_package(opened, args.trust, later.witnesses, redraw=args.redraw)
    return _answered("package", found, told_of_package, args)


def _answered(kind: str, found: Any, tell: Callable[..., list[str]], args: argparse.Namespace) -> int:
    code = exit_code(found.facts)
    if args.json:
        _print({"kind": kind} | found.plain() | {"failed": found.failed, "exit": code})
    else:
        print("\n".join(tell(found, Words(shipped("static") / "words"), args.lang)))
    return code


def _is_package(name: str) -> bool:
    if name == "-":
        return False
    try:
        return Path(name).is_dir() or is_archive(Path(name))
    except OSError:
        raise BadInput("file_unreadable", "file", name) from None


def _print(found: dict[str, Any]) -> None:
    print(json.dumps(found, ensure_ascii=False, indent=1).encode("utf-8", "backslashreplace").decode())


def _read(name: str, field: str) -> bytes:
    try:
        return sys.stdin.buffer.read() if name == "-" else Path(name).read_bytes()
    except OSError:
        raise BadInput("file_unreadable", field, name) from None
