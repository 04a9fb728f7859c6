"""``seamwalk calc NAME key=value … [--json]``: every rule from the shell, for people and for outside checks."""

import argparse
import json
import os
import sys
from typing import Any

from inspect_app.commands import calc_layout
from inspect_app.commands.calc_names import read_inputs, rule_meant
from inspect_app.commands.calc_page import answer_page, as_object, inputs_page, refusal, rules_page, titles
from inspect_app.commands.calc_range import accepted_range
from inspect_app.errors import BadInput
from inspect_app.rules.refused import Refused
from inspect_app.rules.rulebook import full_name, judge, names
from inspect_app.settings import shipped
from inspect_app.words import LANGUAGES, Words, spoken


def add_to(subparsers: Any) -> None:
    """The words of the command line."""
    parser = subparsers.add_parser(
        "calc", help="compute one rule",
        description=f"Rules: {', '.join(names())}; layout FILE for a roof area. Without a name: lists them. "
        "With a name alone: lists its inputs.",
    )  # fmt: skip
    parser.add_argument("rule", nargs="?", metavar="NAME", help="a rule, as window or window@1")
    given = "inputs with units; units=US or units=SI; a file for layout"
    parser.add_argument("inputs", nargs="*", metavar="key=value", help=given)
    parser.add_argument("--json", action="store_true", help="one JSON object")
    parser.add_argument("--lang", choices=LANGUAGES, default=spoken(os.environ), help="language of words")


def run(args: argparse.Namespace) -> int:
    """0 for a computed answer, 2 for refused input with field, value and way out on standard error."""
    words = Words(shipped("static") / "words")
    if args.rule is None:
        listed = {"rules": titles(words, args.lang)}
        print(json.dumps(listed, ensure_ascii=False) if args.json else rules_page(words, args.lang))
        return 0
    if args.rule == calc_layout.NAME:
        return calc_layout.run(args.inputs, args.json, words, args.lang)
    name: str | None = None
    keys: dict[str, str] = {}
    try:
        name = full_name(rule_meant(args.rule, args.inputs))
        if not args.inputs:
            print(inputs_page(name, words, args.lang))
            return 0
        inputs, units, keys = read_inputs(name, args.inputs)
        found = judge(name, inputs, units)
    except (Refused, BadInput) as refused:
        print(refusal(refused, words, args.lang, accepted_range(refused, name), keys), file=sys.stderr)
        return 2
    if args.json:
        print(json.dumps(as_object(found, words, args.lang), ensure_ascii=False, allow_nan=False))
    else:
        print(answer_page(found, words, args.lang))
    return 0
