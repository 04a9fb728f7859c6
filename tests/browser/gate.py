"""Between phone and server: answers in the server's place when a test says so, in JSON as the server itself (with the
phone's nonce), in HTML or as "200 JSON" as somebody else."""

import contextlib
import io
import json
import random
import socket
import threading
from collections.abc import Callable, Iterable

from werkzeug.wrappers import Request, Response

LIES = (
    "200 without receipt", "forged receipt", "301", "400", "401", "403", "404", "409", "413", "422", "429",
    "500", "502 HTML", "200 HTML", "200 JSON", "reset", "answer lost",
)  # fmt: skip


class Gate:
    """WSGI in front of an app. ``lie(request) -> one of LIES or None`` decides each request to the API,
    ``lie_files`` each other one."""

    def __init__(self, app: Callable, forge: Callable[[str], str]) -> None:
        self.app, self.forge = app, forge
        self.lie: Callable[[Request], str | None] = lambda request: None
        self.lie_files: Callable[[Request], str | None] = lambda request: None
        self.open = True
        self.seen: list[str] = []
        self.bodies: list[object] = []  # of packs asked for
        self.lies: dict[str, int] = {}
        self._lock = threading.Lock()

    def __call__(self, environ: dict, start_response: Callable) -> Iterable[bytes]:
        if not self.open:
            raise hung_up(environ)
        request = Request(environ)
        with self._lock:
            self.seen.append(f"{request.method} {request.path}")
            if request.path == "/pack":
                environ["wsgi.input"] = io.BytesIO(request.get_data())  # read once more by the app
                self.bodies.append(json.loads(request.get_data()))
            lie = self.lie(request) if request.path.startswith("/api/") else self.lie_files(request)
            if lie:
                self.lies[lie] = self.lies.get(lie, 0) + 1
        if lie is None:
            return self.app(environ, start_response)
        return self._answer(lie, request, environ)(environ, start_response)

    def _answer(self, lie: str, request: Request, environ: dict) -> Response:
        answer = {"Seamwalk-Answer": request.headers.get("Seamwalk-Ask", "")}
        if lie in ("reset", "answer lost"):
            if lie == "answer lost":  # the server did its work; the phone never hears of it
                list(self.app(environ, lambda status, headers, exc_info=None: None))
            else:
                request.get_data()  # the development server waits for what it has not read, and cuts nothing till then
            return Response(Broken(), mimetype="application/json", headers={"Content-Length": "1000", **answer})
        answers = [{"digest": "x" * 43, "status": "accepted"}]
        body = json.dumps({"answers": answers, "entries": [], "jobs": []})
        if lie == "200 JSON":
            return Response(body, mimetype="application/json")
        if lie == "200 without receipt":
            return Response(body, mimetype="application/json", headers=answer)
        if lie == "forged receipt":
            return Response(self._forged(request), mimetype="application/json", headers=answer)
        if lie == "301":
            return Response(status=301, headers={"Location": "/sign-in-here"})
        if lie.endswith("HTML"):
            return Response("<html>another place</html>", int(lie[:3]), mimetype="text/html")
        error = {"code": "lie", "field": "", "value": "", "message": f"lie {lie}", "way_out": ""}
        return Response(json.dumps({"error": error}), int(lie), mimetype="application/json", headers=answer)

    def _forged(self, request: Request) -> str:
        tokens = (request.get_json(silent=True) or {}).get("entries", []) if request.is_json else []
        answers = [self.forge(token) for token in tokens]
        return json.dumps({"answers": answers, "receipt": self.forge(request.args.get("sha256", ""))})


def hung_up(environ: dict) -> ConnectionError:
    """The connection ends now: one that ends before its answer has begun, the development server would leave open, and
    a browser waits for it without end."""
    if connection := environ.get("werkzeug.socket"):
        with contextlib.suppress(OSError):  # cut by the other side already
            connection.shutdown(socket.SHUT_RDWR)
    return ConnectionError("the link is cut")


class Broken:
    """A body that ends before it is whole."""

    def __iter__(self):
        yield b"{"
        raise ConnectionError("cut")


def liar(seed: int, share: float) -> Callable[[Request], str | None]:
    """A seeded lie for the given share of requests."""
    dice = random.Random(seed)
    return lambda request: dice.choice(LIES) if dice.random() < share else None


def free_port() -> int:
    with socket.socket() as free:
        free.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        free.bind(("127.0.0.1", 0))
        return free.getsockname()[1]
