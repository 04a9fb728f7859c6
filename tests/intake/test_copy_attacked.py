"""A saved copy that somebody or something has been at: every byte flipped, every cut, and the tricks of archives."""

import hashlib
import io
import random
from typing import Any

import pytest

from inspect_app.entry.copy_seal import list_digest, parse_seal
from inspect_app.entry.jws import verify
from inspect_app.entry.refusal import Refused
from inspect_app.intake.batch import digest_of
from inspect_app.intake.copy_tar import BLOCK, Damage, members
from tests.copies import files_of, header, sha, tar
from tests.office import Office
from tests.seed import SEED

PICTURE = b"\xff\xd8\xff" + b"eave" * 20


class Small:
    """A copy of a photo and the entry that names it. ``spans``: where each member lies in it."""

    def __init__(self, office: Office) -> None:
        self.job, _ = office.job()
        self.phone = office.phone("ann", "foreman", self.job)
        name = sha(PICTURE)
        token = self.phone.entry("photo", self.job, name, {"sha256": name})
        self.files = files_of([token], [(self.job, PICTURE)], self.phone)
        self.data = tar(self.files)
        self.spans, at = {}, 0
        for name, data in self.files:
            size = BLOCK + len(data) + -len(data) % BLOCK
            self.spans[name] = range(at, at + size)
            at += size


@pytest.fixture(scope="module")
def office(tmp_path_factory: Any) -> Office:
    return Office(tmp_path_factory.mktemp("attacked") / "data")


@pytest.fixture(scope="module")
def small(office: Office) -> Small:
    return Small(office)


def read(data: bytes) -> tuple[dict[str, bytes], list[Damage]]:
    """What a reader gets that believes hashes alone, by path."""
    got, damage = {}, []
    for found in members(io.BytesIO(data)):
        if isinstance(found, Damage):
            damage.append(found)
            continue
        held = found.whole()
        path = {"manifest": "manifest.json", "seal": f"seals/{found.name}", "entry": f"entries/{found.name}",
                "photo": f"photos/{found.job}/{found.name}"}[found.what]  # fmt: skip
        if found.what == "entry" and digest_of(held.decode("latin-1")) != found.name:
            continue
        if found.what == "photo" and hashlib.sha256(held).hexdigest() != found.name:
            continue
        got[path] = held
    return got, damage


def sealed(got: dict[str, bytes], small: Small) -> bool:
    token, said = got.get(f"seals/{small.phone.kid}"), got.get("manifest.json")
    if token is None or said is None:
        return False
    try:
        seal = parse_seal(token)
        verify(seal, small.phone.jwk)
    except Refused:
        return False
    return seal.payload["manifest"] == list_digest(said)


def test_every_byte_flipped_is_noticed_and_costs_only_what_it_stands_in(small):
    whole, damage = read(small.data)
    assert whole == dict(small.files) and damage == [] and sealed(whole, small)
    for at in range(len(small.data)):
        spoiled = bytearray(small.data)
        spoiled[at] ^= 1 << at % 8
        got, damage = read(bytes(spoiled))
        hit = next((name for name, span in small.spans.items() if at in span), None)
        for name, data in small.files:
            if name != hit:
                assert got.get(name) == data, (at, name)
        assert damage or got != whole, at
        if hit == "manifest.json" or (hit or "").startswith("seals/"):
            assert damage or not sealed(got, small), at


def test_every_cut_gives_what_stood_before_it_and_says_that_it_was_cut(small):
    for end in range(len(small.data)):
        got, damage = read(small.data[:end])
        before = {name for name, span in small.spans.items() if span.stop <= end}
        assert before <= got.keys() and damage, end


def test_a_block_lost_or_zeroed_anywhere_costs_two_members_at_most(small):
    for at in range(0, len(small.data), BLOCK):
        for gap in (b"", bytes(BLOCK), b"\xaa" * BLOCK):
            got, damage = read(small.data[:at] + gap + small.data[at + BLOCK :])
            missing = {name for name, data in small.files if got.get(name) != data}
            assert len(missing) <= 2 and (missing or damage or at >= len(small.data) - 2 * BLOCK), (at, gap[:1])


def tried(office: Office, small: Small, data: bytes) -> None:
    """Brought in for real: never an error, never anything but what was signed and named."""
    with office.app.app_context():
        brought = office.app.extensions["copies"].bring(io.BytesIO(data))
        vault = office.parts.vault
        assert set(vault.names()) <= {sha(PICTURE)}
        assert not vault.holds(sha(PICTURE)) or vault.read(sha(PICTURE), verify=True) == PICTURE
        tokens = {one.token for one in office.parts.reading.job_entries(small.job)}
    assert len(tokens) <= 2 and not brought.whole
    listed = {one.name for one in brought.came if one.listed}
    if brought.listing and brought.sealed:
        assert listed == {path.rsplit("/", 1)[1] for path, _ in small.files[2:]}, "each of them is told of"


def flips(small: Small, places: Any) -> Any:
    for at in places:
        spoiled = bytearray(small.data)
        spoiled[at] ^= 1 << at % 8
        yield bytes(spoiled)


def test_flips_and_cuts_brought_in_for_real_let_nothing_in_that_was_not_signed(office, small):
    chance = random.Random(SEED)
    places = chance.sample(range(len(small.data)), 25)
    for data in flips(small, places):
        tried(office, small, data)
    for end in chance.sample(range(len(small.data)), 10):
        tried(office, small, small.data[:end])


@pytest.mark.soak
def test_every_flip_and_every_cut_brought_in_for_real(office, small):
    for data in flips(small, range(len(small.data))):
        tried(office, small, data)
    for end in range(len(small.data)):
        tried(office, small, small.data[:end])
    print(f"{len(small.data)} flips and {len(small.data)} cuts of a saved copy brought in: nothing unsigned taken")


TRICKS = {
    "a symbolic link": {"name": "entries/" + "a" * 43, "type": b"2", "linkname": "/etc/passwd"},
    "a hard link": {"name": "photos/" + "0" * 64, "type": b"1", "linkname": "manifest.json"},
    "a device": {"name": "manifest.json", "type": b"3"},
    "a folder": {"name": "entries/" + "b" * 43, "type": b"5"},
    "an extension": {"name": "entries/" + "c" * 43, "type": b"x", "size": 0},
    "a long name": {"name": "@LongLink", "type": b"L", "size": 0},
    "an absolute path": {"name": "/entries/" + "d" * 43},
    "a way out": {"name": "photos/../../etc/passwd"},
    "another folder": {"name": "../entries/" + "e" * 43},
    "a name with a line end": {"name": "manifest.json\n"},
    "a key": {"name": "server.key"},
}


@pytest.mark.parametrize("trick", TRICKS.values(), ids=TRICKS)
def test_a_trick_is_named_skipped_and_hides_nothing_behind_it(small, trick):
    more = {name: value for name, value in trick.items() if name != "name"}
    data = header(trick["name"], **more) + small.data
    got, damage = read(data)
    assert got == dict(small.files)
    assert [(one.code, one.at) for one in damage] == [("not_ours", 0)]


def test_what_stands_in_a_member_that_is_not_ours_is_looked_at_like_the_rest(small):
    inner = tar(small.files[2:3], end=b"")
    got, damage = read(header("etc/passwd", size=len(inner)) + inner + tar(small.files[3:]))
    assert got == dict(small.files[2:]) and [one.code for one in damage] == ["not_ours"]


@pytest.mark.parametrize("size", [64 * 1024 + 1, 8**11 - 1])
def test_a_giant_size_reads_no_further_than_its_own_header(small, size):
    name = small.files[2][0]
    got, damage = read(header(name, size=size) + small.data)
    assert got == dict(small.files) and [one.code for one in damage] == ["not_ours"]


def test_a_size_in_another_dialect_is_no_header(small):
    odd = bytearray(header("manifest.json", size=10))
    odd[124] = 0x80  # base 256, as some writers do for giants
    odd[148:156] = b"%06o\0 " % (sum(odd[:148]) + 256 + sum(odd[156:]))
    got, damage = read(bytes(odd) + small.data)
    assert got == dict(small.files) and [one.code for one in damage] == ["not_a_header"]


def test_a_size_that_swallows_what_follows_costs_that_and_the_rest_is_read(small):
    name, token = small.files[2]
    liar = bytearray(tar([(name, token)], end=b""))
    liar[:BLOCK] = header(name, size=len(liar) + BLOCK)
    got, _ = read(bytes(liar) + tar([small.files[1], small.files[3]]))
    assert got == dict(small.files[3:])


def test_of_two_members_of_one_name_the_first_counts_and_the_second_is_named(small):
    name, _ = small.files[2]
    got, damage = read(tar([*small.files, (name, b"another"), ("manifest.json", b"{}")]))
    assert got == dict(small.files)
    assert [(one.code, one.value) for one in damage] == [("twice", name), ("twice", "manifest.json")]


def test_zeros_at_the_end_are_no_damage_and_anything_else_there_is(small):
    assert read(small.data + bytes(9 * BLOCK)) == (dict(small.files), [])
    got, damage = read(small.data + tar([("seals/" + "x" * 43, b"late")]))
    assert [one.code for one in damage] == ["after_end"] and "seals/" + "x" * 43 in got
    assert [one.code for one in read(small.data + b"PK\3\4")[1]] == ["after_end", "not_a_header", "no_end"]


@pytest.mark.parametrize("data", [b"", b"\0", bytes(5000), b"%PDF-1.7", b"\xff" * 3000], ids=len)
def test_what_is_no_copy_at_all_brings_nothing_and_says_so(office, data):
    with office.app.app_context():
        brought = office.app.extensions["copies"].bring(io.BytesIO(data))
    assert brought.came == [] and brought.listing is None and not brought.whole


def test_a_stream_that_gives_a_byte_at_a_time_is_read_alike(small):
    class Slow(io.BytesIO):
        def read(self, size: int | None = -1, /) -> bytes:
            return super().read(min(1, size or 0))

    assert [one.what for one in members(Slow(small.data)) if not isinstance(one, Damage)][:2] == ["manifest", "seal"]


def test_a_stream_that_breaks_leaves_what_came_before_it_and_the_same_copy_goes_on(office, small):
    class Broken(io.BytesIO):
        def read(self, size: int | None = -1, /) -> bytes:
            if self.tell() >= small.spans[small.files[-1][0]].start:
                raise OSError("the drive was pulled out")
            return super().read(size)

    with office.app.app_context():
        copies = office.app.extensions["copies"]
        with pytest.raises(OSError):
            copies.bring(Broken(small.data))
        assert copies.bring(io.BytesIO(small.data)).whole
