"""A package is a BagIt bag: judged by the bagit library and by the rules of RFC 8493 itself, section by section."""

import hashlib
import json
import re
import threading
from pathlib import Path

import bagit
import pytest
from sqlalchemy import update

from inspect_app.entry.statement import parse_statement
from inspect_app.evidence.enclosure import ENROLMENTS, ENTRIES, RECEIPTS, SERVER_KEY
from inspect_app.package.named import named
from inspect_app.store.definitions import DefinitionArchive
from inspect_app.store.tables import ReportRow
from tests.package.packages import files_below, folder_of, packed, zipped
from tests.upkeep.filled import PHOTO, SHA, Filled


def faults_of(files: dict[str, bytes]) -> list[str]:
    """What RFC 8493 has against these files of a base directory."""
    found = []
    if files.get("bagit.txt") != b"BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n":  # 2.1.1
        found.append("bagit.txt")
    payload = {name for name in files if name.startswith("data/")}  # 2.1.2
    listed = manifest_of(files["manifest-sha256.txt"])
    if set(listed) != payload:  # 2.1.3: each payload manifest lists every payload file once
        found.append("manifest names")
    tags = manifest_of(files["tagmanifest-sha256.txt"])
    if set(tags) != {name for name in files if name not in payload and name != "tagmanifest-sha256.txt"}:  # 2.2.1
        found.append("tag manifest names")
    found += [name for name, digest in (listed | tags).items()
              if hashlib.sha256(files.get(name, b"")).hexdigest() != digest]  # fmt: skip
    info = dict(line.split(": ", 1) for line in files["bag-info.txt"].decode("utf-8").splitlines())  # 2.2.2
    size = sum(len(files[name]) for name in payload)
    if info["Payload-Oxum"] != f"{size}.{len(payload)}":
        found.append("Payload-Oxum")
    if not re.fullmatch(r"\d{4}-\d\d-\d\d", info["Bagging-Date"]):
        found.append("Bagging-Date")
    return found


def manifest_of(text: bytes) -> dict[str, str]:
    lines = text.decode("utf-8").split("\n")
    assert lines.pop() == ""
    rows = [re.fullmatch(r"([0-9a-f]{64})  (\S+)", line) for line in lines]
    assert all(rows) and len({row[2] for row in rows}) == len(rows)
    return {row[2]: row[1] for row in rows}


@pytest.fixture
def bag(still, tmp_path):
    return folder_of(still.office, still.job, tmp_path / "package")


def test_the_bagit_library_takes_the_package_for_a_valid_bag_of_version_1(bag):
    judged = bagit.Bag(str(bag))
    judged.validate()
    assert judged.version_info == (1, 0)
    assert judged.info["External-Description"].endswith("Job: Boathouse (invented)")
    assert judged.info["External-Description"].startswith("INVENTED")


def test_every_rule_of_the_rfc_holds_and_each_planted_break_is_seen(bag):
    files = files_below(bag)
    assert faults_of(files) == []
    assert faults_of(files | {"data/entries.txt": files["data/entries.txt"] + b"\n"}) == [
        "data/entries.txt", "Payload-Oxum",
    ]  # fmt: skip
    assert "manifest names" in faults_of(files | {"data/more.txt": b""})
    assert "tag manifest names" in faults_of(files | {"more.txt": b""})
    assert "bag-info.txt" in faults_of(files | {"bag-info.txt": files["bag-info.txt"].replace(b"2026", b"2025")})
    (bag / "data" / "keys.json").write_bytes(b"[]")
    assert not bagit.Bag(str(bag)).is_valid()


def test_it_holds_the_entries_receipts_keys_definitions_photos_and_reports_of_the_job(bag, still):
    files = files_below(bag)
    told = json.loads(files["data/package.json"])
    with still.office.app.app_context():
        reading, parts = still.office.parts.reading, still.office.parts
        tokens = [one.token for one in reading.job_entries(still.job)]
        receipts = reading.receipts(still.job)
        pinned = set(parts.records.record(still.job)["job"]["definitions"].values())
        digests = {one for one in pinned if parts.archive.read(one)}
    assert files["data/entries.txt"].decode().split() == tokens
    assert files["data/receipts.txt"].decode().split() == receipts
    assert files[f"data/photos/{SHA}.jpg"] == PHOTO
    assert files["data/reports/1-closeout.pdf"].startswith(b"%PDF")
    assert {f"data/definitions/{one}.json" for one in digests} <= set(files)
    assert (told["job"], told["kind"], told["v"], told["invented"]) == (still.job, "package", 1, True)
    assert told["counts"]["entries"] == len(tokens) and told["counts"]["photos"] == told["counts"]["reports"] == 1
    assert told["head"]["receipt"] == parse_statement(receipts[-1]).digest
    assert told["made"] == "2026-11-27T09:30:15.000+00:00"
    assert told["counts"]["kept_apart"] == 1  # the entry of a key that was ended


def test_the_tokens_stand_as_a_report_of_the_same_moment_encloses_them(still, tmp_path):
    office = still.office
    with office.app.app_context():
        signed = office.app.extensions["reports"].source.gather(still.job, "").signed
    data = folder_of(office, still.job, tmp_path / "package") / "data"
    for name, tokens in ((ENTRIES, signed.entries), (RECEIPTS, signed.receipts), (ENROLMENTS, signed.enrolments)):
        assert (data / name).read_text("ascii").splitlines() == tokens
    assert json.loads((data / SERVER_KEY).read_bytes()) == signed.server_key


def test_a_report_that_is_gone_is_named_and_one_of_a_release_without_digests_is_read(office):
    filled = Filled(office)
    with office.app.app_context():
        with office.parts.transactions.writing() as session:
            session.execute(update(ReportRow).values(sha256=None))
        pdf = office.app.extensions["reports"].shelf.numbered(filled.job, 1).pdf
    files = {one.name: one for one in packed(office, filled.job).bag.members}
    assert files["data/reports/1-closeout.pdf"].sha256 == hashlib.sha256(pdf.read_bytes()).hexdigest()
    pdf.unlink()
    told = packed(office, filled.job).told
    assert (told["missing_reports"], told["counts"]["reports"]) == ([1], 0)


def test_a_checklist_that_the_disk_does_not_give_back_is_named_as_missing(office):
    job, _ = office.job()
    packer = office.app.extensions["packages"]
    pinned = packed(office, job).told

    class Failing(DefinitionArchive):
        def read(self, digest):
            raise OSError(5, "input/output error")

    packer.archive = Failing(packer.archive.folder)
    told = packed(office, job).told
    assert told["counts"]["definitions"] == 0
    assert len(told["missing_definitions"]) == pinned["counts"]["definitions"] + len(pinned["missing_definitions"]) > 0


def test_the_keys_are_told_with_person_device_and_the_time_they_were_good(office, tmp_path):
    filled = Filled(office)
    filled.chief.send(filled.chief.entry("area", filled.job))
    with filled.office.app.app_context():
        filled.office.clock.forward(hours=1)
        filled.office.parts.devices.revoke(filled.foreman.kid, "server")
    bag = folder_of(filled.office, filled.job, tmp_path / "package")
    rows = {row["kid"]: row for row in json.loads((bag / "data" / "keys.json").read_bytes())}
    assert set(rows) == {filled.chief.kid, filled.foreman.kid}  # whoever signed nothing here is not told of
    assert rows[filled.chief.kid]["until"] is None
    assert rows[filled.foreman.kid]["from"] < rows[filled.foreman.kid]["until"]
    assert rows[filled.foreman.kid]["person"]["name"] == "fay (invented)"


def test_the_same_state_and_time_give_the_same_bytes_and_another_time_others(still):
    office, job = still.office, still.job
    first, again = zipped(packed(office, job).bag), zipped(packed(office.again(), job).bag)
    assert first == again
    assert zipped(packed(office, job, office.clock()).bag) != first


def test_a_photo_that_is_gone_or_cut_off_is_named_and_keeps_nothing_else_out(office, tmp_path):
    filled = Filled(office)
    vault = filled.office.parts.vault
    gone = "0f" * 32
    filled.foreman.send(*filled.office.walk(filled.foreman, filled.job, gone))
    vault.path(SHA).chmod(0o600)
    vault.path(SHA).write_bytes(PHOTO[:-1])
    told = packed(filled.office, filled.job).told
    assert (told["missing_photos"], told["damaged_photos"]) == (sorted([gone, SHA]), [SHA])
    bag = folder_of(filled.office, filled.job, tmp_path / "package")
    bagit.Bag(str(bag)).validate()
    assert faults_of(files_below(bag)) == [] and not (bag / "data" / "photos").exists()


@pytest.mark.parametrize("spoiled", ["", "a.b.c", "e30.e30.", "\u00e9.x.y", *(f"eyJraWQiOiJrIn0.{one}" for one in (
    "W10.", "eyJib2R5Ijp7fQ", "e30", "eyJib2R5IjpudWxsfQ", "eyJib2R5IjpbMV19", "NQ"))])  # fmt: skip
def test_an_entry_that_does_not_read_any_more_names_nothing_and_hides_no_other(still, spoiled):
    with still.office.app.app_context():
        sound = [one.token for one in still.office.parts.reading.job_entries(still.job)]
    what = named(sound)
    assert what.photos == [SHA] and still.foreman.kid in what.kids
    spoiled_among = named([sound[0], spoiled, *sound[1:]])
    assert (spoiled_among.photos, spoiled_among.definitions) == (what.photos, what.definitions)


def test_a_job_of_which_nothing_is_known_yet_still_gives_a_bag(office, tmp_path):
    bag = folder_of(office, "0193a5b0-0000-7000-8000-000000000000", tmp_path / "package")
    bagit.Bag(str(bag)).validate()
    assert json.loads((bag / "data" / "package.json").read_bytes())["head"] is None


@pytest.mark.parametrize("name", ["line\nContact-Email: x@y.test", "\u2028Payload-Oxum: 1.1", "\r\nA: b", "‮ﬁ 屋根 \0"])
def test_no_name_of_a_job_begins_a_line_of_its_own(office, tmp_path: Path, name):
    job, chief = office.job()
    text = name.replace("\0", "")
    chief.send(chief.entry("job", job, job, {"name": text}, replaces=[chief.chains[job][1]]))
    bag = folder_of(office, job, tmp_path / "package")
    bagit.Bag(str(bag)).validate()
    assert len((bag / "bag-info.txt").read_bytes().decode().splitlines()) == 4
    assert json.loads((bag / "data" / "package.json").read_bytes())["name"] == text


def test_a_report_that_is_finished_while_the_package_is_made_is_of_a_later_moment_and_not_in_it(any_office):
    filled = Filled(any_office)
    packer = any_office.app.extensions["packages"]
    seen = packer.reading.job_entries

    class Slow(type(packer.reading)):
        """A log in whose reading somebody else finishes another report."""

        def job_entries(self, *asked):
            found = seen(*asked)
            thread = threading.Thread(target=finish)
            thread.start()
            thread.join()
            return found

    def finish():
        with any_office.app.app_context():
            filled.report(any_office.parts)

    packer.reading = Slow(packer.transactions)
    names = [one.name for one in packed(any_office, filled.job).bag.members]
    assert [name for name in names if "/reports/" in name] == ["data/reports/1-closeout.pdf"]
