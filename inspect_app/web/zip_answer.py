"""A package sent as a zip file: whole with its exact length, or from where a broken download left off."""

from typing import IO, NamedTuple, cast

from flask import Response, request
from werkzeug.wsgi import wrap_file

from inspect_app.package.bag import Bag
from inspect_app.package.stored_zip import StoredZip
from inspect_app.package.zip_file import ZipFile


class Part(NamedTuple):
    """What is sent: from ``start`` up to ``stop``; ``status`` 200 (the whole), 206, or 416 (there is no such part)."""

    start: int
    stop: int
    status: int

    @property
    def begins(self) -> bool:
        """Whether a download begins with it, rather than goes on."""
        return request.method == "GET" and self.status != 416 and self.start == 0

    @property
    def goes_on(self) -> bool:
        return request.method == "GET" and self.status != 416 and self.start > 0


def part_asked(bag: Bag, same: str | None) -> Part:
    """What the request asks of this package. ``same``: what a package is known by at the address that is asked
    (``Bag.digest``), empty where nobody kept it, None where each call makes another.

    A part is given only where it fits what came before: ``If-Range`` or else ``same`` names this very package. Where
    neither does, the whole is sent, and a download begins anew.
    """
    size, asked = StoredZip(bag).size, request.range
    if same is None or asked is None or asked.units != "bytes" or len(asked.ranges) != 1:
        return Part(0, size, 200)
    named = request.if_range
    weak = request.headers.get("If-Range", "").startswith("W/")  # which fits nothing (RFC 9110, 13.1.5)
    if named.date is not None or weak or (same if named.etag is None else named.etag) != bag.digest:
        return Part(0, size, 200)
    found = asked.range_for_length(size)
    return Part(0, 0, 416) if found is None else Part(*found, 206)


def zip_answer(bag: Bag, part: Part, parts: bool) -> Response:
    """``parts``: whether the same address can be asked for a part at all."""
    zip = StoredZip(bag)
    if part.status == 416:
        return Response(status=416, headers={"Content-Range": f"bytes */{zip.size}"})
    # Handed over as a file, so that the server sends it by itself: a slow link keeps none of its threads.
    body = wrap_file(request.environ, cast(IO[bytes], ZipFile(zip, part.start, part.stop)))
    answer = Response(body, part.status, mimetype="application/zip", direct_passthrough=True)
    answer.content_length = part.stop - part.start
    if part.status == 206:
        answer.headers["Content-Range"] = f"bytes {part.start}-{part.stop - 1}/{zip.size}"
    answer.headers["Accept-Ranges"] = "bytes" if parts else "none"
    answer.headers["Content-Disposition"] = f'attachment; filename="{bag.name}.zip"'
    answer.set_etag(bag.digest)
    return answer
