"""Work that no signal ever carried: saved as one file, brought in by the office, and named where even that failed."""

import json
import re
import shutil
import subprocess
import tarfile
from pathlib import Path
from typing import Any

from sqlalchemy import select

from inspect_app.store.tables import ManifestRow
from tests.browser.eye import readable
from tests.browser.hand import Hand
from tests.browser.office import Office
from tests.browser.phone import Phone, keep_picture

PHONE = {"viewport": {"width": 390, "height": 844}, "locale": "en-US", "has_touch": True}
SPOIL = """const rows = await withDb(['photo_chunks'], 'readonly', (tx) => tx.store.getAll());
  const row = rows.find((one) => one.photo === arg && one.n === 1); new Uint8Array(row.bytes)[5] ^= 1;
  await withDb(['photo_chunks'], 'readwrite', (tx) => tx.store.put(row))"""
LARGE = 700_000  # two of them are more than one request


def no_signal(request: Any) -> str | None:
    return "502 HTML"


def test_what_a_phone_could_never_send_is_carried_by_hand_and_counts_once(
    chromium: Any, office: Office, tmp_path: Path
) -> None:
    context = chromium.new_context(**PHONE)
    phone = Phone(context, office.url)
    phone.sign_in("ben")
    phone.note(office.job, "Shed")
    phone.sign_in("ann")
    for name in ("Quay", "Lean-to"):
        phone.note(office.job, name)
    good, large, spoiled = (keep_picture(phone, office.job, n, LARGE)["sha256"] for n in range(3))
    phone.run(SPOIL, spoiled)
    tokens = {row["digest"]: row["token"] for row in phone.rows("entries")}
    office.gate.lie = no_signal
    file = saved(context, office, tmp_path)
    opened_by_others(file, tokens, spoiled)
    office.gate.lie = lambda request: None
    brought(chromium, office, file, spoiled)
    assert {entry.token for entry in office.entries()} >= set(tokens.values())
    assert all(len(office.photo(name) or b"") == LARGE for name in (good, large))
    phone.run("await sendNow()")
    assert {row["name"] for row in phone.rows("outbox")} == {spoiled}, "all else has its receipt, and none came twice"
    assert len(office.entries()) == 1 + len(tokens)


def saved(context: Any, office: Office, folder: Path) -> Path:
    """By the screens, as both people's phone makes it."""
    page = context.new_page()
    page.goto(office.url + "/#/unsent")
    hand = Hand(page, office.url)
    hand.sees("li[data-state]")
    hand.tap("copy")
    hand.sees("[data-name='make-copy']:has-text('Entries: 6 · photos: 3')")
    hand.tap("make-copy")
    hand.sees("[data-name='copy-made'][data-entries='6'][data-photos='2'][data-lost='1']")
    with page.expect_download() as waiting:
        hand.tap("download-copy")
    hand.sees("[data-name='copy-made'][data-given='true']")
    name = waiting.value.suggested_filename
    assert name.startswith("seamwalk-copy-") and name.endswith(".tar")
    waiting.value.save_as(folder / name)
    page.close()
    return folder / name


def opened_by_others(file: Path, tokens: dict[str, str], spoiled: str) -> None:
    """The standard library's reader and, where there is one, the system's find in it what the phone signed."""
    with tarfile.open(file) as archive:
        names = archive.getnames()
        held = {name: archive.extractfile(name).read() for name in names}
        assert all(one.isreg() for one in archive.getmembers())
    if shutil.which("tar"):
        listed = subprocess.run(["tar", "-tf", str(file)], capture_output=True, check=True, text=True)
        assert listed.stdout.split() == names and listed.stderr == ""
    assert names[0] == "manifest.json" and [name.split("/")[0] for name in names[1:3]] == ["seals", "seals"]
    assert {name.split("/")[1]: data.decode() for name, data in held.items() if name.startswith("entries/")} == tokens
    told = json.loads(held["manifest.json"])
    assert [one["name"] for one in told["items"] if one.get("damage") == "photo_damaged"] == [spoiled]
    assert len(told["items"]) == 9 and not any(spoiled in name for name in names)


def brought(chromium: Any, office: Office, file: Path, spoiled: str) -> None:
    """By an administrator's screen; the link is lost once between its parts."""
    page = chromium.new_context(**PHONE).new_page()
    hand = Hand(page, office.url)
    hand.sign_in("cato")
    page.goto(f"{office.url}/#/job/{office.job}/bring")
    hand.sees("[data-name='choose-copy']")
    page.set_input_files("[data-name='copy-file']", str(file))
    hand.sees("[data-name='chosen']:has-text('seamwalk-copy-')")
    sent: list[str] = []

    def second_lost(request: Any) -> str | None:
        sent.extend(["part"] if request.path == "/api/copies" else [])
        return "reset" if request.path == "/api/copies" and len(sent) == 2 else None

    office.gate.lie = second_lost
    hand.tap("bring-copy")
    hand.sees(".problem[role='alert']")
    hand.sees("[data-name='brought-part']:has-text('%')")
    hand.tap("bring-copy")
    hand.sees("[data-name='brought'][data-whole='false']")
    hand.sees("[data-name='brought-count'][data-status='accepted'][data-n='8']")
    hand.sees("[data-name='brought-item'][data-status='absent'][data-code='copy_photo_damaged']")
    assert page.locator("[data-name='seal'][data-state='good']").count() == 2
    assert page.locator("[data-name='brought-item']").count() == 1 and spoiled[:12] in page.inner_text("main >> nth=-1")
    readable(page)
    page.goto(f"{office.url}/#/job/{office.job}/trail")
    hand.sees("[data-what='copy_imported']")


def test_a_phone_whose_data_were_erased_learns_what_never_arrived_and_so_does_the_office(
    chromium: Any, office: Office
) -> None:
    context = chromium.new_context(**PHONE)
    phone = Phone(context, office.url)
    phone.sign_in("ann")
    lost = [phone.note(office.job, name)["digest"] for name in ("Quay", "Lean-to")]
    picture = keep_picture(phone, office.job, 1, 3000)["sha256"]
    behind = ("POST /api/entries", "POST /api/photos")
    office.gate.lie = lambda request: "502 HTML" if f"{request.method} {request.path}".startswith(behind) else None
    phone.run("await sendNow()")
    phone.note(office.job, "Porch")  # nobody heard of this one
    office.gate.lie = lambda request: None
    phone.page.goto("about:blank")
    phone.page.context.new_cdp_session(phone.page).send(
        "Storage.clearDataForOrigin", {"origin": office.url, "storageTypes": "all"}
    )
    page = context.new_page()
    hand = Hand(page, office.url)
    hand.sign_in("ann")
    hand.sees("[data-name='missing']:has-text('4 things')")
    hand.tap("missing")
    hand.sees("[data-name='out-items']")
    shown = page.locator("[data-item]").evaluate_all("(all) => all.map((one) => one.dataset.item)")
    assert len(shown) == 4 and {*lost, picture} < set(shown)
    readable(page)
    hand.tap("seen")
    hand.sees("[data-name='job']")
    assert page.locator("[data-name='missing']").count() == 0, "read once, it is in nobody's way"
    at_office(chromium, office, lost)


def at_office(chromium: Any, office: Office, lost: list[str]) -> None:
    """Three days later, as far as it knows when it heard of them."""
    with office.app.app_context(), office.parts.transactions.writing() as session:
        for row in session.scalars(select(ManifestRow)):
            row.items = re.sub('"since":"[0-9]{4}', '"since":"2024', row.items)
    page = chromium.new_context(**PHONE).new_page()
    hand = Hand(page, office.url)
    hand.sign_in("cato")
    hand.sees("[data-name='job'] [data-name='overdue']")
    page.goto(f"{office.url}/#/job/{office.job}/devices")
    hand.sees("[data-name='late']")
    hand.sees("[data-name='replaced']")
    hand.tap("which")
    for digest in lost:
        hand.sees(f"[data-name='which'] [data-item='{digest}']")
    page.evaluate("scrollTo(0, 0)")  # a press under the strip is none that the outside checker would measure
    readable(page)
