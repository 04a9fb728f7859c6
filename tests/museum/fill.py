"""What a piece holds: a phone of two people in the middle of everything, half of it sent. Run once for each release."""

import shutil
from pathlib import Path
from typing import Any

from inspect_app.store.database import db
from tests.browser.office import Office
from tests.browser.phone import Phone, entry

DATABASE = Path(__file__).with_name("database.js")
CHUNK = 256 * 1024
SIZES = {"sent": 5_000, "unsent": CHUNK + 1, "half sent": 3 * CHUNK + 77, "damaged": CHUNK + 40}
PICTURE = """((n, size) => { const bytes = new Uint8Array(size);
  for (let at = 0; at < size; at += 1) bytes[at] = (at >> 9) * 7 + n; bytes[0] = 0xff; bytes[1] = 0xd8;
  return new File([bytes], 'invented.jpg', { type: 'image/jpeg' }) })"""
KEEP = f"""const {{ sha256, size, type }} = await keepPhoto({PICTURE}(...arg.picture));
  await keepEntry({{ job: arg.job, kind: 'photo', subject: sha256, body: {{ role: 'other', sha256, size, type,
    walk: '01a00000-0000-7000-8000-00000000000b', station: null, answer: null, source: 'picked' }} }}); return sha256"""
# The piece holds its keys in the open, as a file can hold no others. They are of invented people.
OPEN_KEYS = """() => { const make = crypto.subtle.generateKey.bind(crypto.subtle);
  crypto.subtle.generateKey = (how, _, uses) => make(how, true, uses) }"""
DAMAGE = """await withDb(['photo_chunks'], 'readwrite', async (tx) => { const row = await tx.store.get([arg, 1]);
  new Uint8Array(row.bytes)[3] ^= 1; await tx.store.put(row) })"""


def fill(phone: Phone, office: Office) -> dict[str, Any]:
    """The phone's database, told by ``database.js``, once it holds what a phone holds."""
    phone.page.evaluate(OPEN_KEYS)
    people = {login: phone.sign_in(login)["id"] for login in ("ben", "ann")}
    phone.run("await setPin('1234')")
    area = phone.note(office.job, "sent")
    names = {"sent": _keep(phone, office, "sent")}
    phone.run("await sendNow()")
    _cut_photos(office)
    for name in ("half sent", "unsent", "damaged"):
        names[name] = _keep(phone, office, name)
    phone.run("await sendNow()")
    _refuse(office)
    phone.note(office.job, "refused")
    phone.run("await sendNow()")
    office.gate.lie = lambda request: "reset"
    phone.run(DAMAGE, names["damaged"])
    phone.run("await keepEntry(arg)", {**entry(office.job, "sent"), "replaces": [area["digest"]]})
    phone.run("await saveDraft(arg, 'item/begun', { note: 'half a', photos: [], waiting: 'camera' })", people["ann"])
    phone.run("await unlock(arg, '')", people["ben"])
    phone.note(office.job, "of somebody who signed out")
    phone.run("await signOut()")
    phone.run("await unlock(arg, '1234')", people["ann"])
    return told(phone)


def told(phone: Phone) -> dict[str, Any]:
    """The phone's database as ``database.js`` tells it."""
    phone.page.evaluate("() => dispatchEvent(new Event('pagehide'))")
    return phone.page.evaluate(f"async () => {{ {plain('dump')} return dump('seamwalk') }}")


def plain(call: str) -> str:
    """The text of ``database.js`` as the body of a function in which ``call`` is known."""
    text = DATABASE.read_text()
    assert f"function {call}(" in text
    return text.replace("export ", "")


def _keep(phone: Phone, office: Office, name: str) -> str:
    number = list(SIZES).index(name)
    return str(phone.run(KEEP, {"job": office.job, "picture": [number, SIZES[name]]}))


def _cut_photos(office: Office) -> None:
    """Entries pass; of each photo only so many pieces that no more than half has arrived."""
    patched: list[str] = []

    def lie(request) -> str | None:
        if request.method == "PATCH":
            patched.append(request.path)
        return "reset" if len(patched) > 4 and request.path.startswith("/api/photos") else None

    office.gate.lie = lie


def _refuse(office: Office) -> None:
    """Entries are refused from now on, in the server's own words."""
    office.gate.lie = lambda request: (
        "422" if request.path == "/api/entries" and request.method == "POST"
        else "reset" if request.path.startswith("/api/photos") else None
    )  # fmt: skip


def copied(office: Office, folder: Path, place: Path) -> Path:
    """The office's folder, at rest: its database in one file."""
    office.stop()
    with office.app.app_context():
        with db.engine.connect() as connection:
            connection.exec_driver_sql("PRAGMA wal_checkpoint(TRUNCATE)")
        db.engine.dispose()
    return Path(shutil.copytree(folder, place))
