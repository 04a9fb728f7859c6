"""Every exception becomes HTTP here, in one JSON shape; nobody ever sees a traceback."""

import logging
from typing import Any

from flask import Flask, request
from werkzeug.exceptions import HTTPException

from inspect_app.entry.refusal import Refused
from inspect_app.errors import (
    BadInput,
    Busy,
    Conflict,
    Gone,
    NotAllowed,
    NotFound,
    NotSignedIn,
    Problem,
    StorageBusy,
    StorageFull,
    TooLarge,
    TooOften,
)
from inspect_app.store.trouble import trouble
from inspect_app.web.bad_request import first_fault
from inspect_app.web.error_body import error_body

Answer = tuple[dict[str, Any], int, dict[str, str]]

STATUS: dict[type[Problem], int] = {
    BadInput: 400, NotSignedIn: 401, NotAllowed: 403, NotFound: 404, Conflict: 409, Gone: 410, TooLarge: 413,
    TooOften: 429, Busy: 503, StorageBusy: 503, StorageFull: 507,
}  # fmt: skip
HTTP = {404: "not_found", 405: "wrong_method", 413: "too_large", 415: "not_json"}

log = logging.getLogger("seamwalk")


def install(app: Flask) -> None:
    """Register the handlers. After the API's own, which they replace."""
    app.register_error_handler(Problem, problem)
    app.register_error_handler(Refused, refused)
    app.register_error_handler(HTTPException, http)
    app.register_error_handler(RecursionError, nested)
    app.register_error_handler(ValueError, endless)
    app.register_error_handler(Exception, unexpected)


def problem(error: Problem) -> Answer:
    status = STATUS.get(type(error), 400)
    headers = {}
    if status == 401:
        headers["WWW-Authenticate"] = 'Bearer realm="seamwalk"'
    if status in (429, 503):
        headers["Retry-After"] = str(error.value or 2)
    return error_body(error.code, error.field, error.value), status, headers


def refused(error: Refused) -> Answer:
    return error_body(error.code, error.field, error.value, "refusal"), 400, {}


def http(error: HTTPException) -> Answer:
    status = error.code or 500
    # Only what says how to go on: an error's own body and type are replaced by ours.
    headers = {name: value for name, value in error.get_headers() if name in ("Allow", "Retry-After")}
    if status == 422 or (status == 400 and request.is_json):
        code, field, value = first_fault(error)
        return error_body(code, field, value), 400, headers
    field = "method" if status == 405 else "address" if status == 404 else "request"
    value = request.method if status == 405 else request.path if status == 404 else status
    return error_body(HTTP.get(status, "request_refused"), field, value), status, headers


def nested(_error: RecursionError) -> Answer:
    # JSON nested thousands deep exhausts the parser's stack; it carries nothing anyone would send.
    return error_body("bad_json", "request", "nesting"), 400, {}


def endless(error: ValueError) -> Answer:
    # A number of thousands of digits: Python reads none (CVE-2020-10735), and its parser says so in no other way.
    if request.is_json and "integer string" in str(error):
        return error_body("bad_json", "request", "digits"), 400, {}
    return unexpected(error)


def unexpected(error: Exception) -> Answer:
    known = trouble(error)
    if known is not None:
        log.error("%s %s: %s", request.method, _path(), error)
        return problem(known)
    log.exception("%s %s", request.method, _path())
    return error_body("internal", "server", None), 500, {}


def _path() -> str:
    """Without the secret of a link: whoever reads the log is to open nothing by it."""
    secret = (request.view_args or {}).get("secret")
    return request.path.replace(secret, "<secret>") if secret else request.path
