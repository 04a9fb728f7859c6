"""A link that ends after so many bytes of the app's own files have passed, counted together on all connections."""

import threading
from collections.abc import Callable, Iterable
from typing import Any

from tests.browser.gate import hung_up

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
        return self._through(answer, environ) if environ["PATH_INFO"] in FILES else answer

    def _through(self, answer: Any, environ: dict) -> Iterable[bytes]:
        try:
            for block in answer:
                for at in range(0, len(block), PIECE):
                    if not self._lets(piece := block[at : at + PIECE]):
                        raise hung_up(environ)
                    yield piece
        finally:
            getattr(answer, "close", lambda: None)()

    def _lets(self, piece: bytes) -> bool:
        with self._lock:
            if self.left is not None and self.left < len(piece):
                self.left = 0
                return False
            if self.left is not None:
                self.left -= len(piece)
            self.passed += len(piece)
            return True
