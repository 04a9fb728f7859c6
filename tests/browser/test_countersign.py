"""A report is countersigned on a screen: by a key file, with another program, until every box is used."""

from pathlib import Path
from typing import Any

from inspect_app.evidence.verify import verify
from inspect_app.report.countersign import look
from inspect_app.web.countersign_desk import countersigned
from inspect_app.web.reports_desk import maker
from tests.browser.eye import readable
from tests.browser.roof import Roof
from tests.browser.test_lots import at, person
from tests.browser.walker import Walker
from tests.evidence.sealed import DIGEST, RECORD, contents_of, key, sealed, signed_again
from tests.report.countersigners import WORD, pkcs12_of

ENGINEER, OWNER, THIRD = (f"{name} (invented)" for name in ("Engineer", "Owner", "Third"))


def test_a_second_person_countersigns_by_a_key_file_and_a_third_with_another_program(
    chromium: Any, roof: Roof, tmp_path: Path
) -> None:
    report = shelved(roof)
    office = person(chromium, roof, tmp_path, "office")
    at(office, roof, "countersign", "1")
    office.sees('[data-name="signature"][data-holds="true"]:has-text("Issuer (invented)")')
    readable(office.page)
    key_file(office, tmp_path, "another word")
    office.named("countersign")
    office.sees('[role="alert"]:has-text("passphrase")')
    assert report.read_bytes() == sealed()
    key_file(office, tmp_path, WORD)
    office.page.fill("#in-words", "Read and agreed")
    office.named("countersign")
    office.sees(f'[data-name="signature"][data-holds="true"]:has-text("{ENGINEER}")')
    assert office.page.input_value("#in-passphrase") == ""
    (tmp_path / "signed.pdf").write_bytes(signed_again(report.read_bytes(), key(OWNER), "Countersignature2"))
    office.page.set_input_files('[data-name="signed-file"]', str(tmp_path / "signed.pdf"))
    office.named("bring-signed")
    office.sees(f'[data-name="signature"][data-holds="true"]:has-text("{OWNER}")')
    with roof.app.app_context():
        countersigned().take(roof.job, 1, last_box(report, tmp_path), "office")
    office.page.reload()
    office.sees('[data-name="no-room"]')
    readable(office.page)
    found = verify(report.read_bytes())
    assert not found.failed and [one.name for one in found.signatures][1:] == [ENGINEER, OWNER, THIRD]
    foreman = person(chromium, roof, tmp_path, "foreman")
    at(foreman, roof, "countersign", "1")
    foreman.sees('[data-name="may-not"]')
    assert office.faults == foreman.faults == []


def shelved(roof: Roof) -> Path:
    """The one-page sealed report as report 1 of the job."""
    with roof.app.app_context():
        countersigned().judge = look  # in this process: the same answers, sooner
        shelf = maker().shelf
        number, made = shelf.begin(roof.job), shelf.work(roof.job) / "made.part"
        made.write_bytes(sealed())
        pdf = shelf.finish(roof.job, number, made, contents_of(RECORD), DIGEST, 1).pdf
    assert number == 1 and pdf is not None
    return pdf


def key_file(office: Walker, folder: Path, passphrase: str) -> None:
    own = folder / f"{passphrase}.p12"  # a file that changes after it was chosen is not read
    own.write_bytes(pkcs12_of(ENGINEER))
    office.page.set_input_files('[data-name="key-file"]', str(own))
    office.page.fill("#in-passphrase", passphrase)


def last_box(report: Path, folder: Path) -> Path:
    (folder / "third.pdf").write_bytes(signed_again(report.read_bytes(), key(THIRD), "Countersignature3"))
    return folder / "third.pdf"
