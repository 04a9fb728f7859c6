"""A saved copy brought in: each thing by the ordinary way of its kind, none in the place of another, twice as once."""

import io
from collections import Counter
from typing import Any

import pytest

from inspect_app.intake.copy_outcome import Brought
from tests.copies import files_of, item, manifest, sha, tar
from tests.office import Office
from tests.phone import Phone, new_uuid

PICTURE = b"\xff\xd8\xff" + b"a picture of the hem, invented" * 40


@pytest.fixture
def bring(office: Office) -> Any:
    def bring(data: bytes, **more: Any) -> Brought:
        with office.app.app_context():
            return office.app.extensions["copies"].bring(io.BytesIO(data), **more)

    return bring


def walked(office: Office, phone: Phone, job: str, picture: bytes = PICTURE) -> list[str]:
    return office.walk(phone, job, sha(picture))


def states(brought: Brought) -> Counter[str]:
    return Counter(f"{one.what} {one.status}" for one in brought.came)


def held(office: Office, job: str) -> set[str]:
    with office.app.app_context():
        return {one.token for one in office.parts.reading.job_entries(job)}


def test_what_never_had_signal_arrives_byte_for_byte_and_a_second_time_changes_nothing(office, bring):
    job, _ = office.job()
    phone = office.phone("ann", "foreman", job)
    tokens = walked(office, phone, job)
    data = tar(files_of(tokens, [(job, PICTURE)], phone))
    first = bring(data)
    assert states(first) == {"entry accepted": 4, "photo accepted": 1} and first.whole and first.sealed
    with office.app.app_context():
        receipts = office.parts.reading.receipts(job)
    second = bring(data)
    assert states(second) == {"entry duplicate": 4, "photo duplicate": 1} and second.whole
    assert set(tokens) <= held(office, job)
    with office.app.app_context():
        assert office.parts.vault.read(sha(PICTURE), verify=True) == PICTURE
        assert office.parts.reading.receipts(job) == receipts, "no second receipt"
        assert office.parts.log.photo_receipt(job, sha(PICTURE)) is not None
    assert office.told, "a signed walk that is whole makes its report due"
    answers = phone.send(*tokens).json["answers"]
    assert {one["status"] for one in answers} == {"duplicate"} and all(one["receipt"] for one in answers)


def test_two_people_s_work_on_one_phone_comes_by_the_keys_of_both(office, bring):
    job, _ = office.job()
    ann, ben = office.phone("ann", "foreman", job), office.phone("ben", "inspector", job)
    tokens = [*walked(office, ann, job), *office.walk(ben, job)]
    brought = bring(tar(files_of(tokens, [(job, PICTURE)], ann, ben)))
    assert brought.whole and states(brought) == {"entry accepted": 7, "photo accepted": 1}
    assert [(one.kid, one.state) for one in brought.seals] == [(ann.kid, "good"), (ben.kid, "good")]
    assert {one.listed.person for one in brought.came if one.what == "entry"} == {ann.person.id, ben.person.id}


def test_a_photo_whose_entry_arrived_long_ago_comes_alone(office, bring):
    job, _ = office.job()
    phone = office.phone("ann", "foreman", job)
    phone.send(*walked(office, phone, job))
    brought = bring(tar(files_of([], [(job, PICTURE)], phone)))
    assert brought.whole and states(brought) == {"photo accepted": 1}


def test_one_bad_entry_and_one_bad_photo_hide_nothing_else(office, bring):
    job, _ = office.job()
    phone, other = office.phone("ann", "foreman", job), b"\xff\xd8\xff another"
    walk, station, photo, signoff = walked(office, phone, job)
    second = phone.entry("photo", job, sha(other), {"sha256": sha(other)})
    files = files_of([walk, station, photo, signoff, second], [(job, PICTURE), (job, other)], phone)
    names = [name for name, _ in files]
    spoiled = dict(files) | {names[3]: files[3][1][:-1] + b"!", names[7]: PICTURE[:-1] + b"!"}
    brought = bring(tar(list(spoiled.items())))
    assert states(brought) == {"entry accepted": 4, "entry refused": 1, "photo damaged": 1, "photo accepted": 1}
    bad = {one.name: one.why.code for one in brought.came if one.why}
    assert bad == {names[3].split("/")[1]: "not_canonical", sha(PICTURE): "copy_damaged"}
    assert not brought.whole


def test_an_entry_under_another_s_name_is_damaged_and_stays_out(office, bring):
    job, _ = office.job()
    phone = office.phone("ann", "foreman", job)
    files = files_of([phone.entry("area", job), phone.entry("area", job)], [], phone)
    files[2], files[3] = (files[2][0], files[3][1]), (files[3][0], files[2][1])
    assert states(bring(tar(files))) == {"entry damaged": 2} and len(held(office, job)) == 1


def test_what_the_phone_had_lost_itself_is_named_and_so_is_what_fell_out_of_the_file(office, bring):
    job, _ = office.job()
    phone, gone = office.phone("ann", "foreman", job), b"no longer whole"
    tokens = walked(office, phone, job)
    files = files_of(tokens, [(job, PICTURE)], phone, lost=[(job, gone)])
    brought = bring(tar(files[:-2]))
    assert states(brought) == {"entry accepted": 3, "entry absent": 1, "photo absent": 2}
    why = {one.name: one.why.code for one in brought.came if one.status == "absent"}
    last = files[-2][0].split("/")[1]
    assert why == {last: "copy_absent", sha(PICTURE): "copy_absent", sha(gone): "copy_photo_damaged"}
    assert brought.sealed and not brought.whole


def test_another_job_s_photo_is_not_brought_in_by_a_copy_that_no_entry_of_the_job_names_it_in(office, bring):
    here, _ = office.job()
    there, _ = office.job()
    phone = office.phone("ann", "foreman", here, there)
    tokens = walked(office, phone, here)
    brought = bring(tar(files_of(tokens, [(there, PICTURE)], phone)))
    assert states(brought) == {"entry accepted": 4, "photo refused": 1}
    assert brought.came[-1].why.code == "copy_photo_not_named"
    with office.app.app_context():
        assert not office.parts.vault.holds(sha(PICTURE)), "nothing was written for it"
        assert office.parts.log.photo_receipt(there, sha(PICTURE)) is None


def test_a_revoked_key_s_work_is_kept_apart_with_its_photo_and_stays_so_a_second_time(office, bring):
    job, _ = office.job()
    phone = office.phone("ann", "foreman", job)
    tokens = walked(office, phone, job)
    data = tar(files_of(tokens, [(job, PICTURE)], phone))
    with office.app.app_context():
        office.parts.devices.revoke(phone.kid, "server")
    for _ in range(2):
        brought = bring(data)
        assert states(brought) == {"entry quarantined": 4, "photo quarantined": 1}
        assert brought.sealed and brought.seals[0].state == "key_revoked"
    assert not set(tokens) & held(office, job)
    with office.app.app_context():
        assert office.parts.log.photo_receipt(job, sha(PICTURE)) is None
        assert office.parts.quarantine.photo(job, sha(PICTURE)).kid == phone.kid
        assert {one.digest for one in office.parts.quarantine.of(job)} == {
            one.name for one in brought.came if one.what == "entry"
        }


def test_entries_of_no_member_of_an_unknown_key_or_in_another_s_name_are_refused_as_from_a_phone(office, bring):
    job, _ = office.job()
    member = office.phone("ann", "foreman", job)
    outsider, unknown = office.phone("zoe", "foreman"), Phone(office.client(), member.person)
    forged = member.entry("area", job, by=outsider.person.id)
    tokens = [outsider.entry("area", job), unknown.entry("area", job), forged, member.entry("area", job, seq=2)]
    brought = bring(tar(files_of(tokens, [], member)))
    assert [one.why.code if one.why else "" for one in brought.came] == [
        "not_a_member", "unknown_key", "wrong_person", "",
    ]  # fmt: skip


@pytest.mark.parametrize("spoil, state", [
    (lambda seal, other: other, "other_list"),
    (lambda seal, other: seal[:-8] + b"AAAAAAAA", "bad_signature"),
    (lambda seal, other: b"not a seal", "unreadable"),
])  # fmt: skip
def test_a_seal_that_does_not_hold_is_said_and_the_items_stand_by_themselves(office, bring, spoil, state):
    job, _ = office.job()
    phone = office.phone("ann", "foreman", job)
    tokens = walked(office, phone, job)
    files = files_of(tokens, [(job, PICTURE)], phone)
    other = files_of(tokens[:1], [], phone)
    files[1] = (files[1][0], spoil(files[1][1], other[1][1]))
    brought = bring(tar(files))
    assert states(brought) == {"entry accepted": 4, "photo accepted": 1}
    assert [one.state for one in brought.seals] == [state] and not brought.sealed and not brought.whole


def test_a_seal_by_a_key_that_this_server_does_not_know_vouches_for_nothing(office, bring):
    job, _ = office.job()
    phone = office.phone("ann", "foreman", job)
    stranger = Phone(office.client(), phone.person)
    brought = bring(tar(files_of([phone.entry("area", job)], [], stranger)))
    assert states(brought) == {"entry accepted": 1}
    assert brought.seals[0].state == "unknown_key" and not brought.sealed
    renamed = files_of([phone.entry("area", job)], [], stranger)
    renamed[1] = (f"seals/{phone.kid}", renamed[1][1])  # under another's name
    assert bring(tar(renamed)).seals[0].state == "bad_signature"


def test_a_copy_without_a_list_or_with_one_that_cannot_be_read_still_gives_what_is_in_it(office, bring):
    job, _ = office.job()
    phone = office.phone("ann", "foreman", job)
    files = files_of([phone.entry("area", job)], [], phone)
    assert bring(tar(files[2:])).listing is None
    for said in (b"{", b'{"v":2,"kind":"copy"}', manifest([item("entry", "../../etc/passwd", job, 1)]),
                 manifest([item("photo", sha(b""), "../..", 1)]), manifest([{"what": "key"}]),
                 manifest([{"what": ["entry"]}]), manifest([{"what": {"entry": 1}}])):  # fmt: skip
        brought = bring(tar([("manifest.json", said), *files[1:]]))
        assert states(brought) == {"entry duplicate": 1} and not brought.whole
        assert [one.code for one in brought.damage] == ["list"]


def test_whoever_may_not_bring_into_a_job_is_told_nothing_of_it(office, bring):
    here, _ = office.job()
    there, _ = office.job()
    phone = office.phone("ann", "foreman", here, there)
    tokens = [phone.entry("area", here), *walked(office, phone, there)]
    phone.send(*tokens[1:])
    brought = bring(tar(files_of(tokens, [(there, PICTURE)], phone)), may=lambda job: job == here)
    assert states(brought) == {"entry accepted": 1, "entry refused": 4, "photo refused": 1}
    assert {one.why.code for one in brought.came if one.why} == {"copy_job_not_yours"}
    assert {one.job for one in brought.came if one.why} == {there}


def test_a_photo_over_the_limit_of_every_other_way_is_refused_before_it_is_written(office, bring, monkeypatch):
    job, _ = office.job()
    phone = office.phone("ann", "foreman", job)
    tokens = walked(office, phone, job)
    monkeypatch.setattr(office.app.extensions["copies"], "most", len(PICTURE) - 1)
    brought = bring(tar(files_of(tokens, [(job, PICTURE)], phone)))
    assert brought.came[-1].why.code == "copy_photo_too_large"
    with office.app.app_context():
        assert not office.parts.vault.holds(sha(PICTURE))


def test_good_bytes_mend_a_photo_that_the_disk_no_longer_gives(office, bring):
    job, _ = office.job()
    phone = office.phone("ann", "foreman", job)
    data = tar(files_of(walked(office, phone, job), [(job, PICTURE)], phone))
    bring(data)
    with office.app.app_context():
        path = office.parts.vault.path(sha(PICTURE))
        path.chmod(0o600)
        path.write_bytes(b"rust")
        bring(data)
        assert office.parts.vault.read(sha(PICTURE), verify=True) == PICTURE


def test_more_entries_than_one_transaction_takes_come_in_several(office, bring):
    job, _ = office.job()
    phone = office.phone("ann", "foreman", job)
    brought = bring(tar(files_of([phone.entry("area", job, new_uuid()) for _ in range(101)], [], phone)))
    assert states(brought) == {"entry accepted": 101} and brought.whole


def test_the_log_is_read_once_for_all_photos_that_follow_each_other(office, bring, monkeypatch):
    job, _ = office.job()
    phone = office.phone("ann", "foreman", job)
    pictures = [PICTURE + bytes([n]) for n in range(20)]
    tokens = [phone.entry("photo", job, sha(one), {"sha256": sha(one)}) for one in pictures]
    copies, read = office.app.extensions["copies"], []
    signers = copies.signers
    monkeypatch.setattr(copies, "signers", lambda job: read.append(job) or signers(job))
    assert bring(tar(files_of(tokens, [(job, one) for one in pictures], phone))).whole
    assert read == [job], "else a long walk's copy takes minutes in a long job"


def test_of_a_revoked_key_s_many_photos_the_log_is_asked_once_each_entry(office, bring, monkeypatch):
    job, _ = office.job()
    phone, lost = office.phone("ann", "foreman", job), office.phone("ben", "foreman", job)
    pictures = [PICTURE + bytes([n]) for n in range(6)]
    phone.send(*(phone.entry("photo", job, sha(one), {"sha256": sha(one)}) for one in pictures[:5]))
    last = lost.entry("photo", job, sha(pictures[5]), {"sha256": sha(pictures[5])})
    with office.app.app_context():
        office.parts.devices.revoke(lost.kid, "server")
    copies = office.app.extensions["copies"]
    door, read = copies.door, []
    after = door.reading.job_after
    noted = lambda job, seq: [read.append(one) or one for one in after(job, seq)]  # noqa: E731
    monkeypatch.setattr(copies, "signers", lambda job: dict.fromkeys(map(sha, pictures), lost.kid))
    monkeypatch.setattr(door.reading, "job_after", noted)
    brought = bring(tar(files_of([last], [(job, one) for one in pictures], lost)))
    assert states(brought) == {"entry quarantined": 1, "photo accepted": 5, "photo quarantined": 1}
    with office.app.app_context():
        assert len(read) == len({one.seq for one in read}) == len(door.reading.job_entries(job))
