"""tus 1.0.0 as its text asks, over a socket; section names are those of the specification."""

import base64
import hashlib
import os

import pytest

from inspect_app.intake.uploads_caps import Caps
from tests.intake.receiving import JOB, OTHER_JOB
from tests.store.faulty_disk import FaultyDisk
from tests.tus.plain_client import BYTES, Client, checksum, metadata
from tests.tus.real_app import real_app
from tests.tus.serving import served

PHOTO = os.urandom(10_000)
NAME = hashlib.sha256(PHOTO).hexdigest()


def test_options_says_what_is_spoken_to_anybody(client):
    client.token = ""
    for path in ("/api/photos", "/api/photos/" + "0" * 32):
        reply = client.call("OPTIONS", path, Tus_Resumable=None)
        assert reply.status == 204
        assert reply.headers["tus-version"] == "1.0.0"
        assert reply.headers["tus-extension"] == "creation,creation-with-upload,checksum,termination"
        assert reply.headers["tus-checksum-algorithm"] == "sha1,sha256"
        assert reply.headers["tus-max-size"] == "40000000"


def test_a_photo_goes_up_and_comes_back_byte_for_byte(client):
    made = client.create(PHOTO)
    assert made.status == 201 and made.headers["tus-resumable"] == "1.0.0"
    location = made.headers["location"]
    half = client.patch(location, 0, PHOTO[:4000])
    assert (half.status, half.headers["upload-offset"], half.body) == (204, "4000", b"")
    assert "seamwalk-receipt" not in half.headers
    asked = client.head(location)
    assert (asked.status, asked.headers["cache-control"]) == (200, "no-store")
    assert (asked.headers["upload-offset"], asked.headers["upload-length"]) == ("4000", "10000")
    last = client.patch(location, 4000, PHOTO[4000:])
    receipt = last.headers["seamwalk-receipt"]
    assert last.status == 204 and client.vouched(receipt, PHOTO)
    assert client.call("GET", f"/api/photos/receipt?job={JOB}&sha256={NAME}").json == {"receipt": receipt}
    assert client.call("GET", f"/photos/{NAME}?job={JOB}").body == PHOTO


def test_a_photo_larger_than_other_bodies_may_be_is_taken_in_one_piece(client):
    photo = os.urandom(3_000_000)
    location = client.create(photo).headers["location"]
    assert client.patch(location, 0, photo).headers["seamwalk-receipt"]


def test_creation_with_upload_takes_the_first_bytes_or_all_of_them(client):
    about = {"Upload_Length": "10000", "Upload_Metadata": metadata(PHOTO), "Content_Type": BYTES}
    first = client.call("POST", "/api/photos", PHOTO[:300], **about)
    assert (first.status, first.headers["upload-offset"]) == (201, "300")
    again = client.call("POST", "/api/photos", PHOTO[:300], **about)
    assert (again.status, again.headers["upload-offset"]) == (201, "300")
    assert again.headers["location"] == first.headers["location"]
    other = PHOTO[::-1]
    about["Upload_Metadata"] = metadata(other)
    assert client.call("POST", "/api/photos", other, **about).headers["seamwalk-receipt"]


def test_creating_what_is_held_is_complete_at_once(client):
    receipt, _ = client.send(PHOTO, 5000)
    made = client.create(PHOTO)
    assert made.status == 201 and made.headers["seamwalk-receipt"] == receipt
    assert client.head(made.headers["location"]).headers["upload-offset"] == "10000"
    done = client.patch(made.headers["location"], 10_000, b"", Upload_Checksum=None)
    assert done.status == 204 and done.headers["seamwalk-receipt"] == receipt


@pytest.mark.parametrize("version", [None, "0.2.2", "1.0.1"])
def test_another_version_is_412_and_names_ours(client, version):
    location = client.create(PHOTO).headers["location"]
    for method, path in (("POST", "/api/photos"), ("HEAD", location), ("PATCH", location), ("DELETE", location)):
        reply = client.call(method, path, Tus_Resumable=version)
        assert (reply.status, reply.headers["tus-version"]) == (412, "1.0.0")
    assert client.head(location).headers["upload-offset"] == "0"


def test_a_wrong_offset_is_409_and_names_the_true_one_in_the_askers_language(client):
    location = client.create(PHOTO).headers["location"]
    for offset in (1, 9999):
        reply = client.patch(location, offset, b"?", Accept_Language="es-MX,es;q=0.9")
        assert (reply.status, reply.error["code"]) == (409, "upload_offset_wrong")
        assert reply.error["facts"] == {"offset": 0}
        assert reply.error["message"] == "El siguiente byte se espera en 0, no ahí."
        assert reply.error["field"] == "Upload-Offset" and reply.error["value"] == str(offset)
        assert reply.error["way_out"]
    assert client.head(location).headers["upload-offset"] == "0"


def test_a_wrong_checksum_is_460_and_moves_nothing(client):
    location = client.create(PHOTO).headers["location"]
    reply = client.patch(location, 0, PHOTO[:100], Upload_Checksum=checksum(PHOTO[:99], "sha1"))
    assert (reply.status, reply.error["code"]) == (460, "upload_checksum_wrong")
    assert client.head(location).headers["upload-offset"] == "0"
    assert client.patch(location, 0, PHOTO[:100], Upload_Checksum=checksum(PHOTO[:100], "sha1")).status == 204


@pytest.mark.parametrize("header", ["md5 AAAA", "sha1", "sha1 AAAA"])
def test_a_checksum_that_cannot_be_made_is_400(client, header):
    location = client.create(PHOTO).headers["location"]
    assert client.patch(location, 0, PHOTO, Upload_Checksum=header).status == 400
    assert client.head(location).headers["upload-offset"] == "0"


def test_a_photo_that_is_not_the_declared_one_is_460_with_both_hashes_and_may_begin_again(client):
    wrong = PHOTO[:-1] + bytes([PHOTO[-1] ^ 1])
    location = client.create(PHOTO).headers["location"]
    reply = client.patch(location, 0, wrong)
    found = hashlib.sha256(wrong).hexdigest()
    assert (reply.status, reply.error["code"]) == (460, "upload_hash_wrong")
    assert reply.error["facts"] == {"declared": NAME, "found": found}
    assert NAME in reply.error["message"] and found in reply.error["message"]
    assert client.head(location).status == 404
    assert client.call("GET", f"/api/photos/receipt?job={JOB}&sha256={NAME}").status == 404
    assert client.vouched(client.send(PHOTO, 10_000)[0], PHOTO)


def test_bytes_must_come_as_bytes_of_a_photo(client):
    location = client.create(PHOTO).headers["location"]
    assert client.patch(location, 0, PHOTO, Content_Type="image/jpeg").status == 415
    assert client.head(location).headers["upload-offset"] == "0"


def test_more_than_was_declared_is_413_and_moves_nothing(client):
    location = client.create(PHOTO).headers["location"]
    for encoded in (False, True):
        body = iter([PHOTO, b"?"]) if encoded else PHOTO + b"?"
        whole = checksum(PHOTO + b"?")
        about = {"Upload_Offset": "0", "Content_Type": BYTES, "Upload_Checksum": whole}
        assert client.call("PATCH", location, body, **about).status == 413
        assert client.head(location).headers["upload-offset"] == "0"


@pytest.mark.parametrize("length", [None, "-1", "ten", "40000001"])
def test_a_length_that_cannot_be_is_refused(client, length):
    reply = client.call("POST", "/api/photos", Upload_Length=length, Upload_Metadata=metadata(PHOTO))
    assert reply.status == (413 if length == "40000001" else 400)
    assert reply.error["field"] == "Upload-Length"


@pytest.mark.parametrize("text", [None, "", "job", metadata(PHOTO, sha256="ff"), metadata(PHOTO, type="?")])
def test_metadata_that_cannot_be_is_400(client, text):
    reply = client.call("POST", "/api/photos", Upload_Length="5", Upload_Metadata=text)
    assert reply.status == 400 and reply.error["field"].startswith("Upload-Metadata")


def test_a_terminated_upload_is_gone(client):
    location = client.create(PHOTO).headers["location"]
    client.patch(location, 0, PHOTO[:100])
    assert client.call("DELETE", location).status == 204
    assert client.head(location).status == 404
    assert client.patch(location, 100, PHOTO[100:]).status == 404
    assert client.call("DELETE", location).status == 404
    assert client.vouched(client.send(PHOTO, 10_000)[0], PHOTO)


def test_a_network_that_lets_only_post_pass_can_still_upload(client):
    location = client.create(PHOTO).headers["location"]
    reply = client.call(
        "POST", location, PHOTO[:9], X_HTTP_Method_Override="PATCH", Upload_Offset="0", Content_Type=BYTES
    )
    assert (reply.status, reply.headers["upload-offset"]) == (204, "9")
    assert client.call("POST", location, X_HTTP_Method_Override="HEAD").headers["upload-offset"] == "9"
    assert client.call("POST", location, X_HTTP_Method_Override="DELETE").status == 204
    assert client.call("POST", location, X_HTTP_Method_Override="GET").status == 400
    assert client.call("POST", location).status == 400


def test_nobody_uploads_without_a_token_or_to_a_job_of_others(client, tokens):
    for none in ("", "made-up", tokens["foreman"][:-1]):
        client.token = none
        assert client.create(PHOTO).status == 401
        assert client.head("/api/photos/" + "0" * 32).status == 401
    client.token = tokens["stranger"]
    assert client.create(PHOTO).status == 404
    assert client.create(PHOTO, job="019abcde-0000-7000-8000-00000000dead").status == 404


def test_an_upload_and_its_photo_are_unknown_to_others(client, tokens):
    location = client.create(PHOTO).headers["location"]
    other = Client(client.port, tokens["stranger"])
    assert other.head(location).status == 404
    assert other.patch(location, 0, PHOTO).status == 404
    assert other.call("DELETE", location).status == 404
    client.send(PHOTO, 10_000)
    for path in (f"/photos/{NAME}", f"/api/photos/receipt?sha256={NAME}"):
        joined = path + ("&" if "?" in path else "?")
        assert client.call("GET", f"{joined}job={JOB}").status == 200
        assert other.call("GET", f"{joined}job={JOB}").status == 404
        assert other.call("GET", f"{joined}job={OTHER_JOB}").status == 404
        both = Client(client.port, tokens["inspector"])
        assert both.call("GET", f"{joined}job={JOB}").status == 200
        assert both.call("GET", f"{joined}job={OTHER_JOB}").status == 404


def test_a_limit_on_unfinished_uploads_is_429(folder, tokens):
    with served(real_app(folder, Caps(unfinished=1))) as port:
        client = Client(port, tokens["foreman"])
        assert client.create(PHOTO).status == 201
        reply = client.create(PHOTO[1:])
        assert (reply.status, reply.error["code"]) == (429, "upload_too_many")
        assert client.vouched(client.send(PHOTO, 5000)[0], PHOTO)
        assert client.create(PHOTO[1:]).status == 201


def test_a_full_disk_is_507_with_the_offset_still_true(folder, tokens):
    disk = FaultyDisk(2, "full", only="write")  # the declaration, one piece, then this one
    with served(real_app(folder, disk=disk)) as port:
        client = Client(port, tokens["foreman"])
        location = client.create(PHOTO).headers["location"]
        client.patch(location, 0, PHOTO[:4000])
        assert client.patch(location, 4000, PHOTO[4000:]).status == 507
        assert client.head(location).headers["upload-offset"] == "4000"
        assert client.patch(location, 4000, PHOTO[4000:]).headers["seamwalk-receipt"]


def test_the_checksum_example_of_the_specification_is_taken(client):
    # tus 1.0.0, Checksum, Example: "hello world" with its SHA-1
    body = b"hello world"
    assert base64.b64decode("Kq5sNclPz7QV2+lfQIuc6R7oRu0=") == hashlib.sha1(body).digest()
    location = client.create(body).headers["location"]
    assert client.patch(location, 0, body, Upload_Checksum="sha1 Kq5sNclPz7QV2+lfQIuc6R7oRu0=").status == 204
