"""The app itself: its page, its worker, its files, the rulebook's Python files, and the digest list of them.

The worker (``static/sw.js``) installs exactly what ``/shell.json`` lists and checks each digest. ``/sw.js``
is served with the list's digest as its first line, so that a changed file anywhere makes a new worker.
"""

import gzip
import json
import mimetypes
from functools import cache
from pathlib import Path

from flask import Blueprint, Response, abort, jsonify, request, send_file

from inspect_app.errors import BadInput, NotFound
from inspect_app.web.parts import parts
from inspect_app.web.shell_files import Member, ShellFiles

MOST = 100  # files of one pack
PACKAGE = Path(__file__).resolve().parents[1]

# What the machine's own registry says of these types is not to be relied on: a worker of the wrong one fails.
for _type, _suffix in (
    ("text/javascript", ".js"),
    ("text/javascript", ".mjs"),
    ("application/wasm", ".wasm"),
    ("application/manifest+json", ".webmanifest"),
    ("image/svg+xml", ".svg"),
    ("text/plain", ".py"),
):
    mimetypes.add_type(_type, _suffix)

blueprint = Blueprint("shell", __name__)


@cache
def _files(static: Path) -> ShellFiles:
    return ShellFiles(static, PACKAGE)


def files() -> ShellFiles:
    """The running app's files."""
    return _files(parts().settings.static)


@blueprint.get("/")
def page() -> Response:
    """The app's page."""
    return _answer(files().member("/"))


@blueprint.get("/sw.js")
def worker() -> Response:
    """The worker, headed by the build it installs; never from a cache."""
    text = (parts().settings.static / "sw.js").read_text(encoding="utf-8")
    build = files().build()
    answer = _small(f'const BUILD = "{build}"\n{text}'.encode(), "text/javascript", "no-cache")
    answer.headers["Seamwalk-Build"] = build  # a page may ask for the head alone
    return answer


@blueprint.get("/shell.json")
def shell_list() -> Response:
    """``{"build", "files": [{"url", "sha256", "size", "type"}]}``: every file of the app, by digest."""
    return _small(json.dumps(files().listing(), separators=(",", ":")).encode(), "application/json", "no-cache")


@blueprint.post("/pack")
def pack() -> Response:
    """``{"files": [SHA256]}``: those files of the app, end to end. A phone far from a mast pays for each asking."""
    given = request.get_json(silent=True)
    asked = given.get("files") if isinstance(given, dict) else None
    if not isinstance(asked, list) or not 0 < len(asked) <= MOST or not all(isinstance(one, str) for one in asked):
        raise BadInput("bad_pack", "files", asked if isinstance(asked, str) else "")
    content = files().pack(asked)
    if content is None:
        raise NotFound("build_gone", "files", "")
    return _small(content, "application/octet-stream", "no-store")


@blueprint.get("/rulebook.json")
def rulebook() -> Response:
    """``{name: text}`` of all the rulebook's files: the worker that runs them asks once."""
    answer = jsonify(files().rulebook())
    answer.headers["Cache-Control"] = "no-cache"
    return answer


@blueprint.get("/static/<path:name>")
def static_file(name: str) -> Response:
    """A file of ``static/``; one that is no member of the shell (a font, a map) is served as it is."""
    member = files().member(f"/static/{name}")
    if member is not None:
        return _answer(member)
    static = parts().settings.static.resolve()
    place = (static / name).resolve()
    if not place.is_relative_to(static) or not place.is_file():
        abort(404)
    return send_file(place, conditional=True, max_age=0)


@blueprint.get("/rulebook/<path:name>")
def rulebook_file(name: str) -> Response:
    """A Python file of the rulebook or the record, which the phone runs as it stands."""
    return _answer(files().member(f"/rulebook/{name}"))


def _small(content: bytes, mimetype: str, caching: str) -> Response:
    """As few bytes as the phone can take: all of it comes before the app is ready."""
    compress = bool(request.accept_encodings.quality("gzip"))
    answer = Response(gzip.compress(content, 6, mtime=0) if compress else content, mimetype=mimetype)
    if compress:
        answer.headers["Content-Encoding"] = "gzip"
    answer.headers["Vary"] = "Accept-Encoding"
    answer.headers["Cache-Control"] = caching
    return answer


def _answer(member: Member | None) -> Response:
    if member is None:
        abort(404)
    compress = bool(request.accept_encodings.quality("gzip")) and len(member.gzipped) < len(member.content)
    answer = Response(member.gzipped if compress else member.content, mimetype=member.type)
    if compress:
        answer.headers["Content-Encoding"] = "gzip"
    answer.headers["Vary"] = "Accept-Encoding"
    answer.headers["Cache-Control"] = "no-cache"
    answer.set_etag(member.sha256 + ("-gz" if compress else ""))
    answer.make_conditional(request)
    return answer
