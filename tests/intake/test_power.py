"""The power goes before any call: what a phone was told stays true, and what it has a receipt for is there."""

import shutil
from contextlib import suppress

import pytest

from inspect_app.intake.uploads_place import Place
from inspect_app.store.vault import Vault
from tests.intake.receiving import PHOTO, Receiving, sha
from tests.intake.test_uploads_disk import send
from tests.seed import chance
from tests.store.power import PowerCut, PowerDisk


def prepared(folder):
    """The folders of a server that has started once."""
    Receiving(folder)
    return folder


def calls(tmp_path):
    disk = PowerDisk(prepared(tmp_path / "clean"))
    send(Receiving(tmp_path / "clean", disk=disk))
    return disk.calls


def cut_at(folder, at, luck=None):
    """Send until the power goes; what is wrong when it is back, in words, empty where nothing is."""
    before, after = prepared(folder / "before"), folder / "after"
    disk, told = PowerDisk(before, at), [0]
    receiving = Receiving(before, disk=disk)
    with suppress(PowerCut):
        send(receiving, told)
    given = bool(receiving.receipts.given)
    disk.after(after, luck)
    # The log is SQLite's, with a sync for each commit: what it holds is on the disk.
    if (before / "receipts.json").exists():
        shutil.copyfile(before / "receipts.json", after / "receipts.json")
    again, wrong = Receiving(after), []
    if given and not (again.vault.holds(sha(PHOTO)) and again.vault.found(sha(PHOTO)) == sha(PHOTO)):
        wrong.append("a receipt was given, and the photo is gone")
    again.vault.sweep(untouched=0)
    try:
        progress = again.create()
        if not progress.receipt and progress.offset < told[-1]:
            wrong.append(f"{told[-1]} bytes were said to be here, and there are {progress.offset}")
        if not send(again) or again.vault.found(sha(PHOTO)) != sha(PHOTO):
            wrong.append("sending on gave no receipt")
    except Exception as error:
        wrong.append(f"sending on failed: {error!r}")
    shutil.rmtree(folder)
    return [f"cut before call {at}: {one}" for one in wrong]


def test_a_power_cut_before_any_call_takes_nothing_that_was_told(tmp_path):
    count = calls(tmp_path)
    assert count > 25
    assert [one for at in range(count + 1) for one in cut_at(tmp_path / "one", at)] == []


def test_nor_does_one_that_keeps_some_of_what_was_not_synced(tmp_path):
    luck = chance("a power cut")
    assert [one for at in range(0, calls(tmp_path), 3) for one in cut_at(tmp_path / "one", at, luck)] == []


@pytest.mark.soak
def test_nor_do_hundreds_of_each(tmp_path):
    luck, count, wrong = chance("many power cuts"), calls(tmp_path), []
    for _ in range(60):
        wrong += [one for at in range(count) for one in cut_at(tmp_path / "one", at, luck)]
    print(f"power cuts: {60 * count} at {count} calls, {len(wrong)} failures")
    assert wrong == []


def without(monkeypatch, owner, method, left_out):
    """The same code with one of its calls left out."""
    whole = getattr(owner, method)

    def changed(self, *arguments, **named):
        disk, keep = self.disk if hasattr(self, "disk") else self._disk, {}
        for name in left_out:
            keep[name] = getattr(disk, name)
            setattr(disk, name, lambda *_: None)
        try:
            return whole(self, *arguments, **named)
        finally:
            for name in keep:
                delattr(disk, name)

    monkeypatch.setattr(owner, method, changed)


@pytest.mark.parametrize(
    ("owner", "method", "left_out"),
    [
        (Vault, "_place", ["sync_folder"]),  # the photo's name
        (Place, "append", ["sync"]),  # the bytes of a piece
        (Place, "make", ["sync_folder"]),  # the upload's own name
        (Place, "make", ["sync"]),  # what it declares
    ],
)
def test_the_model_sees_each_sync_that_is_left_out(tmp_path, monkeypatch, owner, method, left_out):
    without(monkeypatch, owner, method, left_out)
    count = calls(tmp_path)
    assert any(cut_at(tmp_path / "one", at) for at in range(count, -1, -1))
