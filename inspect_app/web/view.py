"""The reviewer's page: one job to read, for whoever has its link. No script, no cookie, no change to anything but the
trail, which tells of each visit."""

from collections import Counter
from datetime import datetime
from typing import Any
from unicodedata import normalize

from flask import Blueprint, Response, render_template, request

from inspect_app.entry.format import parse
from inspect_app.errors import Gone, NotAllowed, NotFound, Problem
from inspect_app.intake.uploads_metadata import SHA256
from inspect_app.people.viewer_links import ViewerLink
from inspect_app.report.shelf import Shelved
from inspect_app.report.shelf_list import listed
from inspect_app.web.entitled import by_secret
from inspect_app.web.error_body import explained
from inspect_app.web.language import language
from inspect_app.web.office_desk import office
from inspect_app.web.packages_desk import LASTS, Pass, packer, read_pass, spelled
from inspect_app.web.parts import parts
from inspect_app.web.photos import copy, original
from inspect_app.web.reports import sent
from inspect_app.web.reports_desk import maker
from inspect_app.web.zip_answer import part_asked, zip_answer

blueprint = Blueprint("view", __name__, url_prefix="/view", template_folder="templates")
PHOTOS = 60  # on a page
POLICY = (
    "default-src 'none'; style-src 'self'; img-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
)
# The address is the secret: nobody keeps the page, and no other site is told where somebody came from.
HEADERS = {"Cache-Control": "no-store", "Referrer-Policy": "no-referrer", "X-Robots-Tag": "noindex, nofollow"}


@blueprint.after_request
def strictly(response: Response) -> Response:
    response.headers.update(HEADERS)
    if response.mimetype == "text/html":
        response.headers["Content-Security-Policy"] = POLICY
    return response


@blueprint.errorhandler(Problem)
def ended(error: Problem) -> tuple[str, int]:
    """The same words for every address under a link that does not open."""
    status = {NotFound: 404, Gone: 410, NotAllowed: 403}.get(type(error), 429)
    said = explained(error.code, error.field, error.value)
    return render_template("view_ended.html", error=said, language=language()), status


@blueprint.get("/<secret>")
def page(secret: str) -> str:
    """The job's name and place, its report, what was recorded by kind, its photos."""
    link = _opened(secret, "link_seen")
    office().links.count(link.id)
    record = parts().records.record(link.job)
    job: dict[str, Any] = record["job"] or {"name": "", "place": ""}
    entries = [parse(one.token) for one in parts().reading.job_entries(link.job)]
    photos = sorted(parts().reading.photos(link.job).values(), key=lambda photo: photo.seq)
    number = max(1, request.args.get("page", 1, type=int))
    first = (number - 1) * PHOTOS
    report = maker().shelf.newest_ready(link.job)
    return render_template(
        "view.html", language=language(), say=_say, link=link, job=job, at=f"/view/{secret}", count=len(entries),
        report=report, report_language=_language_of(report), kinds=_kinds(entries), held=len(photos), page=number,
        first=first + 1, photos=[_shown(record, photo.sha256) for photo in photos[first : first + PHOTOS]],
        given=spelled(Pass(link.job, link.id, parts().clock())), reports=_reports(link.job),
    )  # fmt: skip


@blueprint.get("/<secret>/report.pdf")
def report(secret: str) -> Response:
    """The sealed PDF of the newest report of the whole job that is ready."""
    link = _opened(secret, "report_seen")
    return sent(link.job, maker().shelf.newest_ready(link.job))


@blueprint.get("/<secret>/reports/<int:number>.pdf")
def numbered(secret: str, number: int) -> Response:
    """The sealed PDF of any report that is ready."""
    link = _opened(secret, "report_seen", number=number)
    return sent(link.job, maker().shelf.numbered(link.job, number), number)


@blueprint.get("/<secret>/entries.txt")
def entries(secret: str) -> Response:
    """Every entry as it was received, one JWS a line, in the server's order."""
    link = _opened(secret, "exported")
    lines = "".join(one.token + "\n" for one in parts().reading.job_entries(link.job))
    return Response(lines, mimetype="text/plain")


@blueprint.get("/<secret>/package.zip")
def package(secret: str) -> Response:
    """Everything to check the job with, as one zip file; with the page's own ``pass`` also in parts."""
    text = request.args.get("pass")
    link = by_secret(office().links.find, secret)
    given = read_pass(text) if text is not None else Pass(link.job, link.id, parts().clock())
    if (given.job, given.person) != (link.job, link.id):
        raise NotFound("link_unknown", "pass", link.name)
    bag = packer().pack(link.job, given.made).bag
    part = part_asked(bag, given.digest if text is not None else None)
    if part.begins:
        _opened(secret, "packaged")
    elif part.goes_on:
        office().trail.once("packaged", link.job, None, LASTS, link=link.id, name=link.name)
    return zip_answer(bag, part, parts=text is not None)


@blueprint.get("/<secret>/photos/<sha256>")
def photo(secret: str, sha256: str) -> Response:
    """A photo of the job: its bytes, or with ``size`` a small copy."""
    size = request.args.get("size")
    link = by_secret(office().links.find, secret)
    if not SHA256.fullmatch(sha256) or not parts().log.photo_receipt(link.job, sha256):
        raise NotFound("photo_unknown", "sha256", sha256)
    if not size:
        _opened(secret, "photo_seen", sha256=sha256)
    try:
        return copy(sha256, size) if size else original(sha256)
    except FileNotFoundError:
        raise NotFound("photo_lost", "sha256", sha256) from None


def _opened(secret: str, what: str, **facts: object) -> ViewerLink:
    """The link, once its visit is written down: what leaves no trail is not shown."""
    link = by_secret(office().links.find, secret)
    office().trail.visit(what, link.job, link=link.id, name=link.name, **facts)
    return link


def _shown(record: dict[str, Any], sha256: str) -> dict[str, Any]:
    """Where on the roof a photo was taken and when, a line each, as far as an entry of the record tells."""
    told = record["photos"].get(sha256)
    if told is None:
        return {"sha256": sha256, "shows": []}
    place = record["stations"].get(told["station"], told)
    area = record["areas"].get(place.get("area"), {}).get("name")
    panel = place.get("panel")
    where = [_say("photo_panel", area=area, panel=panel) if panel else area] if area else []
    return {"sha256": sha256, "shows": [*where, str(told["at"])[:16].replace("T", " ")]}


def _language_of(report: Shelved | None) -> str:
    """In words, of the reader's language; of a report of a release before lists said it, its number alone says it."""
    told = report.told.get("language") if report else None
    return parts().words.say(f"view.in_language.{told or 'unknown'}", language())


def _reports(job: str) -> list[dict[str, object]]:
    """Every report that is ready, the newest first, with the words for what it speaks of and whether it holds."""
    words, told = parts().words, []
    for one in listed(maker().shelf.ready(job)):
        state = "superseded" if one["superseded_by"] else "draft" if one["final"] is False else "holds"
        told.append({
            "number": one["number"], "kind": words.say(f"report.kind.{one['kind']}", language()),
            "issued": str(one["issued"] or "")[:16].replace("T", " "), "gone": one["size"] is None,
            "state": _say(f"report_{state}", number=one["superseded_by"]),
        })  # fmt: skip
    return told


def _kinds(entries: list[Any]) -> list[dict[str, object]]:
    """By their names in the reader's language. The newest is the latest said, not the last that arrived."""
    count = Counter(entry.kind for entry in entries)
    newest: dict[str, str] = {}
    for entry in entries:
        at = str(entry.payload["at"])
        newest[entry.kind] = max(at, newest.get(entry.kind, at), key=datetime.fromisoformat)
    words = parts().words
    rows = [
        {"kind": words.say(f"kind.{kind}", language()) if f"kind.{kind}" in words else kind, "count": count[kind],
         "newest": newest[kind][:16].replace("T", " ")}
        for kind in count
    ]  # fmt: skip
    return sorted(rows, key=lambda row: normalize("NFD", str(row["kind"])))  # Área among the A


def _say(key: str, **facts: object) -> str:
    return parts().words.say(f"view.{key}", language(), facts)
