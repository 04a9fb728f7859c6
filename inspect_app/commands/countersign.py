"""``seamwalk countersign REPORT``: put a second person's signature on a sealed report, by their own key."""

import argparse
import os
import sys
from getpass import getpass
from pathlib import Path
from typing import Any

from inspect_app.application import create_app, signing_means
from inspect_app.clock import system_clock
from inspect_app.commands.visible import visible
from inspect_app.entry.refusal import Refused
from inspect_app.entry.uuid7 import version7
from inspect_app.errors import BadInput, Conflict, NotFound
from inspect_app.report.countersign import CannotCountersign, Hand, countersign_file
from inspect_app.report.seal_key import SealKey, UnreadableKey, given_key, grouped
from inspect_app.settings import settings_from, shipped
from inspect_app.web.countersign_desk import countersigned
from inspect_app.words import LANGUAGES, Words, spoken

PASSPHRASE = "SEAMWALK_COUNTERSIGN_PASSPHRASE"


def add_to(subparsers: Any) -> None:
    parser = subparsers.add_parser("countersign", help="put a second person's signature on a sealed report")
    parser.add_argument("report", help="the PDF, or the id of a job on this server")
    parser.add_argument("--number", type=int, help="of a job: which report")
    parser.add_argument("--pkcs12", metavar="FILE", help="the countersigner's key and certificate")
    parser.add_argument("--signed", metavar="FILE", help="of a job: the report, countersigned by another program")
    parser.add_argument("--words", help="what the countersigner says, shown over their name")
    parser.add_argument("--out", metavar="FILE", help="of a PDF: where the countersigned one goes")
    parser.add_argument("--lang", choices=LANGUAGES, help="language of messages")


def run(args: argparse.Namespace) -> int:
    """The passphrase is asked for at the terminal, or read from ``SEAMWALK_COUNTERSIGN_PASSPHRASE``: arguments are
    seen by everybody on the machine."""
    words, language = Words(shipped("static") / "words"), args.lang or spoken(os.environ)
    if (args.pkcs12 is None) == (args.signed is None):
        raise BadInput("countersign_no_key", "--pkcs12", args.pkcs12 or "—")
    try:
        facts = _of_job(args) if _is_job(args.report) else _of_file(args, words)
    except CannotCountersign as cannot:
        raise Conflict(f"countersign_{cannot.code}", "report", visible(cannot.value)) from None
    except UnreadableKey as reason:
        raise BadInput(f"countersign_{reason.reason}", "--pkcs12", args.pkcs12) from None
    print(words.say("countersign.command.done", language, facts))
    return 0


def _of_file(args: argparse.Namespace, words: Words) -> dict[str, object]:
    if args.signed is not None:
        raise BadInput("countersign_no_job", "--signed", args.signed)
    source = Path(args.report)
    out = Path(args.out) if args.out else source.with_name(f"{source.stem}-countersigned.pdf")
    key = _key(args.pkcs12)
    try:
        hand = Hand(key, system_clock(), args.words)
        countersign_file(source, out, hand, signing_means(settings_from(os.environ), words))
    except FileNotFoundError:
        raise BadInput("file_unreadable", "report", args.report) from None
    except FileExistsError:
        raise BadInput("countersign_out_exists", "--out", str(out)) from None
    return {"name": key.name, "fingerprint": grouped(key.fingerprint), "file": out}


def _of_job(args: argparse.Namespace) -> dict[str, object]:
    if args.number is None:
        raise BadInput("countersign_no_number", "--number", "—")
    app = create_app(settings_from(os.environ))
    with app.app_context():
        desk = countersigned(app)
        if args.signed is None:
            done = desk.sign(args.report, args.number, _key(args.pkcs12), "server", args.words)
        else:
            done = desk.take(args.report, args.number, Path(args.signed), "server")
        if done is None:
            raise NotFound("report_number_unknown", "--number", args.number)
        last = done.signatures[-1]
        kept = desk.shelf.numbered(args.report, args.number)
        assert kept is not None
        return {"name": last["name"], "fingerprint": grouped(str(last["fingerprint"])), "file": kept.pdf}


def _key(path: str) -> SealKey:
    given = os.environ.get(PASSPHRASE)
    if given is None:
        if not sys.stdin.isatty():
            raise BadInput("countersign_no_passphrase", PASSPHRASE, "—")
        given = getpass("PKCS#12: ")
    return given_key(Path(path), given)


def _is_job(text: str) -> bool:
    try:
        version7(text, "job")
    except Refused:
        return False
    return True
