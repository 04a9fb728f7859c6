"""What every released build left on a phone, half of it sent, is sent by the build of today to the byte."""

import hashlib
import shutil
from base64 import b64decode
from pathlib import Path
from typing import Any

import pytest

from tests.browser.office import Office
from tests.browser.phone import Phone
from tests.museum.fill import fill, plain
from tests.museum.form import form
from tests.museum.piece import HERE, RELEASES, Piece, piece

LOAD = f"async (kept) => {{ {plain('load')} await load('seamwalk', kept) }}"
# What phones out there hold is never made again.
MADE = {
    1: "7901954038b0edadc6f17ccbb16e942546fdd354c9ca1b054844bc5eae94d252",
    2: "41190ef913f3bf856f0ff569c9b298e02f56af7b2fd1dc0bf4a9c1193844caa3",
}
NEXT = """The phone keeps its rows in another form than the newest piece has. Phones out there hold the old one:
keep both forms readable, then add a piece of the new one: python -m tests.museum"""


@pytest.mark.parametrize("release", RELEASES)
def test_a_piece_of_the_museum_is_what_it_was(release: int) -> None:
    found = (HERE / f"release_{release}" / "phone.json.gz").read_bytes()
    assert MADE.get(release) == hashlib.sha256(found).hexdigest()


def whole(kept: Piece, sha256: str) -> bytes:
    """A photo's bytes as the piece holds them."""
    chunks = sorted((row["n"], row["bytes"]["$bytes"]) for row in kept.rows("photo_chunks") if row["photo"] == sha256)
    return b"".join(b64decode(text) for _, text in chunks)


def tokens(office: Office) -> set[str]:
    with office.app.app_context():
        return {row.token for row in office.parts.reading.entries_after(0, [office.job], 100_000)}


def sent(chromium: Any, kept: Piece, folder: Path, uploads: bool) -> tuple[Phone, Office]:
    """The piece's phone and office, opened by the builds of today, once all has been sent that can be."""
    kept.unpack(folder)
    if not uploads:  # weeks later, an unfinished upload is gone from the server
        shutil.rmtree(folder / "uploads")
    office = Office(folder)
    office.start()
    phone = Phone(chromium.new_context(), office.url)
    phone.page.evaluate(LOAD, kept.phone)
    phone.run("await sendNow()")
    return phone, office


@pytest.mark.parametrize(("release", "uploads"), [(one, uploads) for one in RELEASES for uploads in (True, False)])
def test_what_a_release_left_on_a_phone_is_sent_to_the_byte(
    chromium: Any, tmp_path: Path, release: int, uploads: bool
) -> None:
    kept = piece(release)
    phone, office = sent(chromium, kept, tmp_path / "office", uploads)
    try:
        waited = kept.rows("outbox")
        of = {row["digest"]: row["token"] for row in kept.rows("entries")}
        texts = {of[row["name"]] for row in waited if row["what"] == "entry"}
        assert len(texts) == 3 and texts <= tokens(office), "of everybody, refused before or not"
        pictures = {row["name"]: whole(kept, row["name"]) for row in waited if row["what"] == "photo"}
        good = {name: one for name, one in pictures.items() if hashlib.sha256(one).hexdigest() == name}
        assert (len(pictures), len(good)) == (3, 2)
        assert {name: office.photo(name) for name in good} == good
        left = [(row["name"], row["state"]) for row in phone.run("return outboxItems()")]
        assert left == [(name, "damaged") for name in pictures.keys() - good.keys()]
        half = [row for row in waited if row["what"] == "photo" and row["upload"]]
        assert len(half) == 1
        begun = office.gate.seen.count("POST /api/photos")
        assert begun == (2 if uploads else 3), "the half sent one is gone on with, where the server has it"
        drafts = [(row["person"], row["key"], row["value"]) for row in kept.rows("drafts")]
        assert len(drafts) == 1
        assert [phone.run("return loadDraft(...arg)", [*one[:2]]) for one in drafts] == [one[2] for one in drafts]
        ann = next(row["id"] for row in kept.rows("people") if row["pin"])
        assert phone.run("return unlock(arg, '4321').catch((fault) => fault.code)", ann) == "people.wrong_pin"
        assert phone.run("return (await unlock(arg, '1234')).id", ann) == ann
        phone.note(office.job, "today")
        phone.run("await sendNow()")
        seqs = sorted(one.payload["seq"] for one in office.entries() if one.payload["by"] == ann)
        assert seqs == list(range(len(seqs))), "and the chain goes on"
    finally:
        office.stop()


def test_a_row_of_another_form_than_the_newest_release_has_is_a_new_piece(phone: Phone, office: Office) -> None:
    today = form(fill(phone, office))
    kept = form(piece(max(RELEASES)).phone)
    for name in sorted(today["stores"].keys() | kept["stores"].keys()):
        assert today["stores"].get(name) == kept["stores"].get(name), NEXT
    assert today["version"] == kept["version"], NEXT
