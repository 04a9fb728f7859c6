"""``seamwalk``: one command, a module of ``inspect_app.commands`` for each of its words."""

import argparse
import os
import sys
from collections.abc import Sequence
from importlib import import_module

from inspect_app.errors import BadInput, Problem
from inspect_app.settings import shipped
from inspect_app.store.trouble import trouble
from inspect_app.words import Words, spoken

COMMANDS = ("serve", "demo", "user", "job", "report", "countersign", "fingerprint", "package", "import", "verify",
            "rebuild", "check", "backup", "restore", "remember", "checklist", "calc")  # fmt: skip
REFUSED = 2


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command; its exit code: 0 done, 2 refused input with the reason on standard error."""
    parser = argparse.ArgumentParser(prog="seamwalk", description="Check standing seam metal roofs.")
    subparsers = parser.add_subparsers(dest="command", required=True, metavar="COMMAND")
    words = sys.argv[1:] if arguments is None else list(arguments)
    # Only the command that was named is loaded: `calc` need not wait for the report's machinery.
    for name in [words[0]] if words and words[0] in COMMANDS else COMMANDS:
        import_module(f"inspect_app.commands.{name}").add_to(subparsers)
    args = parser.parse_args(words)
    language = getattr(args, "lang", None) or spoken(os.environ)
    try:
        return int(import_module(f"inspect_app.commands.{args.command}").run(args))
    except KeyboardInterrupt:
        return 130
    except Problem as problem:
        return explain(problem, language)
    except Exception as error:
        known = trouble(error) or unusable(error)
        if known is None:
            raise
        return explain(known, language)


def unusable(error: Exception) -> Problem | None:
    """A file or folder that cannot be used, as a person has to be told; None for any other error."""
    if isinstance(error, OSError) and error.filename is not None:
        return BadInput("file_unusable", str(error.filename), error.strerror)
    return None


def explain(problem: Problem, language: str) -> int:
    """Say on standard error what is wrong, with field, value and way out; the exit code for it."""
    words = Words(shipped("static") / "words")
    key = f"error.{problem.code}"
    if f"{key}.message" not in words:
        key = "error.request_refused"
    facts = {"field": problem.field, "value": problem.value}
    print(f"{problem.field}: {problem.value}", file=sys.stderr)
    for part in ("message", "way_out"):
        print(words.say(f"{key}.{part}", language, facts), file=sys.stderr)
    return REFUSED


if __name__ == "__main__":
    sys.exit(main())
