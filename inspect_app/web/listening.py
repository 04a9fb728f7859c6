"""Listen for HTTP: the server that the app is served by, here and in the demonstration."""

from collections.abc import Callable
from threading import Event
from typing import Any

from flask import Flask
from waitress import create_server, wasyncore

from inspect_app.errors import BadInput

THREADS = 8
LARGEST_BODY = 64 * 1024 * 1024
PROXIED = {"x-forwarded-for", "x-forwarded-proto"}
LONGEST_STOP = 10.0  # seconds, for the answers under way and for each turn of the serving thread


def listening(app: Flask, host: str, port: int) -> Any:
    """A waitress server that has its socket; ``run()`` serves. It reads whole bodies before a thread is used,
    so slow phones hold none. A proxy on this same machine is believed who asks, so that one guesser slows down nobody
    else, and that it was asked by HTTPS, so that the cookie travels by nothing less; nobody else is believed either.
    Raises ``BadInput`` for an address that cannot be had."""
    try:
        return create_server(
            app, host=host, port=port, threads=THREADS, max_request_body_size=LARGEST_BODY, ident=None,
            trusted_proxy="127.0.0.1", trusted_proxy_count=1, trusted_proxy_headers=PROXIED,
            clear_untrusted_proxy_headers=True,
        )  # fmt: skip
    except (OSError, ValueError) as error:
        raise BadInput("address_not_had", "address", f"{host}:{port}") from error


def address(server: Any) -> str:
    """``http://HOST:PORT`` of a listening server."""
    host = server.effective_host
    return f"http://{'[' + host + ']' if ':' in host else host}:{server.effective_port}"


def stop(server: Any) -> None:
    """Close the socket and every connection of a server that ``run()`` serves in another thread; ``run()`` then
    returns. The serving thread itself closes them, for it may be waiting on these very descriptors; and its
    waker goes last, once no worker can use it: a number given back is soon another file's."""

    def in_serving_thread(close: Callable[[], None]) -> None:
        done = Event()

        def run() -> None:
            close()
            done.set()

        server.trigger.pull_trigger(run)
        done.wait(LONGEST_STOP)

    def close_connections() -> None:
        for channel in [one for one in server._map.values() if one is not server.trigger]:
            wasyncore.dispatcher.close(channel) if channel is server else channel.close()

    in_serving_thread(close_connections)
    server.task_dispatcher.shutdown(timeout=LONGEST_STOP)
    in_serving_thread(server.trigger.close)
