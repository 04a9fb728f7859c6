"""Serve a WSGI app on a socket in this process, or the real app in another that can be killed."""

import contextlib
import socket
import subprocess
import sys
import threading
import time
from collections.abc import Iterator
from pathlib import Path

import waitress.server
import werkzeug.serving

from inspect_app.web.listening import stop

REPOSITORY = Path(__file__).resolve().parents[2]


@contextlib.contextmanager
def served(app) -> Iterator[int]:
    """The app under waitress, in a thread; gives its port."""
    server = waitress.server.create_server(app, host="127.0.0.1", port=0, threads=4, map={})
    threading.Thread(target=server.run, daemon=True).start()
    try:
        yield server.effective_port
    finally:
        stop(server)


@contextlib.contextmanager
def served_streaming(app) -> Iterator[int]:
    """The app under a server that hands the body on as it arrives; gives its port."""
    server = werkzeug.serving.make_server("127.0.0.1", 0, app, threaded=True)
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()
    try:
        yield server.server_port
    finally:
        server.shutdown()
        thread.join(5)


class Killable:
    """The real app in a process of its own, on the same port in each of its lives."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        with socket.socket() as free:
            free.bind(("127.0.0.1", 0))
            self.port = free.getsockname()[1]
        self.start()

    def start(self) -> None:
        command = [sys.executable, "-m", "tests.tus.real_app", str(self.folder), str(self.port)]
        self.process = subprocess.Popen(command, cwd=REPOSITORY)
        for _ in range(2400):
            with contextlib.suppress(OSError), socket.create_connection(("127.0.0.1", self.port), 1):
                return
            time.sleep(0.025)
        self.kill()
        raise RuntimeError("the server did not start")

    def kill(self) -> None:
        """As a power cut, but for the disk's own cache."""
        self.process.kill()
        self.process.wait()
