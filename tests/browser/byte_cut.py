"""A link that ends after so many bytes of the app's own files have passed, counted together on all connections."""

import threading
from collections.abc import Callable, Iterable
from typing import Any

PIECE = 256
FILES = ("/sw.js", "/shell.json", "/pack")


class ByteCut:
    """WSGI around an app. ``left``: bytes that may still pass, None for no end; ``passed``: since ``after``."""

    def __init__(self, app: Callable) -> None:
        self.app, self.left, self.passed = app, None, 0
        self._lock = threading.Lock()

    def after(self, count: int | None) -> None:
        with self._lock:
            self.left, self.passed = count, 0

    def __call__(self, environ: dict, start_response: Callable) -> Iterable[bytes]:
        answer = self.app(environ, start_response)
        return self._through(answer) if environ["PATH_INFO"] in FILES else answer

    def _through(self, answer: Any) -> Iterable[bytes]:
        try:
            yield b""  # the head: cut before it, the development server would hold the connection open for ever
            for block in answer:
                for at in range(0, len(block), PIECE):
                    yield self._let(block[at : at + PIECE])
        finally:
            getattr(answer, "close", lambda: None)()

    def _let(self, piece: bytes) -> bytes:
        with self._lock:
            if self.left is not None and self.left < len(piece):
                self.left = 0
                raise ConnectionError("the link is cut")
            if self.left is not None:
                self.left -= len(piece)
            self.passed += len(piece)
            return piece
