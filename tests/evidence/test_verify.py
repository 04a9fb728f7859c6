"""Verification finds any change anywhere, says which fact it broke, and never claims what it cannot know."""

import io
import json
import random
import re
import subprocess

import pytest
from pyhanko.pdf_utils.generic import DictionaryObject, StreamObject, pdf_name
from pyhanko.pdf_utils.incremental_writer import IncrementalPdfFileWriter

from inspect_app.evidence.entries import REST
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN
from inspect_app.evidence.verify import Verification, verify
from tests.evidence.sealed import DIGEST, countersigned, key, sealed, unsealed

SEED = 20261125


def status(found: Verification) -> dict[str, set[str]]:
    told: dict[str, set[str]] = {}
    for fact in found.facts:
        told.setdefault(fact.name, set()).add(fact.status)
    return told


def hole_of(data: bytes, which: int = -1) -> tuple[int, int]:
    """Where a signature stands: found in the bytes, not by our own reader."""
    found = list(re.finditer(rb"/ByteRange\s*\[\s*(\d+)\s+(\d+)\s+(\d+)\s+(\d+)\s*\]", data))
    return int(found[which][2]), int(found[which][3])


def flipped(data: bytes, at: int, bit: int) -> bytes:
    return data[:at] + bytes([data[at] ^ (1 << bit)]) + data[at + 1 :]


@pytest.mark.parametrize("data", [sealed(), countersigned()], ids=["sealed", "countersigned"])
def test_an_untouched_report_holds_and_what_nobody_gave_is_not_determinable(data):
    found = verify(data)
    assert not found.failed
    unknown = {name for name, kinds in status(found).items() if kinds == {UNKNOWN}}
    assert unknown == {"signer_known", "server_known", "time_stamped"}
    assert {name for name, kinds in status(found).items() if kinds == {HOLDS}} == {
        "is_pdf", "sealed", "seal_intact", "container_intact", "only_allowed_changes", "covers_file",
        "nothing_appended", "contents_match", "record_enclosed", *REST,
    }  # fmt: skip
    assert found.contents == DIGEST
    json.dumps(found.plain())


def test_outside_validators_agree_on_the_untouched_and_on_the_changed(tmp_path):
    (tmp_path / "good.pdf").write_bytes(countersigned())
    good = subprocess.run(["pdfsig", str(tmp_path / "good.pdf")], capture_output=True, text=True, check=False).stdout
    assert good.count("Signature is Valid") == 2 and good.count("  - Total document signed") == 1
    checked = subprocess.run(["qpdf", "--check", str(tmp_path / "good.pdf")], capture_output=True, check=False)
    assert checked.returncode == 0
    at = countersigned().index(b"/Rotate")
    (tmp_path / "bad.pdf").write_bytes(flipped(countersigned(), at + 3, 0))
    bad = subprocess.run(["pdfsig", str(tmp_path / "bad.pdf")], capture_output=True, text=True, check=False).stdout
    assert "Signature is Valid" not in bad


def test_every_byte_outside_the_hole_is_under_the_signature_s_digest():
    """So that a sample of flips there speaks for all: the two ranges and the hole are the whole file."""
    data = sealed()
    found = re.search(rb"/ByteRange\s*\[\s*(\d+)\s+(\d+)\s+(\d+)\s+(\d+)\s*\]", data)
    assert found is not None
    start, first, second, rest = (int(part) for part in found.groups())
    assert (start, second + rest) == (0, len(data))
    assert data[first : first + 1] == b"<" and data[second - 1 : second] == b">"


def places(data: bytes) -> list[int]:
    """A seeded sample of the file, and of each part that a reader might pass over."""
    chance = random.Random(SEED)
    first, second = hole_of(data)
    parts = [
        (0, 12),
        (data.rindex(b"startxref"), len(data)),
        (data.index(b"/ByteRange"), data.index(b"/ByteRange") + 60),
    ]
    spots = [chance.randrange(*part) for part in parts for _ in range(5)]
    spots += [chance.randrange(len(data)) for _ in range(22)]
    spots += [first, second - 1, *(chance.randrange(first, second) for _ in range(10))]
    spots += [second - 2, second - 3, *(chance.randrange(second - 200, second) for _ in range(5))]
    return spots


@pytest.mark.parametrize("data", [sealed(), countersigned()], ids=["sealed", "countersigned"])
def test_a_flip_of_one_bit_is_found_wherever_it_is(data):
    chance = random.Random(SEED)
    missed = [
        (at, bit) for at in places(data) for bit in [chance.randrange(8)] if not verify(flipped(data, at, bit)).failed
    ]
    assert missed == []


@pytest.mark.parametrize("which", [0, 1])
def test_a_digit_in_the_other_case_and_a_changed_zero_of_the_padding_are_found(which):
    data = countersigned()
    first, second = hole_of(data, which)
    letter = next(at for at in range(first + 1, second) if data[at : at + 1].isalpha())
    for at, new in ((letter, data[letter : letter + 1].swapcase()), (second - 2, b"1"), (second - 2, b" ")):
        found = verify(data[:at] + new + data[at + 1 :])
        assert found.failed
        if which == 1:
            assert status(found)["seal_intact"] == {HOLDS}, "nothing but our own look at the hole finds this one"
            assert FAILS in status(found)["container_intact"]


def test_every_truncation_is_found():
    data, chance = countersigned(), random.Random(SEED)
    cuts = [
        0,
        1,
        4,
        5,
        len(data) - 1,
        len(data) - 2,
        len(data) - 6,
        len(sealed()),
        *(chance.randrange(len(data)) for _ in range(16)),
    ]
    missed = [cut for cut in cuts if cut != len(sealed()) and not verify(data[:cut]).failed]
    assert missed == []
    # Cutting the countersignature off leaves the sealed report as it was: only the count of signatures tells.
    assert len(verify(data[: len(sealed())]).signatures) == 1


@pytest.mark.parametrize("more", [b"\n", b"\0", b"%%EOF\n", b"% a comment\n%%EOF\n"])
def test_a_byte_after_the_end_is_found(more):
    found = verify(sealed() + more)
    assert found.failed
    assert status(found)["covers_file"] == {FAILS} or status(found)["is_pdf"] == {FAILS}


def test_an_update_that_paints_over_a_page_is_found_though_the_old_signature_still_agrees():
    writer = IncrementalPdfFileWriter(io.BytesIO(sealed()))
    page = writer.root["/Pages"]["/Kids"][0].get_object()
    paint = writer.add_object(StreamObject(stream_data=b"1 1 1 rg 0 0 612 792 re f"))
    page["/Contents"] = paint
    writer.mark_update(writer.root["/Pages"]["/Kids"].raw_get(0))
    out = io.BytesIO()
    writer.write(out)
    found = verify(out.getvalue())
    assert found.failed
    told = status(found)
    assert told["seal_intact"] == {HOLDS}
    assert told["only_allowed_changes"] == {FAILS} and told["nothing_appended"] == {FAILS}


def test_a_new_field_after_the_seal_is_no_allowed_change():
    writer = IncrementalPdfFileWriter(io.BytesIO(sealed()))
    writer.root["/Added"] = writer.add_object(DictionaryObject({pdf_name("/A"): pdf_name("/B")}))
    writer.update_root()
    out = io.BytesIO()
    writer.write(out)
    assert status(verify(out.getvalue()))["only_allowed_changes"] == {FAILS}


def test_what_is_no_sealed_pdf_fails_without_an_exception():
    chance = random.Random(SEED)
    for data in (
        b"",
        b"hello",
        b"%PDF-",
        b"%PDF-1.7\n%%EOF",
        chance.randbytes(2000),
        b"%PDF-1.4\n" + chance.randbytes(2000),
        unsealed(),
    ):
        found = verify(data)
        assert found.failed
        assert "sealed" in status(found)


def test_the_signer_is_known_only_by_the_fingerprint_given():
    right = key("Issuer (invented)").fingerprint
    spelled = ":".join(right[at : at + 2] for at in range(0, 64, 2)).upper()
    assert status(verify(sealed(), trust=right))["signer_known"] == {HOLDS}
    assert status(verify(sealed(), trust=spelled))["signer_known"] == {HOLDS}
    assert status(verify(countersigned(), trust=right))["signer_known"] == {HOLDS, UNKNOWN}, "anybody can countersign"
    both = [right, key("Countersigner (invented)").fingerprint]
    assert status(verify(countersigned(), trust=both))["signer_known"] == {HOLDS}
    assert status(verify(sealed(), trust=key("Countersigner (invented)").fingerprint))["signer_known"] == {FAILS}
    assert status(verify(sealed(), trust="abc"))["signer_known"] == {FAILS}
    assert status(verify(flipped(sealed(), 40, 0), trust=right))["signer_known"] == {FAILS}


def test_contents_are_compared_with_the_digest_the_report_names():
    import hashlib

    from tests.evidence import sealed as made

    assert hashlib.sha256(b"x").hexdigest() != made.DIGEST
    assert status(verify(sealed(), contents=b"x"))["contents_match"] == {FAILS}
