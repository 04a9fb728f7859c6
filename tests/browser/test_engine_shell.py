"""The app without a network: installed whole or not at all, proved, replaced only when quiet."""

import hashlib

import pytest

from inspect_app.web.headers import HEADERS
from tests.browser.office import Office
from tests.browser.phone import Phone, entry, keep_picture

REGISTER = """const found = await navigator.serviceWorker.register('/sw.js', { updateViaCache: 'none' });
  const worker = found.installing ?? found.waiting ?? found.active;
  const ends = ['installed', 'activated', 'redundant'];
  await new Promise((done) => { const look = () => ends.includes(worker.state) && done();
    worker.addEventListener('statechange', look); look() });
  await new Promise((done) => setTimeout(done, 100));
  return worker.state"""
PROVE = """const { active } = (await navigator.serviceWorker.getRegistration()) ?? {};
  return askWorker('prove', active ?? null)"""

# Of each store: how many rows, and a digest of all of them.
HASHES = """const told = {};
  for (const name of ['outbox', 'entries', 'chains', 'photos', 'photo_chunks', 'drafts', 'people', 'receipts']) {
    const rows = await withDb([name], 'readonly', (tx) => tx.store.getAll());
    const bytes = await new Blob(rows.flatMap((row) => [JSON.stringify(row), row.bytes ?? ''])).arrayBuffer();
    const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
    told[name] = [rows.length, digest.join()] }
  return told"""


@pytest.fixture
def phone(chromium, own):
    context = chromium.new_context()
    yield Phone(context, own.url)
    context.close()


PACK = "POST /pack"


def cut_after(office: Office, packs: int) -> None:
    """The link breaks once this many packs of the app's files have passed."""
    start = len(office.gate.seen)

    def lie(request) -> str | None:
        return "reset" if office.gate.seen[start:].count(PACK) > packs else None

    office.gate.lie_files = lie


def whole(office: Office) -> int:
    """Packs of a whole app, by its size alone: 128 KiB each, and those that a large file fills."""
    sizes = [one["size"] for one in office.app.test_client().get("/shell.json").json["files"]]
    return sum(sizes) // (128 * 1024) + sum(size > 128 * 1024 for size in sizes) + 1


def heal(office: Office) -> None:
    office.gate.lie_files = lambda request: None


def test_an_install_cut_anywhere_goes_on_and_ends_whole(phone: Phone, own) -> None:
    total = len(own.app.test_client().get("/shell.json").json["files"])
    asked = []
    for packs in (0, 1, 3):
        cut_after(own, packs)
        before = len(own.gate.seen)
        assert phone.run(REGISTER) == "redundant", "not installed, and it says so"
        assert phone.run(PROVE) is None
        asked.append(own.gate.seen[before:].count(PACK))
    heal(own)
    before = len(own.gate.seen)
    assert phone.run(REGISTER) in ("installed", "activating", "activated")
    assert 4 < own.gate.seen[before:].count(PACK) < whole(own) - 3, "what had come already is not fetched again"
    assert whole(own) < 40, "each asking costs a phone far from a mast half a second"
    proof = phone.run(PROVE)
    assert (proof["total"], proof["missing"], proof["page"]) == (total, [], True)


def test_a_whole_app_opens_cold_with_the_server_gone(phone: Phone, own) -> None:
    phone.run(REGISTER)
    own.stop()
    page = phone.context.new_page()
    page.goto(own.url + "/")
    assert page.title().endswith("Seamwalk")
    text = page.evaluate("async () => (await fetch('/rulebook/record/fold.py')).text()")
    assert "def fold(" in text
    rulebook = page.evaluate("async () => (await fetch('/rulebook.json')).json()")
    assert rulebook["record/fold.py"] == text
    guard = page.evaluate("async () => (await fetch('/')).headers.get('Content-Security-Policy')")
    assert guard == HEADERS["Content-Security-Policy"], "the page is guarded without the server too"
    assert page.evaluate("() => fetch('/api/server').then(() => 'answered', () => 'none')") == "none"


@pytest.mark.parametrize("lie", ["502 HTML", "200 HTML"])
def test_what_is_not_the_listed_files_is_never_installed(phone: Phone, own, lie: str) -> None:
    own.gate.lie_files = lambda request: lie if request.path == "/pack" and own.gate.seen.count(PACK) == 4 else None
    assert phone.run(REGISTER) == "redundant"
    assert phone.run("return (await caches.keys())") == ["seamwalk-apps", "seamwalk-parts"], "the rest is kept"


def test_files_the_browser_lost_are_noticed_and_fetched_again(phone: Phone, own) -> None:
    phone.run(REGISTER)
    before = len(own.gate.seen)
    alter = """const apps = await caches.open('seamwalk-apps'); const [name] = await apps.keys();
      const bytes = new Uint8Array(await (await apps.match(name)).arrayBuffer());
      for (const at of arg) bytes[at < 0 ? bytes.length + at : at] ^= 1;
      await apps.put(name, new Response(bytes))"""
    phone.run(alter, [-5, -900_000])
    assert len(phone.run(PROVE)["missing"]) == 2
    asked = [one for pack in own.gate.bodies[-own.gate.seen[before:].count(PACK) :] for one in pack["files"]]
    assert len(asked) == 2 and phone.run(PROVE)["missing"] == []
    phone.run(alter, [0])  # the list itself can no longer be read
    assert phone.run(PROVE)["total"] == 0
    assert phone.run(PROVE)["missing"] == [] and phone.run(PROVE)["page"]


def test_an_update_waits_for_an_open_draft_and_the_old_app_stays_whole(phone: Phone, own) -> None:
    phone.run(REGISTER)
    phone.again()
    phone.run("await startUpdates(); await saveDraft('p', 'k', 1)")
    changed = own.static / "words" / "shell.json"
    changed.write_text(changed.read_text() + "\n")
    update = """await (await navigator.serviceWorker.getRegistration()).update().catch(() => {});
      await new Promise((done) => setTimeout(done, 700));
      return [updateWaiting(), await applyIfQuiet()]"""
    cut_after(own, 0)
    assert phone.run(update) == [False, False]
    assert phone.run(PROVE)["missing"] == []
    heal(own)
    before = len(own.gate.seen)
    whole = """await (await navigator.serviceWorker.getRegistration()).update();
      for (let tries = 0; tries < 300 && !updateWaiting(); tries += 1) {
        await new Promise((done) => setTimeout(done, 100)) }
      return [updateWaiting(), await applyIfQuiet()]"""
    assert phone.run(whole) == [True, False], "whole, and waiting for the draft"
    waits = """await new Promise((done) => setTimeout(done, 500));
      return Boolean((await navigator.serviceWorker.getRegistration()).waiting)"""
    assert phone.run(waits), "and not in the place of the one that answers this page"
    fetched = [line for line in own.gate.seen[before:] if "/static/" in line or "/rulebook/" in line or line == PACK]
    assert fetched == [PACK], "only what changed: one file, in one pack"
    assert own.gate.bodies[-1] == {"files": [hashlib.sha256(changed.read_bytes()).hexdigest()]}
    phone.run("await dropDraft('p', 'k')")
    with phone.page.expect_navigation():
        phone.run("applyIfQuiet()")
    assert phone.run(PROVE)["missing"] == []
    kept = """return Promise.all((await caches.keys())
      .map(async (one) => (await (await caches.open(one)).keys()).length))"""
    assert phone.run(kept) == [1], "the old build is given up"


def test_repair_keeps_every_unsent_thing_to_the_byte_and_asks_for_our_server_first(phone: Phone, own) -> None:
    phone.sign_in("ann")
    own.gate.lie = lambda request: None if request.path == "/api/blank" else "reset"
    for n in range(5):
        keep_picture(phone, own.job, n, 300_000 + n)
    phone.run("for (let n = 0; n < 40; n += 1) { await keepEntry(arg) }", entry(own.job, "one"))
    phone.run("await saveDraft('p', 'k', { note: 'half' })")
    before = phone.run(HASHES)
    assert (before["outbox"][0], before["photo_chunks"][0], before["drafts"][0]) == (50, 10, 1)
    phone.run(REGISTER)
    own.gate.lie_files = lambda request: "200 HTML"  # a portal, in front of everything
    assert phone.run("return repairApp().catch((fault) => fault.code)") == "shell.repair_offline"
    assert phone.run(PROVE)["missing"] == [], "the app is still there without signal"
    heal(own)
    with phone.page.expect_navigation():
        phone.run("repairApp()")
    phone.again()
    assert phone.run(HASHES) == before
    own.gate.lie = lambda request: None
    phone.run("await sendNow()")
    assert phone.run("return counts()")["entries"] == 0 and len(own.entries()) == 46
