"""What somebody may do to the files of a package: its lists, photos, checklists, reports, page."""

import hashlib
import re
from collections.abc import Callable

from inspect_app.entry.statement import countersignature, format_statement
from tests.evidence.record import AT
from tests.phone import new_uuid
from tests.verify_page.attack import Attack, changed_files, receipts_anew, with_file, without
from tests.verify_page.bag import NAMED, TAGS, Files, Small, listed, manifest

DEFINED = f"data/definitions/{NAMED}.json"
PDF = b"%PDF-1.7 invented"
COUNTERSIGNED = PDF + b", signed once more"


def _countersigned(found: bytes) -> Attack:
    """The server states that report 1 became ``COUNTERSIGNED``; in the package it is ``found``."""

    def attack(small: Small) -> Files:
        before, after = (hashlib.sha256(one).hexdigest() for one in (PDF, COUNTERSIGNED))
        said = countersignature(9000, AT, small.site.job, 1, 1, before, after, "0f" * 32, "invented", "server")
        small.enrolments.append(format_statement(said, small.server))
        return listed(small.files() | {"data/reports/1-closeout.pdf": found})

    return attack


def _grown(small: Small) -> Files:
    """A photo's receipt tells another size."""
    small.photos[0] = (small.photos[0][0], small.photos[0][1] + b"x")
    made = receipts_anew(small)
    name = f"data/photos/{small.names[0]}.jpg"
    return listed(made | {name: made[name][:-1]})


def _tags(name: str, change: Callable[[bytes], bytes]) -> Attack:
    """A file of the bag itself changed, and the list of those written anew over it."""

    def attack(small: Small) -> Files:
        files = small.files()
        files[name] = change(files[name])
        tags = {one: data for one, data in files.items() if not one.startswith("data/") and one != TAGS}
        return files | {TAGS: manifest(tags)}

    return attack


def _exchange(files: Files, small: Small) -> Files:
    one, other = (f"data/photos/{name}.jpg" for name in small.names)
    return files | {one: files[other], other: files[one]}


def _touched(files: Files, small: Small) -> Files:
    name = f"data/photos/{small.names[0]}.jpg"
    return files | {name: files[name][:-3] + bytes([files[name][-3] ^ 1]) + files[name][-2:]}


def _misnamed(files: Files, small: Small) -> Files:
    name = f"data/photos/{small.names[1]}"
    return {one if one != f"{name}.jpg" else f"{name}.png": data for one, data in files.items()}


def _stray(files: Files, small: Small) -> Files:
    return files | {f"data/photos/{hashlib.sha256(b'other').hexdigest()}.png": b"other"}


def _never(small: Small) -> Files:
    """A photo that an entry names, and that the server never had."""
    small.photos = small.photos[:1]
    return receipts_anew(small)


def _unasked(small: Small) -> Files:
    """A place names a checklist too, which no form asks of it and none forbids; it is not here."""
    small.site.say(small.foreman, "station", new_uuid(), {
        "walk": small.walk, "area": small.site.area, "panel": 4, "definition": NAMED[:-2] + "AA"})  # fmt: skip
    small.entries.append(small.site.entries[-1])
    return receipts_anew(small)


FILES: dict[str, Attack] = {
    "a checklist named by a place is missing": _unasked,
    "two photos exchanged": changed_files(_exchange),
    "a photo touched up": changed_files(_touched),
    "a photo missing": changed_files(without("data/photos/{0}.jpg")),
    "a photo that nobody received": changed_files(_stray),
    "a photo of another ending": changed_files(_misnamed),
    "a photo that never arrived": lambda small: _never(small),
    "a checklist altered": changed_files(with_file(DEFINED, b'{"id":"invented","items":[],"version":2}')),
    "a checklist missing": changed_files(without(DEFINED)),
    "a file more": changed_files(with_file("data/note.txt", b"x")),
    "a file more, lists as they were": changed_files(with_file("data/note.txt", b"x"), anew=False),
    "a file less, lists as they were": changed_files(without("data/keys.json"), anew=False),
    "a byte of a photo, lists as they were": changed_files(_touched, anew=False),
    "the page replaced, lists as they were": changed_files(with_file("verify.html", b"<p>all is well"), anew=False),
    "the declaration altered": changed_files(with_file("bagit.txt", b"BagIt-Version: 0.97\n"), anew=False),
    "the list is gone": changed_files(without("manifest-sha256.txt"), anew=False),
    "the payload counted otherwise": changed_files(with_file("bag-info.txt", b"Payload-Oxum: 1.1\n"), anew=False),
    "what a system leaves behind": changed_files(with_file("data/.DS_Store", b"x"), anew=False),
    "a countersigned report": _countersigned(COUNTERSIGNED),
    "a countersignature cut off": _countersigned(PDF),
    "another report countersigned": _countersigned(b"%PDF-1.7 other"),
    "a photo's receipt of another size": _grown,
    "the payload counted otherwise, listed anew": _tags("bag-info.txt", lambda data: re.sub(rb"\d+\.", b"1.", data)),
    "a name listed twice": _tags("manifest-sha256.txt", lambda data: data + data.split(b"\n")[0] + b"\n"),
}  # fmt: skip
