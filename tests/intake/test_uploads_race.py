"""Two appenders at once, stalled ones, and many: the file is the photo or it is not held."""

import io
import random
import threading

from inspect_app.intake.uploads_refused import UploadRefused
from tests.intake.receiving import JOB, PHONE, PHOTO, Receiving, sha
from tests.intake.test_uploads import refusal


class Stalled:
    """A body that gives its first piece, hangs until released, then goes on."""

    def __init__(self, pieces):
        self.pieces = list(pieces)
        self.hanging, self.release = threading.Event(), threading.Event()
        self.given = 0

    def read(self, size):
        if self.given == 1:
            self.hanging.set()
            assert self.release.wait(10)
        self.given += 1
        return self.pieces.pop(0) if self.pieces else b""


def test_a_newer_request_overtakes_a_stalled_one_which_writes_nothing_more(tmp_path):
    receiving = Receiving(tmp_path)
    made = receiving.create()
    body = Stalled([b"\x00" * 1000, b"\x00" * 1000])
    outcome = []

    def old():
        outcome.append(refusal(receiving.uploads.patch, PHONE, made.id, 0, body).code)

    thread = threading.Thread(target=old)
    thread.start()
    assert body.hanging.wait(10)
    assert receiving.uploads.head(PHONE, made.id).offset == 0  # and does not wait
    assert receiving.patch(made.id, 0, PHOTO[:500]).offset == 500
    body.release.set()
    thread.join(10)
    assert outcome == ["upload_offset_wrong"]
    assert receiving.patch(made.id, 500, PHOTO[500:]).receipt


def test_a_newer_request_at_the_same_offset_takes_the_turn_before_its_first_byte(tmp_path):
    receiving = Receiving(tmp_path)
    made = receiving.create()
    body = Stalled([PHOTO[:1000], b""])
    newer = Stalled([PHOTO, b""])
    outcome = []

    def send(stream):
        try:
            outcome.append(receiving.uploads.patch(PHONE, made.id, 0, stream).receipt)
        except UploadRefused as refused:
            outcome.append(refused.code)

    threads = [threading.Thread(target=send, args=(stream,)) for stream in (body, newer)]
    for thread, stream in zip(threads, (body, newer), strict=True):
        thread.start()
        assert stream.hanging.wait(10)
    body.release.set()
    threads[0].join(10)
    newer.release.set()
    threads[1].join(10)
    assert outcome == ["upload_overtaken", receiving.receipts.given[JOB, sha(PHOTO)]]


def test_many_clients_racing_through_one_upload_end_with_the_photo_once(tmp_path):
    receiving = Receiving(tmp_path)
    made = receiving.create()
    finished = []

    def client(seed):
        luck = random.Random(seed)
        while True:
            try:
                at = receiving.uploads.head(PHONE, made.id)
                if at.receipt:
                    finished.append(at.receipt)
                    return
                size = luck.randrange(1, 30_000)
                body = io.BytesIO(PHOTO[at.offset : at.offset + size])
                receiving.uploads.patch(PHONE, made.id, at.offset, body)
            except UploadRefused as refused:
                assert refused.code in ("upload_offset_wrong", "upload_overtaken", "upload_gone"), refused

    threads = [threading.Thread(target=client, args=(seed,)) for seed in range(6)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join(30)
    assert len(finished) == 6 and len(set(finished)) == 1
    assert receiving.vault.read(sha(PHOTO), verify=True) == PHOTO


def test_creating_at_once_from_many_requests_makes_one_upload(tmp_path):
    receiving = Receiving(tmp_path)
    made = []
    threads = [threading.Thread(target=lambda: made.append(receiving.create())) for _ in range(8)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join(10)
    assert len(made) == 8 and len(set(made)) == 1
