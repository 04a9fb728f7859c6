"""Headers of every answer: only our own code runs, nothing is guessed, framed or told to other sites. A phone's nonce
comes back with its answer, so that no portal's page and no stored answer passes for ours."""

import re

from flask import Flask, Response, request

POLICY = "; ".join(
    (
        "default-src 'self'",
        "script-src 'self' 'wasm-unsafe-eval'",  # the rulebook runs as WebAssembly
        "img-src 'self' blob: data:",
        "worker-src 'self'",
        "object-src 'none'",
        "base-uri 'none'",
        "form-action 'self'",
        "frame-ancestors 'none'",
    )
)
HEADERS = {
    "Content-Security-Policy": POLICY,
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
}
ASK, ANSWER = "Seamwalk-Ask", "Seamwalk-Answer"
NONCE = re.compile(r"[A-Za-z0-9_-]{1,64}")


def install(app: Flask) -> None:
    app.after_request(add_headers)


def add_headers(response: Response) -> Response:
    for name, value in HEADERS.items():
        response.headers.setdefault(name, value)
    if request.path.startswith("/api/"):
        response.headers.setdefault("Cache-Control", "no-store")
    if NONCE.fullmatch(asked := request.headers.get(ASK, "")):
        response.headers[ANSWER] = asked
    return response
