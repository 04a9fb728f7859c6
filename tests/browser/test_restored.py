"""The office's server is set back to an older backup: phones notice, send again what it had confirmed, and say what is
gone."""

from pathlib import Path
from typing import Any

from inspect_app.clock import system_clock
from inspect_app.commands.restore import set_back
from inspect_app.settings import settings_from
from inspect_app.upkeep.backup import back_up
from inspect_app.upkeep.check import check
from tests.browser.office import Office
from tests.browser.phone import Phone, keep_picture

FORGET = """const all = IDBKeyRange.bound([arg], [arg, []])
return withDb(['photo_chunks'], 'readwrite', (tx) => tx.store.delete(all))"""


def settings(folder: Path) -> Any:
    return settings_from({"SEAMWALK_DATA": str(folder)})


def set_back_office(office: Office, tmp_path: Path) -> Office:
    """The same address, served from the backup alone."""
    office.stop()
    made = set_back(settings(tmp_path / "new"), tmp_path / "backup")
    assert made.done, made.faults
    again = Office(tmp_path / "new")
    again.port, again.url = office.port, office.url
    again.start()
    return again


def test_what_it_had_confirmed_since_goes_out_again_and_what_is_gone_is_said(
    chromium: Any, phone: Phone, office: Office, tmp_path: Path
) -> None:
    ben = Phone(chromium.new_context(), office.url)
    phone.sign_in("ann")
    phone.note(office.job, "before")
    kept = keep_picture(phone, office.job, 1, 30_000)
    assert phone.run("return sendNow()")["entries"] == 0
    data = office.parts.settings.data
    back_up(data, office.parts.settings.database_url, tmp_path / "backup", system_clock())

    ben.sign_in("ben")  # his key is newer than the backup
    ben.note(office.job, "of another")
    ben.run("await sendNow()")
    phone.note(office.job, "after")
    again, gone = (keep_picture(phone, office.job, n, 40_000 + n) for n in (2, 3))
    state = phone.run("return sendNow()")
    assert (state["entries"], state["photos"]) == (0, 0)
    before = {row["name"] for row in phone.rows("receipts")}
    phone.run(FORGET, gone["sha256"])  # its bytes made room for others

    office = set_back_office(office, tmp_path)
    try:
        assert office.photo(again["sha256"]) is None and len(office.entries()) == 3
        phone.run("return sendNow()")
        state = phone.run("return sendNow()")
        waiting = {row["name"]: row for row in phone.rows("outbox")}
        assert waiting[gone["sha256"]]["state"] == "damaged"
        assert waiting[gone["sha256"]]["refusal"]["code"] == "photo_given_up"
        theirs = [row for row in waiting.values() if row["what"] == "entry"]
        assert [row["refusal"]["code"] for row in theirs] == ["unknown_key"], "his key is unknown until he is here"
        assert len(waiting) == 2
        assert office.photo(again["sha256"]) and office.photo(kept["sha256"])

        assert ben.run("return sendNow()")["entries"] == 0
        assert phone.run("return sendNow()")["entries"] == 0
        names = sorted(one.payload["body"]["name"] for one in office.entries() if one.payload["kind"] == "area")
        assert names == ["after", "before", "of another"]
        assert before - {row["name"] for row in phone.rows("receipts")} == {gone["sha256"]}
        assert len({row["token"] for row in phone.rows("receipts")}) == len(phone.rows("receipts"))
        phone.again()
        assert phone.run("return sendNow()")["entries"] == 0, "a restoration is heeded once"
        with office.app.app_context():
            assert check(office.parts.settings.data, office.parts.settings.database_url).faults == []
    finally:
        office.stop()
        ben.context.close()
