"""A photo's ending in a package says what its bytes are, whatever a phone said of them."""

import hashlib

import pytest

from tests.package.packages import packed
from tests.report.test_make import keep_photo

KINDS = {
    "jpg": b"\xff\xd8\xff\xe0 invented", "png": b"\x89PNG\r\n\x1a\n invented",
    "webp": b"RIFF\x10\0\0\0WEBPVP8 invented", "heic": b"\0\0\0\x18ftypheic invented",
}  # fmt: skip
NONE_OF_THEM = (b"%PDF-1.7 invented", b"<svg onload=alert(1)>", b"\xff\xd8", b"", b" \xff\xd8\xff")


@pytest.mark.parametrize(
    ("ending", "data"), [*KINDS.items(), *(("bin", data) for data in NONE_OF_THEM)], ids=lambda one: repr(one)[:20]
)
def test_the_ending_is_that_of_the_bytes(office, ending, data):
    job, _ = office.job()
    name = keep_photo(office, job, data)  # said to be image/jpeg
    assert name == hashlib.sha256(data).hexdigest()
    photos = [one.name for one in packed(office, job).bag.members if one.name.startswith("data/photos/")]
    assert photos == [f"data/photos/{name}.{ending}"]
