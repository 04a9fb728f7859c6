"""The upload state machine: what a phone is told is what the disk holds."""

import io

import pytest

from inspect_app.intake.uploads_refused import UploadRefused
from tests.intake.receiving import JOB, OTHER_JOB, OTHER_PHONE, PHONE, PHOTO, Receiving, checksum, sha


@pytest.fixture
def receiving(tmp_path):
    return Receiving(tmp_path)


def refusal(call, *arguments, **named):
    with pytest.raises(UploadRefused) as raised:
        call(*arguments, **named)
    return raised.value


def test_pieces_arrive_in_order_and_the_last_brings_the_receipt(receiving):
    made = receiving.create()
    assert (made.offset, made.length, made.receipt) == (0, len(PHOTO), None)
    half = receiving.patch(made.id, 0, PHOTO[:70_000])
    assert (half.offset, half.receipt) == (70_000, None)
    done = receiving.patch(made.id, 70_000, PHOTO[70_000:])
    assert done.offset == len(PHOTO) and done.receipt == receiving.receipts.given[JOB, sha(PHOTO)]
    assert receiving.vault.read(sha(PHOTO), verify=True) == PHOTO


def test_a_photo_larger_than_what_memory_is_given_arrives_whole(receiving):
    photo = PHOTO * 20
    made = receiving.create(photo)
    assert receiving.patch(made.id, 0, photo, checksum=checksum(photo)).receipt
    assert receiving.vault.read(sha(photo), verify=True) == photo


def test_creating_again_finds_the_same_upload_where_it_stood(receiving):
    made = receiving.create()
    receiving.patch(made.id, 0, PHOTO[:10])
    again = receiving.create()
    assert (again.id, again.offset) == (made.id, 10)


def test_a_lost_last_answer_costs_nothing(receiving):
    made = receiving.create()
    receipt = receiving.patch(made.id, 0, PHOTO).receipt
    again = (receiving.uploads.head(PHONE, made.id), receiving.create(), receiving.patch(made.id, len(PHOTO), b""))
    for progress in again:
        assert (progress.offset, progress.receipt) == (len(PHOTO), receipt)
    assert len(receiving.receipts.given) == 1


def test_a_photo_the_job_holds_is_complete_from_its_creation_for_any_device(receiving):
    receiving.patch(receiving.create().id, 0, PHOTO)
    other = receiving.create(device=OTHER_PHONE)
    assert other.offset == other.length and other.receipt == receiving.receipts.given[JOB, sha(PHOTO)]


def test_knowing_a_hash_is_not_having_the_photo(receiving):
    receiving.patch(receiving.create().id, 0, PHOTO)
    elsewhere = receiving.create(job=OTHER_JOB)
    assert elsewhere.offset == 0 and elsewhere.receipt is None
    assert receiving.uploads.receipt(PHONE, OTHER_JOB, sha(PHOTO)) is None
    assert receiving.patch(elsewhere.id, 0, PHOTO).receipt != receiving.receipts.given[JOB, sha(PHOTO)]


def test_an_upload_is_unknown_to_every_other_device(receiving):
    made = receiving.create()
    for call in (receiving.uploads.head, receiving.uploads.terminate):
        assert refusal(call, OTHER_PHONE, made.id).code == "upload_unknown"
    assert refusal(receiving.patch, made.id, 0, PHOTO, device=OTHER_PHONE).code == "upload_unknown"
    assert receiving.create(device=OTHER_PHONE).id != made.id


@pytest.mark.parametrize("name", ["", "..", "../../secret", "x" * 32, "A" * 32, "0" * 31, "0" * 32])
def test_an_id_that_was_never_given_is_unknown(receiving, name):
    assert refusal(receiving.uploads.head, PHONE, name).code == "upload_unknown"


@pytest.mark.parametrize("offset", [0, 9, 11, len(PHOTO), len(PHOTO) + 1])
def test_a_wrong_offset_is_refused_with_the_true_one_and_moves_nothing(receiving, offset):
    made = receiving.create()
    receiving.patch(made.id, 0, PHOTO[:10])
    refused = refusal(receiving.patch, made.id, offset, b"")
    assert refused.code in ("upload_offset_wrong", "upload_beyond_length")
    if refused.code == "upload_offset_wrong":
        assert refused.facts["offset"] == 10
    assert receiving.uploads.head(PHONE, made.id).offset == 10


@pytest.mark.parametrize("algorithm", ["sha1", "sha256"])
def test_a_piece_with_another_checksum_is_dropped_and_the_right_one_taken(receiving, algorithm):
    made = receiving.create()
    other = PHOTO[:-1] + bytes([PHOTO[-1] ^ 1])
    refused = refusal(receiving.patch, made.id, 0, other, checksum=checksum(PHOTO, algorithm))
    assert refused.code == "upload_checksum_wrong"
    assert receiving.uploads.head(PHONE, made.id).offset == 0
    assert receiving.patch(made.id, 0, PHOTO, checksum=checksum(PHOTO, algorithm)).receipt


def test_a_whole_photo_with_another_hash_is_dropped_with_both_hashes_and_starts_again(receiving):
    made = receiving.create()
    wrong = PHOTO[:-1] + bytes([PHOTO[-1] ^ 1])
    refused = refusal(receiving.patch, made.id, 0, wrong)
    assert (refused.code, refused.facts) == ("upload_hash_wrong", {"declared": sha(PHOTO), "found": sha(wrong)})
    assert refusal(receiving.uploads.head, PHONE, made.id).code == "upload_unknown"
    assert not receiving.receipts.given and list(receiving.vault.names()) == []
    assert receiving.create() == (made.id, 0, len(PHOTO), None)
    assert receiving.patch(made.id, 0, PHOTO).receipt


@pytest.mark.parametrize("with_checksum", [True, False])
def test_more_bytes_than_declared_are_refused_even_when_the_body_does_not_say_its_size(receiving, with_checksum):
    made = receiving.create()
    body = PHOTO + b"?"
    for size in (None, len(body)):
        whole = checksum(body) if with_checksum else None
        refused = refusal(receiving.uploads.patch, PHONE, made.id, 0, io.BytesIO(body), whole, size)
        assert refused.code == "upload_beyond_length"
        assert receiving.uploads.head(PHONE, made.id).offset == 0


def test_an_empty_photo_is_complete_when_created_if_its_hash_is_that_of_nothing(receiving):
    assert receiving.create(b"").receipt
    assert receiving.vault.read(sha(b""), verify=True) == b""
    assert refusal(receiving.create, b"", sha256=sha(b"something")).code == "upload_hash_wrong"


def test_another_length_for_the_same_hash_starts_from_nothing(receiving):
    made = receiving.create(length=len(PHOTO) + 5)
    receiving.patch(made.id, 0, PHOTO)
    assert receiving.create() == (made.id, 0, len(PHOTO), None)
    assert receiving.patch(made.id, 0, PHOTO).receipt


def test_a_terminated_upload_is_unknown_and_its_photo_if_held_stays(receiving):
    made = receiving.create()
    receiving.patch(made.id, 0, PHOTO[:10])
    receiving.uploads.terminate(PHONE, made.id)
    assert refusal(receiving.uploads.head, PHONE, made.id).code == "upload_unknown"
    receiving.patch(receiving.create().id, 0, PHOTO)
    receiving.uploads.terminate(PHONE, made.id)
    assert receiving.vault.read(sha(PHOTO), verify=True) == PHOTO
    assert receiving.uploads.receipt(PHONE, JOB, sha(PHOTO))


@pytest.mark.parametrize("way", ["head", "patch", "create", "receipt"])
def test_when_the_log_failed_after_the_last_byte_any_next_question_gives_the_receipt(receiving, way):
    made = receiving.create()
    receiving.receipts.failures = 1
    with pytest.raises(RuntimeError):
        receiving.patch(made.id, 0, PHOTO)
    receiving.restart()
    given = {
        "head": lambda: receiving.uploads.head(PHONE, made.id).receipt,
        "patch": lambda: receiving.patch(made.id, len(PHOTO), b"").receipt,
        "create": lambda: receiving.create().receipt,
        "receipt": lambda: receiving.uploads.receipt(PHONE, JOB, sha(PHOTO)),
    }[way]()
    assert given == receiving.receipts.given[JOB, sha(PHOTO)]


def test_a_broken_connection_keeps_what_came(receiving):
    made = receiving.create()

    class Broken:
        def __init__(self):
            self.pieces = [PHOTO[:1000], PHOTO[1000:3000]]

        def read(self, size):
            if self.pieces:
                return self.pieces.pop(0)
            raise ConnectionResetError("the phone went round a corner")

    with pytest.raises(ConnectionResetError):
        receiving.uploads.patch(PHONE, made.id, 0, Broken())
    assert receiving.uploads.head(PHONE, made.id).offset == 3000
    assert receiving.patch(made.id, 3000, PHOTO[3000:]).receipt


def test_a_broken_connection_with_a_checksum_keeps_nothing_because_nothing_was_checked(receiving):
    made = receiving.create()

    class Broken:
        def __init__(self):
            self.pieces = [PHOTO[:1000]]

        def read(self, size):
            if self.pieces:
                return self.pieces.pop()
            raise ConnectionResetError

    with pytest.raises(ConnectionResetError):
        receiving.uploads.patch(PHONE, made.id, 0, Broken(), checksum(PHOTO))
    assert receiving.uploads.head(PHONE, made.id).offset == 0
