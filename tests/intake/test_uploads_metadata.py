"""The headers of tus are read strictly, and a refusal names the header and the value."""

import base64

import pytest

from inspect_app.intake.uploads_metadata import UNTYPED, read_checksum, read_count, read_metadata
from tests.intake.receiving import JOB
from tests.intake.test_uploads import refusal

HASH = "a0" * 32


def header(**values):
    return ",".join(f"{key} {base64.b64encode(value.encode()).decode()}" for key, value in values.items())


def test_what_was_declared_is_read():
    declared = read_metadata(header(job=JOB, sha256=HASH, type="image/HEIC", name="techo año.heic", more="x"))
    assert declared == (JOB, HASH, "image/heic", "techo año.heic")


def test_a_photo_without_a_type_is_just_bytes():
    assert read_metadata(header(job=JOB, sha256=HASH) + ",type").type == UNTYPED


@pytest.mark.parametrize("missing", ["job", "sha256", "type"])
def test_a_missing_value_is_named(missing):
    values = {"job": JOB, "sha256": HASH, "type": "image/jpeg"}
    del values[missing]
    refused = refusal(read_metadata, header(**values))
    assert (refused.code, refused.field) == ("upload_metadata_missing", f"Upload-Metadata {missing}")
    assert refusal(read_metadata, None).code == "upload_metadata_missing"


@pytest.mark.parametrize(
    ("key", "value"),
    [
        ("job", "../../secret"), ("job", JOB.upper()), ("job", JOB + "\n"), ("job", ""),
        ("sha256", HASH.upper()), ("sha256", HASH[:-1]), ("sha256", "zz" * 32), ("sha256", HASH + "\n"),
        ("type", "image"), ("type", "text/html; charset=x"), ("type", "image/jpeg\r\nX: y"),
    ],
)  # fmt: skip
def test_a_value_that_cannot_be_is_named(key, value):
    values = {"job": JOB, "sha256": HASH, "type": "image/jpeg"} | {key: value}
    refused = refusal(read_metadata, header(**values))
    assert (refused.code, refused.field) == ("upload_metadata_value", f"Upload-Metadata {key}")


@pytest.mark.parametrize("text", ["job ###", "job " + base64.b64encode(b"\xff\xfe").decode(), "x" * 5000])
def test_metadata_that_is_not_base64_of_utf8_is_refused(text):
    assert refusal(read_metadata, text).code == "upload_metadata_unreadable"


def test_metadata_given_twice_is_refused():
    twice = header(job=JOB, sha256=HASH, type="image/jpeg") + "," + header(job=JOB)
    assert refusal(read_metadata, twice).code == "upload_metadata_unreadable"


def test_checksums_are_read():
    assert read_checksum(None) is None
    # SHA-1 of "hello world" as in the checksum example of tus 1.0.0
    digest = read_checksum("sha1 Kq5sNclPz7QV2+lfQIuc6R7oRu0=").digest
    assert digest.hex() == "2aae6c35c94fcfb415dbe95f408b9ce91ee846ed"


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("md5 AAAA", "upload_checksum_algorithm"), ("", "upload_checksum_algorithm"),
        ("SHA1 AAAA", "upload_checksum_algorithm"),
        ("sha1", "upload_checksum_unreadable"), ("sha1 ###", "upload_checksum_unreadable"),
        ("sha256 AAAA", "upload_checksum_unreadable"),
    ],
)  # fmt: skip
def test_a_checksum_that_cannot_be_is_refused(text, code):
    assert refusal(read_checksum, text).code == code


@pytest.mark.parametrize("text", ["-1", "1.5", "1e3", "", "abc", "٣", "9" * 16, "0x10", "+1"])
def test_a_size_that_is_not_a_whole_number_is_refused(text):
    refused = refusal(read_count, "Upload-Length", text)
    assert (refused.code, refused.field) == ("upload_header_number", "Upload-Length")


def test_a_size_is_read_and_a_missing_one_named():
    assert read_count("Upload-Length", " 40 ") == 40
    assert refusal(read_count, "Upload-Length", None).code == "upload_header_missing"
