"""The office at work: a firm takes part, its foreman joins by the code on the screen, a lost phone's work is let in."""

import io
import zipfile
from pathlib import Path, PurePath
from typing import Any

import zxingcpp
from PIL import Image

from tests.browser.eye import readable
from tests.browser.roof import PASSWORD, Roof
from tests.browser.test_journey import PHONE
from tests.browser.test_lots import at, person, settles
from tests.browser.walker import Walker
from tests.phone import Phone

FIRM = "Ridgeline Sheet Metal (invented)"
SEND = "async () => { await (await import('/static/sync/engine.js')).sendNow() }"
DRAFTS = """async () => (await import('/static/storage/database.js'))
  .withDb(['drafts'], 'readonly', (tx) => tx.store.getAll())"""

GIVEN = """async (area) => { const { readMeta, writeMeta } = await import('/static/storage/meta.js')
  const { current } = await import('/static/people/session.js'); const key = ['jobs', (await current()).id]
  await writeMeta(key, (await readMeta(key)).map((job) => ({ ...job, areas: [area] }))) }"""


def test_a_firm_s_foreman_joins_by_the_code_and_the_work_of_a_lost_phone_is_let_in_by_a_named_person(
    chromium: Any, roof: Roof, tmp_path: Path
) -> None:
    office = person(chromium, roof, tmp_path, "office")
    link = invited(office, roof)
    rita = Walker(chromium.new_context(**PHONE).new_page(), roof.url, tmp_path)
    rita.page.goto(link)
    join(rita, roof)
    lost = lost_phone(roof)
    end_its_key(office, roof, lost)
    let_it_in(office, roof, lost)
    the_package(office, roof)
    the_trail(office, roof)
    link_for_a_reviewer(office, roof)
    roof.stop()
    at(office, roof, "people")
    office.sees('[data-name="needs-signal"]')
    readable(office.page)
    roof.start()
    office.named("ask-again")
    office.sees('[data-name="member"]:has-text("Rita")')
    assert office.faults == rita.faults == []


def invited(office: Walker, roof: Roof) -> str:
    """The link of an invitation, read off the screen by another decoder."""
    page = office.page
    assert page.locator('[data-name="start"]').count() == 0, "an administrator's walk would count for nothing"
    assert page.locator('.main[data-name="report"]').count() == page.locator('[data-name="report"]').count() == 1
    at(office, roof, "firm")
    office.sees("#in-firm-name")
    page.fill("#in-firm-name", FIRM)
    office.choose("side", "sub")
    office.choose("sees", "areas")
    office.tap('fieldset[data-name="areas"] button:has-text("Quay")')
    assert settles(lambda: any(one["value"].get("areas") for one in page.evaluate(DRAFTS)))
    page.reload()
    office.sees("#in-firm-name")
    assert page.input_value("#in-firm-name") == FIRM, "what was typed outlives the page"
    readable(page)
    office.named("save-firm")
    office.sees('[data-name="firm"]:has-text("Quay slope")')
    readable(office.page)
    assert page.locator('[data-name="part-seen"]').count() == 0, "an administrator sees all"
    office.named("invite")
    office.choose("role", "foreman")
    readable(office.page)
    office.named("make-invitation")
    office.sees('[data-name="qr"]')
    readable(office.page)
    shown = page.locator('[data-name="qr"]')
    shown.evaluate("(one) => one.scrollIntoView({ block: 'end' })")  # below the strip, which floats over the page
    (read,) = zxingcpp.read_barcodes(Image.open(io.BytesIO(shown.screenshot())))
    assert read.text == page.inner_text('[data-name="link"]')
    office.named("link-given")
    office.sees('[data-name="invitation"][data-state="open"]')
    return str(read.text)


def join(rita: Walker, roof: Roof) -> None:
    page = rita.page
    rita.sees('[data-name="invited"]:has-text("Ferry shed")')
    page.fill("#in-join-login", "foreman")  # taken
    page.fill("#in-join-name", "Rita (invented)")
    page.fill("#in-join-password", PASSWORD)
    readable(rita.page)
    rita.named("join")
    rita.sees('.problem:has-text("login")')
    assert page.input_value("#in-join-name") == "Rita (invented)"
    page.fill("#in-join-login", "rita")
    rita.named("join")
    rita.sees('[data-name="start"]')
    assert page.evaluate("location.hash") == f"#/job/{roof.job}"
    rita.named("fold-office")
    rita.named("people")
    rita.sees('[data-right="invites"][data-may="false"]')
    assert page.locator('[data-name="firm"]').count() == 1, "her own firm alone"
    assert page.locator('[data-name="invite"]').count() == 0
    at(rita, roof, "report")
    rita.sees('[data-name="report-state"][data-state="part"]')
    at(rita, roof, "coverage")
    rita.sees('[data-name="part-seen"]')  # what others recorded is not counted here, and that is said
    readable(page)
    at(rita, roof, "day", "plan")
    rita.sees('[data-name="draw"]')
    assert page.locator('[data-name="area-in-part"]').count() == 0, "she sees all of this one"
    page.evaluate(GIVEN, "another")  # and of this one only what her own firm recorded
    at(rita, roof, "coverage")
    rita.sees('[data-name="part-seen"]')
    at(rita, roof, "day", "plan")
    rita.sees('[data-name="area-in-part"]:has-text("other firms")')
    readable(page)


def lost_phone(roof: Roof) -> Phone:
    with roof.app.app_context():
        owner = roof.parts.accounts.by_login("foreman")
    phone = Phone(roof.app.test_client(), owner)
    assert phone.sign_in(PASSWORD).status_code == 200
    assert phone.enrol(device="Android, cracked").status_code == 201
    assert phone.get_token().status_code == 200
    items = [{"what": "entry", "job": roof.job, "name": "x" * 43, "size": 500}]
    phone.client.post("/api/manifest", headers=phone.bearer, json={"items": items, "oldest": None})
    return phone


def end_its_key(office: Walker, roof: Roof, lost: Phone) -> None:
    at(office, roof, "devices")
    row = '[data-name="device"]:has-text("Android, cracked")'
    office.sees(f'{row} [data-name="unsent"]:has-text("entries 1, photos 0")')
    office.tap(f'{row} [data-name="rename"]')
    office.page.fill(f"#in-name-{lost.kid}", "Tomas, lost at the quay")
    office.named("save-name")
    row = '[data-name="device"]:has-text("lost at the quay")'
    office.tap(f'{row} [data-name="revoke"]')
    office.sees('[data-name="revoke-sure"]')
    readable(office.page)
    office.named("revoke-sure")
    office.sees(f'{row}[data-revoked="true"]')


def let_it_in(office: Walker, roof: Roof, lost: Phone) -> None:
    """Two of the three things that came late; the third stays apart."""
    page = office.page
    late = [lost.entry("walk", roof.job), lost.entry("station", roof.job), lost.entry("area", roof.job)]
    answers = lost.send(*late).json["answers"]
    assert [one["status"] for one in answers] == ["quarantined"] * 3
    at(office, roof, "apart")
    office.sees('[data-name="kept-apart"]')
    assert page.locator('fieldset[data-name="let-in"] [aria-pressed="true"]').count() == 3
    assert page.locator('button[data-name="sign-admission"]').is_disabled(), "not without a reason"
    page.fill(f"#in-reason-{lost.person.id}", "The phone was found; the walk is his (invented)")
    office.choose("let-in", answers[2]["digest"])
    readable(page)
    roof.stop()
    office.named("sign-admission")  # signed on this phone, without signal
    office.sees('[data-name="signed"][data-n="2"]')
    roof.start()
    page.evaluate(SEND)
    office.sees('p.big:has-text("One entry is kept apart")')
    office.sees('[data-name="kept-apart"]')
    assert settles(lambda: {"walk", "station"} <= set(roof.kinds())), "they are in the record's log"
    with roof.app.app_context():
        assert [one.digest for one in roof.parts.quarantine.of(roof.job)] == [answers[2]["digest"]]


def the_package(office: Walker, roof: Roof) -> None:
    """The browser itself fetches and keeps it."""
    at(office, roof, "package")
    office.sees('[data-name="package-size"]:has-text("zip")')
    assert office.page.inner_text('[data-count="kept_apart"] strong') == "1"
    readable(office.page)
    with office.page.expect_download() as download:
        office.named("fetch-package")
    with zipfile.ZipFile(download.value.path()) as archive:
        assert archive.testzip() is None
        assert {PurePath(name).name for name in archive.namelist()} > {"verify.html", "entries.txt", "package.json"}
    office.sees('[data-name="fetch-package"][data-state="done"]')


def the_trail(office: Walker, roof: Roof) -> None:
    at(office, roof, "trail")
    for what in ("firm", "invited", "joined", "revoked", "admitted", "packaged"):
        office.sees(f'[data-name="step"][data-what="{what}"]')
    assert "Tomas" in office.page.inner_text('[data-what="revoked"]')
    readable(office.page)


def link_for_a_reviewer(office: Walker, roof: Roof) -> None:
    at(office, roof, "reviewers")
    office.sees("#in-reviewer-name")
    office.page.fill("#in-reviewer-name", "Harbor claims (invented)")
    office.named("make-link")
    office.sees('[data-name="qr"]')
    link = office.page.inner_text('[data-name="link"]')
    office.named("link-given")
    office.sees('[data-name="reviewer"][data-state="open"]:has-text("never opened")')
    assert "Ferry shed" in roof.app.test_client().get(link.partition(roof.url)[2]).text
    at(office, roof, "people")
    office.sees('[data-name="firm"]')
    at(office, roof, "reviewers")
    office.sees('[data-name="reviewer"]:has-text("opened once")')
    office.named("withdraw-link")
    office.named("withdraw-link-sure")
    office.sees('[data-name="reviewer"][data-state="withdrawn"]')
    readable(office.page)
