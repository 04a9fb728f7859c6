"""``seamwalk checklist check``: what is wrong with definitions, or a folder of them; ``schema``: the JSON Schema."""

import argparse
import os
import sys
from pathlib import Path
from typing import Any

from inspect_app.checklist.compile import Compiled
from inspect_app.checklist.json_schema import schema_text
from inspect_app.checklist.load import check_file, rulebook_rules
from inspect_app.checklist.rule_use import Rules
from inspect_app.errors import BadInput
from inspect_app.settings import shipped
from inspect_app.words import LANGUAGES, Words, spoken

FOUND = 2


def add_to(subparsers: Any) -> None:
    parser = subparsers.add_parser("checklist", help="check checklist definitions")
    parts = parser.add_subparsers(dest="part", required=True, metavar="check|schema")
    check = parts.add_parser("check", help="say every problem of definition files, with its line")
    check.add_argument("file", nargs="+", type=Path, help="a definition, named ID-VERSION.yaml, or a folder of them")
    check.add_argument("--language", choices=LANGUAGES, help="en or es; else the language of the shell")
    schema = parts.add_parser("schema", help="print the JSON Schema of definitions")
    schema.add_argument("file", nargs="?", type=Path, help="write it to this file instead")


def run(args: argparse.Namespace) -> int:
    """0 when everything is in order, 2 when a definition has problems. Raises ``BadInput`` for a file that
    cannot be read or written."""
    if args.part == "schema":
        return _schema(args.file)
    words, rules = Words(shipped("static") / "words"), rulebook_rules()
    files = [file for given in args.file for file in _files(given)]
    return max(_check(file, rules, words, args.language or spoken(os.environ)) for file in files)


def _files(given: Path) -> list[Path]:
    """A folder's definitions, by name. One without any is a slip of the hand, never "no problems"."""
    found = sorted(given.glob("*.yaml")) if given.is_dir() else [given]
    if not found:
        raise BadInput("file_unusable", "file", str(given / "*.yaml"))
    return found


def _check(file: Path, rules: Rules, words: Words, language: str) -> int:
    try:
        found = check_file(file, rules)
    except OSError as error:
        raise BadInput("file_unusable", "file", str(file)) from error
    if isinstance(found, Compiled):
        known = found.definition
        print(f"{file}: {known['id']} {known['version']}, {len(known['items'])} items, {found.digest}")
        return 0
    for problem in found:
        print(f"{file}:{problem.sentence(words, language)}")
    return FOUND


def _schema(file: Path | None) -> int:
    if file is None:
        sys.stdout.write(schema_text())
        return 0
    try:
        file.write_text(schema_text(), "utf-8", newline="\n")
    except OSError as error:
        raise BadInput("file_unusable", "file", str(file)) from error
    return 0
