"""A small HTTP caller over the standard library: what the simulated phone speaks through.

One method, ``call``; anything that gives the same (a test's own) can stand in its place.
"""

import http.cookiejar
import json
import urllib.error
import urllib.request
from typing import Any, NamedTuple


class Reply(NamedTuple):
    """An HTTP answer: status, headers by lower-case name, body bytes."""

    status: int
    headers: dict[str, str]
    body: bytes

    def json(self) -> Any:
        return json.loads(self.body)


class Http:
    """Calls to one server, keeping its cookies."""

    def __init__(self, server: str, timeout: float = 20.0) -> None:
        self.server = server.rstrip("/")
        self.timeout = timeout
        jar = urllib.request.HTTPCookieProcessor(http.cookiejar.CookieJar())
        self._opener = urllib.request.build_opener(jar)

    def call(
        self, method: str, path: str, body: bytes | Any = None, headers: dict[str, str] | None = None
    ) -> Reply:
        """Send bytes as they are, anything else as JSON. Every status is an answer; only a connection that
        fails raises (``OSError``)."""
        sent = dict(headers or {})
        if body is not None and not isinstance(body, bytes):
            body = json.dumps(body).encode()
            sent.setdefault("Content-Type", "application/json")
        url = path if path.startswith("http") else self.server + path
        request = urllib.request.Request(url, data=body, headers=sent, method=method)
        try:
            with self._opener.open(request, timeout=self.timeout) as answer:
                return Reply(answer.status, _lower(answer.headers), answer.read())
        except urllib.error.HTTPError as error:
            with error:
                return Reply(error.code, _lower(error.headers), error.read())


def _lower(headers: Any) -> dict[str, str]:
    return {name.lower(): value for name, value in headers.items()}
