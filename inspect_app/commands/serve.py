"""``seamwalk serve``: the app and its HTTP interface, until it is stopped."""

import argparse
import os
from dataclasses import replace
from typing import Any

from flask import Flask

from inspect_app.application import create_serving_app
from inspect_app.settings import port_of, settings_from
from inspect_app.web.listening import address, listening


def add_to(subparsers: Any) -> None:
    parser = subparsers.add_parser("serve", help="serve the app")
    parser.add_argument("--host", help="address to listen on (SEAMWALK_HOST, 127.0.0.1)")
    parser.add_argument("--port", help="port to listen on, 0 for any free one (SEAMWALK_PORT, 8000)")


def run(args: argparse.Namespace) -> int:
    settings = settings_from(os.environ)
    if args.host:
        settings = replace(settings, host=args.host)
    if args.port:
        settings = replace(settings, port=port_of(args.port))
    serve(create_serving_app(settings), settings.host, settings.port)
    return 0


def serve(app: Flask, host: str, port: int) -> None:
    """Serve until interrupted. Prints the address once it is listening. Raises ``BadInput`` for an address
    that cannot be had."""
    server = listening(app, host, port)
    print(f"Seamwalk: {address(server)}", flush=True)
    server.run()
