"""A full, failing or dying disk at any call: no false offset, no receipt without the photo, and a way on."""

import pytest

from tests.intake.receiving import PHONE, PHOTO, Receiving, checksum, sha
from tests.store.faulty_disk import CRASHED, FaultyDisk, in_a_child

PIECES = [PHOTO[:60_000], PHOTO[60_000:150_000], PHOTO[150_000:]]


def send(receiving, told=None):
    """Send the photo in pieces from wherever the server says it stands; notes each offset it was told."""
    progress = receiving.create()
    while not progress.receipt:
        offset = progress.offset
        piece = PHOTO[offset : offset + 70_000]
        progress = receiving.patch(progress.id, offset, piece, checksum=checksum(piece))
        if told is not None:
            told.append(progress.offset)
    return progress.receipt


def operations(tmp_path):
    disk = FaultyDisk(-1, "full")
    send(Receiving(tmp_path / "clean", disk=disk))
    return len(disk.done)


@pytest.mark.parametrize("fault", ["full", "broken"])
def test_after_a_fault_at_any_call_the_offset_is_true_and_sending_on_succeeds(tmp_path, fault):
    for at in range(operations(tmp_path)):
        disk = FaultyDisk(at, fault)
        receiving = Receiving(tmp_path / str(at), disk=disk)
        told = [0]
        try:
            send(receiving, told)
        except OSError:
            assert not receiving.receipts.given or receiving.vault.read(sha(PHOTO), verify=True) == PHOTO
        receiving.restart()
        progress = receiving.create()
        assert progress.receipt or progress.offset == told[-1] or progress.offset == len(PHOTO)
        assert send(receiving)
        assert receiving.vault.read(sha(PHOTO), verify=True) == PHOTO
        assert list(receiving.folder.glob("*/*.part")) == []


def test_after_a_crash_at_any_call_the_offset_is_no_less_than_was_told_and_sending_on_succeeds(tmp_path):
    for at in range(operations(tmp_path)):
        folder = tmp_path / str(at)

        def work(folder=folder, at=at):
            told = _Told(folder / "told")
            send(Receiving(folder, disk=FaultyDisk(at, "crash")), told)

        folder.mkdir()
        assert in_a_child(work) == CRASHED
        receiving = Receiving(folder)
        receiving.vault.sweep(untouched=0)
        progress = receiving.create()
        assert progress.offset >= _Told(folder / "told").most()
        assert send(receiving)
        assert receiving.vault.read(sha(PHOTO), verify=True) == PHOTO


def test_a_full_disk_in_the_middle_of_a_piece_takes_the_piece_back(tmp_path):
    disk = FaultyDisk(2, "full", only="write")  # the declaration, one piece, then this one
    receiving = Receiving(tmp_path, disk=disk)
    made = receiving.create()
    receiving.patch(made.id, 0, PHOTO[:60_000])
    with pytest.raises(OSError):
        receiving.patch(made.id, 60_000, PHOTO[60_000:])
    assert receiving.uploads.head(PHONE, made.id).offset == 60_000
    assert receiving.patch(made.id, 60_000, PHOTO[60_000:]).receipt


class _Told:
    """What the phone was told, kept where the crash of the server does not reach it."""

    def __init__(self, path):
        self.path = path

    def append(self, offset):
        with self.path.open("a") as file:
            file.write(f"{offset}\n")

    def most(self):
        return max(map(int, self.path.read_text().split()), default=0) if self.path.exists() else 0
