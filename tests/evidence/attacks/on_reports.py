"""Attacks on the reports of a package: on their bytes, on what they say, on which of them are there."""

import io
from functools import cache

from pyhanko.pdf_utils.generic import StreamObject
from pyhanko.pdf_utils.incremental_writer import IncrementalPdfFileWriter

from inspect_app.entry.statement import countersignature, format_statement
from tests.evidence.attacks.attack import NOBODY, PERSON, SEALER, Attack, put, with_bytes
from tests.evidence.packed import (
    NAMED,
    PHOTOS,
    Files,
    bagged,
    fitted,
    job,
    lines,
    payload,
    record,
    report,
    reports,
    said,
)
from tests.evidence.record import AT, counted
from tests.evidence.sealed import key, signed_again
from tests.phone import new_uuid

SECOND = "data/reports/2-closeout.pdf"


def placed(data: bytes, files: Files, name: str = SECOND) -> Files:
    return bagged(fitted(files | {name: data}))


def painted_over(data: bytes) -> bytes:
    """Its page painted white by an update behind the seal: the old signature still agrees."""
    writer = IncrementalPdfFileWriter(io.BytesIO(data))
    kids = writer.root["/Pages"]["/Kids"]
    kids[0].get_object()["/Contents"] = writer.add_object(StreamObject(stream_data=b"1 1 1 rg 0 0 612 792 re f"))
    writer.mark_update(kids.raw_get(0))
    out = io.BytesIO()
    writer.write(out)
    return out.getvalue()


@cache
def better(by: str) -> bytes:
    """A report in which what failed is said to be good."""
    told = said(record(), 2, 1, key(by))["answers"]
    return report(record(), 2, 1, key(by), answers=[one | {"result": "pass"} for one in told])


@cache
def reworded(elsewhere: bool = False) -> bytes:
    """A report in which a note is changed that no verdict and no figure rests on, sealed by its own issuer;
    ``elsewhere``: it says that another release made it."""
    told = said(record(), 2, 1, key("Issuer (invented)"))["answers"]
    release = {"made_with": {"version": "0.0.1", "contents": "", "pages": ""}} if elsewhere else {}
    return report(record(), 2, 1, answers=[one | {"note": "Looks good (invented)"} for one in told], **release)


def misread(files: Files) -> Files:
    """A phone writes another number into the verdict than it read: a count of 1, and 3 were there."""
    site = job().site.up_to(None)
    subject = f"{new_uuid()}/nail_flange/item_1"
    body = counted(subject, 1, "pass") | {"definition": NAMED, "reading": {"count": 3}}
    site.say(site.foreman, "answer", subject, body)
    made = site.made(PHOTOS)
    return bagged(payload(made, {1: reports()[0], 2: report(made, 2, 1)}))


@cache
def countersigned() -> bytes:
    return signed_again(reports()[1], key("Countersigner (invented)"), "Countersignature")


def stripped(files: Files) -> Files:
    """The countersignature is cut off, as the file was before it: the server had stated it."""
    from hashlib import sha256

    before, after = (sha256(one).hexdigest() for one in (reports()[1], countersigned()))
    by = key("Countersigner (invented)")
    said = countersignature(40, AT, job().site.job, 2, 1, before, after, by.fingerprint, by.name, "cleo")
    return put(files, "enrolments", [*lines(files, "enrolments"), format_statement(said, job().site.server)])


def without_first(files: Files) -> Files:
    return bagged(fitted({name: data for name, data in files.items() if "/reports/1-" not in name}))


def doubled(files: Files) -> Files:
    """The report as it was before it was countersigned, beside the countersigned one."""
    return placed(reports()[1], placed(countersigned(), files), SECOND.replace("closeout", "audit"))


def misnamed(files: Files) -> Files:
    """A report of a close-out, under the name of a warranty survey."""
    left = {name: data for name, data in files.items() if name != SECOND}
    return placed(report(record(), 2, 1, kind="closeout"), left, SECOND.replace("closeout", "survey"))


def forgotten(files: Files) -> Files:
    """A countersigned report is taken out; the server had stated the countersignature."""
    left = {name: data for name, data in stripped(files).items() if name != SECOND}
    return bagged(fitted(left))


ATTACKS = [
    Attack("a bit of a report is flipped", NOBODY,
           with_bytes(SECOND, lambda data: data[:900] + bytes([data[900] ^ 1]) + data[901:])),
    Attack("a report is cut short", NOBODY, with_bytes(SECOND, lambda data: data[: len(data) // 2])),
    Attack("a page is painted over behind the seal", NOBODY, lambda files: placed(painted_over(files[SECOND]), files)),
    Attack("a byte is put behind the last signature", NOBODY, with_bytes(SECOND, lambda data: data + b"\n")),
    Attack("a verdict is changed in a report, which somebody else seals anew", NOBODY,
           lambda files: placed(better("Issuer (invented) "), files)),
    Attack("a verdict is changed in a report, which its own issuer seals anew", SEALER,
           lambda files: placed(better("Issuer (invented)"), files)),
    Attack("a note is changed in a report, which its own issuer seals anew", SEALER,
           lambda files: placed(reworded(), files)),
    Attack("a note is changed in a report, which its own issuer seals anew and says that another release made", SEALER,
           lambda files: placed(reworded(True), files),
           unseen="none: `contents_follow` is not determinable, names what differs, and the release that can tell"),
    Attack("a phone signs a verdict of another number than the reading beside it", PERSON, misread),
    Attack("a report is put in the place of another", NOBODY, lambda files: placed(reports()[0], files)),
    Attack("a report that another one replaces is taken out", NOBODY, without_first),
    Attack("a countersignature is cut off", NOBODY, stripped),
    Attack("a countersigned report is taken out", NOBODY, forgotten),
    Attack("a report stands there a second time, without its countersignature", NOBODY, doubled),
    Attack("a report is named as one of another kind", NOBODY, misnamed),
]  # fmt: skip
