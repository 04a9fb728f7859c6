"""``seamwalk fingerprint``: what a seal and this server's key are compared with, to be read out by telephone."""

import argparse
import os
from typing import Any

from inspect_app.application import create_app, seal_key
from inspect_app.entry.base64url import decode
from inspect_app.errors import BadInput
from inspect_app.report.seal_key import UnreadableKey, grouped
from inspect_app.settings import settings_from
from inspect_app.words import LANGUAGES, spoken


def add_to(subparsers: Any) -> None:
    parser = subparsers.add_parser("fingerprint", help="the seal's and the server's fingerprints, to be read out")
    parser.add_argument("--lang", choices=LANGUAGES, default=spoken(os.environ), help="language of words")


def run(args: argparse.Namespace) -> int:
    """The seal's key is made here where no report was made yet."""
    app = create_app(settings_from(os.environ))
    with app.app_context():
        parts = app.extensions["seamwalk"]
        try:
            seal = seal_key(parts)
        except UnreadableKey as reason:
            raise BadInput(f"seal_{reason.reason}", "SEAMWALK_SEAL_PKCS12", str(reason.path)) from None
    server = decode(parts.server_key.kid, "kid").hex()
    facts = {"name": seal.name, "until": seal.until, "seal": grouped(seal.fingerprint), "server": grouped(server)}
    print(parts.words.say("fingerprint.command", args.lang, facts))
    return 0
