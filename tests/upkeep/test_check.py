"""A check of a sound store finds nothing and changes nothing; whatever is damaged is named, with a way out."""

import json
import shutil
from types import SimpleNamespace

import pytest
import sqlalchemy as sa

from inspect_app.command_line import main
from inspect_app.entry.format import parse
from inspect_app.entry.statement import format_statement, parse_statement
from inspect_app.settings import settings_from, shipped
from inspect_app.store.server_key import server_key
from inspect_app.store.tables import (
    DerivedJob,
    DeviceRow,
    EntryRow,
    PersonRow,
    PhotoRow,
    QuarantineRow,
    ReportRow,
    StatementRow,
    TicketRow,
)
from inspect_app.upkeep.files import check_reports, ready_reports
from inspect_app.upkeep.snapshot import snapshot
from inspect_app.words import Words
from tests.office import Office
from tests.upkeep.filled import PHOTO, SHA, Filled, checked, codes

WORDS = Words(shipped("static") / "words")


def tree(folder):
    return {file.relative_to(folder): (file.read_bytes(), file.stat().st_mtime_ns, file.stat().st_mode)
            for file in sorted(folder.rglob("*")) if file.is_file()}  # fmt: skip


def test_a_sound_store_has_no_fault_and_everything_in_it_was_looked_at(any_office):
    Filled(any_office)
    found = checked(any_office)
    assert (found.faults, found.notes) == ([], [])
    assert found.counts == {
        "statements": 22, "entries": 5, "photos": 1, "bytes": len(PHOTO), "reports": 1, "uploads": 1
    }  # fmt: skip


def test_nothing_is_changed_by_a_check_be_a_server_at_work_or_not(office):
    filled = Filled(office)
    before = tree(office.settings.data)
    checked(office)
    after = tree(office.settings.data)
    assert after.keys() == before.keys()
    shared = [name for name in before if not name.name.endswith("-shm")]  # the readers' own marks
    assert [name for name in shared if before[name] != after[name]] == []
    filled.close()
    before = tree(office.settings.data)
    assert not any(name.name.endswith("-wal") for name in before)
    checked(office)
    assert tree(office.settings.data) == before


@pytest.fixture(scope="module")
def sound(tmp_path_factory):
    """The folder of a filled office whose server has ended."""
    folder = tmp_path_factory.mktemp("sound") / "data"
    Filled(Office(folder)).close()
    return folder


@pytest.fixture
def kept(sound, tmp_path):
    """A copy of it, to be damaged."""
    shutil.copytree(sound, tmp_path / "kept")
    return SimpleNamespace(settings=settings_from({"SEAMWALK_DATA": str(tmp_path / "kept")}))


def row_of(office, asked):
    engine = sa.create_engine(office.settings.database_url)
    with engine.connect() as connection:
        row = connection.execute(asked).first()
    engine.dispose()
    return row


def store(office, *statements):
    """Change the database behind the server's back."""
    engine = sa.create_engine(office.settings.database_url)
    with engine.begin() as connection:
        for statement in statements:
            connection.execute(statement)
    engine.dispose()


def lose_statement(office, filled):
    seq = sa.select(sa.func.max(StatementRow.seq)).where(StatementRow.kind == "enrolment").scalar_subquery()
    store(office, sa.delete(StatementRow).where(StatementRow.seq == seq))


def pinned(office):
    """One that the job goes by, and that this release ships no more."""
    token = row_of(office, sa.select(EntryRow.token).where(EntryRow.kind == "job")).token
    return sorted(parse(token).payload["body"]["definitions"].values())[0]


def photo_file(office):
    return office.settings.data / "photos" / SHA[:2] / SHA


def damage(file, change):
    file.chmod(0o600)
    file.write_bytes(change(file.read_bytes()))


def flip(data):
    return data[:100] + bytes([data[100] ^ 1]) + data[101:]


def any_upload(office, ending):
    """A file of the one in progress: a finished one has no bytes here any more."""
    return next((office.settings.data / "uploads").glob("*/*.part")).with_suffix(f".{ending}")


def entry(office):
    return sa.update(EntryRow).where(EntryRow.kind == "station")


def signed_again(office, kind, **changed):
    """The server's own key signs something else: what only its owner could do."""
    asked = sa.select(StatementRow.jws).where(StatementRow.kind == kind).order_by(StatementRow.seq.desc())
    said = parse_statement(row_of(office, asked).jws).payload | changed
    jws = format_statement(said, server_key(office.settings.data / "server.key").private)
    values = {"jws": jws, "digest": parse_statement(jws).digest}
    store(office, sa.update(StatementRow).where(StatementRow.seq == said["seq"]).values(**values))


def kept_apart_too(office, filled):
    row = row_of(office, sa.select(EntryRow.digest, EntryRow.job, EntryRow.kid, EntryRow.token))
    copy = dict(row._mapping)
    store(office, sa.insert(QuarantineRow).values(**copy, reason="key_revoked", received_at="now"))


def swapped(token):
    return token[:-2] + ("AA" if token[-2:] != "AA" else "BA")


def forge(office, filled, row, column, change):
    value = row_of(office, sa.select(getattr(row, column)).order_by(getattr(row, column)))[0]
    store(office, sa.update(row).where(getattr(row, column) == value).values(**{column: change(value)}))


FAULTS = {
    "statement_forged": lambda o, f: forge(o, f, StatementRow, "jws", swapped),
    "statement_misplaced": lambda o, f: store(
        o, sa.update(StatementRow).where(StatementRow.kind == "ticket").values(kind="x")),
    "statements_missing": lose_statement,
    "receipts_broken": lambda o, f: signed_again(o, "receipt", prev="A" * 43),
    "receipt_hides_restoration": lambda o, f: signed_again(o, "receipt", restored="A" * 43),
    "entry_without_receipt": lambda o, f: signed_again(o, "receipt", entry="A" * 43, photo=None),
    "kept_apart_twice": kept_apart_too,
    "entry_forged": lambda o, f: forge(o, f, EntryRow, "token", swapped),
    "entry_columns": lambda o, f: store(o, entry(o).values(kind="walk")),
    "entry_gone": lambda o, f: store(o, sa.delete(EntryRow).where(EntryRow.kind == "station")),
    "photo_without_receipt": lambda o, f: store(o, sa.update(PhotoRow).values(size=7)),
    "photo_row_gone": lambda o, f: store(o, sa.delete(PhotoRow)),
    "photo_gone": lambda o, f: photo_file(o).unlink(),
    "photo_damaged": lambda o, f: damage(photo_file(o), flip),
    "kept_apart_damaged": lambda o, f: forge(o, f, QuarantineRow, "token", lambda text: "x" + text),
    "derived_key": lambda o, f: store(o, sa.update(DeviceRow).values(revoked=None)),
    "derived_ticket": lambda o, f: store(o, sa.delete(TicketRow).where(TicketRow.n == 3)),
    "derived_record": lambda o, f: store(o, sa.update(DerivedJob).values(record="{}")),
    "upload_unreadable": lambda o, f: any_upload(o, "json").write_text("{"),
    "upload_misplaced": lambda o, f: any_upload(o, "json").write_text(
        any_upload(o, "json").read_text().replace("0f0f", "0e0e")),
    "upload_too_long": lambda o, f: any_upload(o, "part").write_bytes(b"x" * 5001),
    "server_key_gone": lambda o, f: (o.settings.data / "server.key").unlink(),
    "secret_open": lambda o, f: (o.settings.data / "server.key").chmod(0o644),
    "report_gone": lambda o, f: next((o.settings.data / "reports").glob("*/*.json")).unlink(),
    "report_damaged": lambda o, f: damage(next((o.settings.data / "reports").glob("*/*.pdf")), lambda pdf: pdf[:-9]),
    "definition_damaged": lambda o, f: damage(next((o.settings.data / "definitions").glob("*.json")), flip),
    "definition_gone": lambda o, f: (o.settings.data / "definitions" / f"{pinned(o)}.json").unlink(),
    "schema_old": lambda o, f: store(o, sa.text("UPDATE alembic_version SET version_num = '0001'")),
    "schema_new": lambda o, f: store(o, sa.text("UPDATE alembic_version SET version_num = '9999'")),
    "row_astray": lambda o, f: store(o, sa.delete(PersonRow).where(PersonRow.login == "gil")),
}  # fmt: skip


@pytest.mark.parametrize("code", FAULTS)
def test_whatever_is_damaged_is_named_and_has_a_way_out(kept, code):
    FAULTS[code](kept, None)
    found = [one for one in checked(kept).faults if one.code == code]
    assert found and found[0].where
    for language in ("en", "es"):
        for key in (f"upkeep.{code}", f"upkeep.{code}.way_out"):
            assert "{" not in WORDS.say(key, language, found[0].facts)


def test_a_damaged_page_of_the_database_is_found(kept):
    file = kept.settings.data / "seamwalk.sqlite3"
    data = bytearray(file.read_bytes())
    for at in range(3 * 4096, len(data) - 4096, 3 * 4096):
        data[at : at + 64] = b"\xff" * 64
    file.write_bytes(data)
    assert "database_damaged" in codes(kept)


@pytest.mark.parametrize("change", [lambda data: data[: len(data) // 2], lambda data: b"junk" * 4096])
def test_a_database_that_does_not_open_at_all_is_a_fault_and_the_files_are_looked_at(kept, change):
    damage(kept.settings.data / "seamwalk.sqlite3", change)
    any_upload(kept, "json").write_text("[" * 100_000)
    assert {"database_damaged", "upload_unreadable"} <= codes(kept)


def test_a_declaration_of_no_length_is_a_fault_and_no_error(kept):
    state = any_upload(kept, "json")
    state.write_text(json.dumps(json.loads(state.read_text()) | {"length": None}))
    assert "upload_unreadable" in codes(kept)


def test_an_entry_that_does_not_read_any_more_hides_nothing_else(kept):
    forge(kept, None, EntryRow, "token", lambda token: token[5:])
    photo_file(kept).unlink()
    assert {"entry_forged", "photo_gone"} <= codes(kept)


def test_bytes_that_nobody_has_a_receipt_for_are_notes_and_no_faults(kept):
    vault = kept.settings.data / "photos"
    (vault / "00").mkdir()
    (vault / "00" / ("00" * 32)).write_bytes(b"never receipted")
    (vault / "00" / "notes.txt").write_bytes(b"a stranger")
    found = checked(kept)
    assert found.faults == []
    assert {one.code for one in found.notes} == {"photo_unclaimed", "vault_stranger"}


def test_the_shell_says_it_in_both_languages_with_exit_codes(kept, monkeypatch, capsys, tmp_path):
    monkeypatch.setenv("SEAMWALK_DATA", str(kept.settings.data))
    assert main(["check"]) == 0
    assert "Whole" in capsys.readouterr().out
    photo_file(kept).unlink()
    assert main(["check", "--lang", "es"]) == 1
    said = capsys.readouterr().out
    assert f"photos/{SHA[:2]}/{SHA}: Falta en la bóveda" in said and "Qué hacer: Copie este mismo archivo" in said
    assert main(["check", "--json"]) == 1
    told = json.loads(capsys.readouterr().out)
    assert [one["code"] for one in told["faults"]] == ["photo_gone"] and told["counts"]["photos"] == 1
    monkeypatch.setenv("SEAMWALK_DATA", str(tmp_path / "none"))
    assert main(["check"]) == 2
    assert "There is no database" in capsys.readouterr().err
    assert not (tmp_path / "none").exists()


def test_not_one_changed_byte_of_a_finished_report_passes(kept):
    file = next((kept.settings.data / "reports").glob("*/*.pdf"))
    sound = file.read_bytes()
    for at in range(0, len(sound), 7):
        damage(file, lambda _, at=at: sound[:at] + bytes([sound[at] ^ 1]) + sound[at + 1 :])
        assert [one.code for one in check_reports(kept.settings.data, shelved(kept))] == ["report_damaged"], at
    damage(file, lambda _: sound)
    assert check_reports(kept.settings.data, shelved(kept)) == []
    store(kept, sa.update(ReportRow).values(sha256=None))  # shelved by a release before
    damage(file, lambda pdf: pdf.replace(b"sha256 ", b"sha257 "))
    assert [one.code for one in check_reports(kept.settings.data, shelved(kept))] == ["report_damaged"]


def shelved(office):
    with snapshot(office.settings.database_url) as moment:
        return ready_reports(moment.session)
