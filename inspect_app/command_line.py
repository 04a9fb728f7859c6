"""``seamwalk``: one command, a module of ``inspect_app.commands`` for each of its words."""

import argparse
import os
import select
import sys
from collections.abc import Sequence
from importlib import import_module
from typing import TextIO

from inspect_app.errors import BadInput, Problem
from inspect_app.settings import shipped
from inspect_app.store.trouble import trouble
from inspect_app.words import Words, spoken

COMMANDS = ("serve", "demo", "user", "job", "report", "countersign", "fingerprint", "package", "import", "verify",
            "rebuild", "check", "backup", "restore", "remember", "checklist", "calc")  # fmt: skip
REFUSED, INTERRUPTED = 2, 130
UNREAD = 141  # 128 and the number of SIGPIPE (POSIX.1-2017, 2.8.2), as 130 is of SIGINT


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command; its exit code: 0 done, 2 refused input with the reason on standard error, 141 without a word
    where whoever read what it tells has gone (``seamwalk calc | head -1``)."""
    try:
        try:
            return run(arguments)
        finally:
            if sys.stdout is not None:  # closed by whoever started it (``>&-``)
                sys.stdout.flush()  # here, not when the interpreter ends and nobody can catch it
    except BrokenPipeError:
        gone = [unread(one) for one in (sys.stdout, sys.stderr) if one is not None]  # each of them is quieted
        if not any(gone):
            raise
        return UNREAD


def run(arguments: Sequence[str] | None) -> int:
    """As ``main``; ``BrokenPipeError`` is the caller's to understand."""
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
        return INTERRUPTED
    except Problem as problem:
        return explain(problem, language)
    except BrokenPipeError:
        raise
    except Exception as error:
        known = trouble(error) or unusable(error)
        if known is None:
            raise
        return explain(known, language)


def unread(stream: TextIO) -> bool:
    """Whether nobody reads this stream any more; what is left in it then goes nowhere, quietly."""
    try:
        asked = select.poll()
        asked.register(stream, 0)
    except (AttributeError, ValueError):  # a system without it, or a stream that is no file
        return False
    gone = any(event & select.POLLERR for _, event in asked.poll(0))
    if gone:
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, stream.fileno())
        os.close(nowhere)
    return gone


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
