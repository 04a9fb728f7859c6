"""A full, failing or dying disk at any call: no false offset, no receipt without the photo, and a way on."""

import pytest

from tests.intake.upload_bench import PHONE, PHOTO, Bench, checksum, sha
from tests.store.faulty_disk import CRASHED, FaultyDisk, in_a_child

PIECES = [PHOTO[:60_000], PHOTO[60_000:150_000], PHOTO[150_000:]]


def send(bench, told=None):
    """Send the photo in pieces from wherever the server says it stands; notes each offset it was told."""
    progress = bench.create()
    while not progress.receipt:
        offset = progress.offset
        piece = PHOTO[offset : offset + 70_000]
        progress = bench.patch(progress.id, offset, piece, checksum=checksum(piece))
        if told is not None:
            told.append(progress.offset)
    return progress.receipt


def operations(tmp_path):
    disk = FaultyDisk(-1, "full")
    send(Bench(tmp_path / "clean", disk=disk))
    return len(disk.done)


@pytest.mark.parametrize("fault", ["full", "broken"])
def test_after_a_fault_at_any_call_the_offset_is_true_and_sending_on_succeeds(tmp_path, fault):
    for at in range(operations(tmp_path)):
        disk = FaultyDisk(at, fault)
        bench = Bench(tmp_path / str(at), disk=disk)
        told = [0]
        try:
            send(bench, told)
        except OSError:
            assert not bench.receipts.given or bench.vault.read(sha(PHOTO), verify=True) == PHOTO
        bench.restart()
        progress = bench.create()
        assert progress.receipt or progress.offset == told[-1] or progress.offset == len(PHOTO)
        assert send(bench)
        assert bench.vault.read(sha(PHOTO), verify=True) == PHOTO
        assert list(bench.folder.glob("*/*.part")) == []


def test_after_a_crash_at_any_call_the_offset_is_no_less_than_was_told_and_sending_on_succeeds(tmp_path):
    for at in range(operations(tmp_path)):
        folder = tmp_path / str(at)

        def work(folder=folder, at=at):
            told = _Told(folder / "told")
            send(Bench(folder, disk=FaultyDisk(at, "crash")), told)

        folder.mkdir()
        assert in_a_child(work) == CRASHED
        bench = Bench(folder)
        bench.vault.sweep(untouched=0)
        progress = bench.create()
        assert progress.offset >= _Told(folder / "told").most()
        assert send(bench)
        assert bench.vault.read(sha(PHOTO), verify=True) == PHOTO


def test_a_full_disk_in_the_middle_of_a_piece_takes_the_piece_back(tmp_path):
    disk = FaultyDisk(2, "full", only="write")  # the declaration, one piece, then this one
    bench = Bench(tmp_path, disk=disk)
    made = bench.create()
    bench.patch(made.id, 0, PHOTO[:60_000])
    with pytest.raises(OSError):
        bench.patch(made.id, 60_000, PHOTO[60_000:])
    assert bench.uploads.head(PHONE, made.id).offset == 60_000
    assert bench.patch(made.id, 60_000, PHOTO[60_000:]).receipt


class _Told:
    """What the phone was told, kept where the crash of the server does not reach it."""

    def __init__(self, path):
        self.path = path

    def append(self, offset):
        with self.path.open("a") as file:
            file.write(f"{offset}\n")

    def most(self):
        return max(map(int, self.path.read_text().split()), default=0) if self.path.exists() else 0
