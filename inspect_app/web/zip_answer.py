"""A package sent as a zip file: whole with its exact length, or from where a broken download left off."""

from typing import IO, cast

from flask import Response, request
from werkzeug.wsgi import wrap_file

from inspect_app.package.bag import Bag
from inspect_app.package.stored_zip import StoredZip
from inspect_app.package.zip_file import ZipFile


def zip_answer(bag: Bag, parts: bool) -> Response:
    """``parts``: whether the same address gives the same bytes again, so that a part of them means something."""
    zip = StoredZip(bag)
    start, stop, status = 0, zip.size, 200
    asked = request.range
    if parts and asked is not None and asked.units == "bytes" and len(asked.ranges) == 1 and _same(bag):
        found = asked.range_for_length(zip.size)
        if found is None:
            return Response(status=416, headers={"Content-Range": f"bytes */{zip.size}"})
        (start, stop), status = found, 206
    # Handed over as a file, so that the server sends it by itself: a slow link keeps none of its threads.
    body = wrap_file(request.environ, cast(IO[bytes], ZipFile(zip, start, stop)))
    answer = Response(body, status, mimetype="application/zip", direct_passthrough=True)
    answer.content_length = stop - start
    if status == 206:
        answer.headers["Content-Range"] = f"bytes {start}-{stop - 1}/{zip.size}"
    answer.headers["Accept-Ranges"] = "bytes" if parts else "none"
    answer.headers["Content-Disposition"] = f'attachment; filename="{bag.name}.zip"'
    answer.set_etag(bag.digest)
    return answer


def _same(bag: Bag) -> bool:
    """Whether a part of this package is what is asked for: where ``If-Range`` names another, the whole is sent."""
    named = request.if_range
    return named.date is None and named.etag in (None, bag.digest)
