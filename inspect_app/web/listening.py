"""Listen for HTTP: the server that the app is served by, here and in the demonstration."""

from typing import Any

from flask import Flask
from waitress import create_server

from inspect_app.errors import BadInput

THREADS = 8
LARGEST_BODY = 64 * 1024 * 1024


def listening(app: Flask, host: str, port: int) -> Any:
    """A waitress server that has its socket; ``run()`` serves. It reads whole bodies before a thread is used,
    so slow phones hold none. Raises ``BadInput`` for an address that cannot be had."""
    try:
        return create_server(
            app, host=host, port=port, threads=THREADS, max_request_body_size=LARGEST_BODY, ident=None
        )
    except (OSError, ValueError) as error:
        raise BadInput("address_not_had", "address", f"{host}:{port}") from error


def address(server: Any) -> str:
    """``http://HOST:PORT`` of a listening server."""
    host = server.effective_host
    return f"http://{'[' + host + ']' if ':' in host else host}:{server.effective_port}"
