"""What somebody without the key can change and countersign: nothing that a reader is shown."""

import io
import re

import pytest
from pyhanko.pdf_utils.generic import NameObject, TextStringObject
from pyhanko.pdf_utils.incremental_writer import IncrementalPdfFileWriter

from inspect_app.evidence.fact import FAILS, HOLDS
from inspect_app.evidence.verify import verify
from inspect_app.report.seal import SPARE, _sign
from tests.evidence.sealed import WHEN, key, sealed


def told(data):
    return [fact.status for fact in verify(data).facts if fact.name == "only_allowed_changes"]


def countersigned_with(change, data=None):
    """A change and a countersignature in one update, by a program that takes every file."""
    writer = IncrementalPdfFileWriter(io.BytesIO(data or sealed()), strict=False)
    change(writer)
    out = io.BytesIO()
    _sign(writer, out, key("Thief (invented)"), SPARE, WHEN, None, certify=False)
    return out.getvalue()


def retitled(name, text="Another report"):
    def change(writer):
        writer.trailer["/Info"][NameObject(name)] = TextStringObject(text)
        writer.mark_update(writer.trailer.raw_get("/Info"))

    return change


def described(writer):
    writer._meta.title = "Another report"


def renamed_entry(writer):
    writer.set_info(writer.add_object(type(writer.root)({NameObject("/Title"): TextStringObject("Another report")})))


CHANGES = [retitled("/Title"), retitled("/Subject"), retitled("/Own"), described, renamed_entry]


@pytest.mark.parametrize("change", CHANGES)
def test_another_title_or_subject_under_a_countersignature_is_no_allowed_change(change):
    assert told(countersigned_with(change)) == [FAILS, HOLDS]


def test_a_countersigner_s_program_may_put_down_its_name_and_the_time():
    assert told(countersigned_with(lambda writer: None)) == [HOLDS, HOLDS]
    assert told(countersigned_with(retitled("/ModDate", "D:20261126120000Z"))) == [HOLDS, HOLDS]


def hybrid(data):
    """An update with one object that only readers of cross-reference streams see (ISO 32000-1, 7.5.8.4)."""
    prev, size = (int(re.findall(word + rb"\s+(\d+)", data)[-1]) for word in (b"startxref", b"/Size"))
    root, info = (re.findall(word + rb" \d+ \d+ R", data)[-1] for word in (b"/Root", b"/Info"))
    hidden = b"\n%d 0 obj\n(hidden)\nendobj\n" % size
    row = b"\1" + (len(data) + 1).to_bytes(4, "big") + b"\0\0"
    stream = b"%d 0 obj\n<</Type/XRef/Size %d/W[1 4 2]/Index[%d 1]/Length 7>>\nstream\n" % (size + 1, size + 2, size)
    stream += row + b"\nendstream\nendobj\n"
    at = len(data) + len(hidden)
    table = b"xref\n0 1\n0000000000 65535 f \ntrailer\n<</Size %d%s%s/Prev %d/XRefStm %d>>\nstartxref\n%d\n%%%%EOF\n"
    return data + hidden + stream + table % (size + 2, root, info, prev, at, at + len(stream))


def test_an_update_that_two_readers_read_differently_is_no_allowed_change():
    assert told(countersigned_with(lambda writer: None, hybrid(sealed()))) == [FAILS, FAILS]
