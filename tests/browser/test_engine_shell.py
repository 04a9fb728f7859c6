"""The app without a network: installed whole or not at all, proved, replaced only when quiet."""

import pytest

from tests.browser.office import Office
from tests.browser.phone import Phone

REGISTER = """const found = await navigator.serviceWorker.register('/sw.js', { updateViaCache: 'none' });
  const worker = found.installing ?? found.waiting ?? found.active;
  const ends = ['installed', 'activated', 'redundant'];
  await new Promise((done) => { const look = () => ends.includes(worker.state) && done();
    worker.addEventListener('statechange', look); look() });
  await new Promise((done) => setTimeout(done, 100));
  return worker.state"""
PROVE = """const { active } = (await navigator.serviceWorker.getRegistration()) ?? {};
  return askWorker('prove', active ?? null)"""


@pytest.fixture
def phone(chromium, own):
    context = chromium.new_context()
    yield Phone(context, own.url)
    context.close()


def cut_after(office: Office, files: int) -> None:
    """The link breaks once this many of the app's files have passed."""
    start = len(office.gate.seen)

    def lie(request) -> str | None:
        passed = sum("/static/" in line or "/rulebook/" in line for line in office.gate.seen[start:])
        return "reset" if passed > files else None

    office.gate.lie_files = lie


def heal(office: Office) -> None:
    office.gate.lie_files = lambda request: None


def test_an_install_cut_anywhere_goes_on_and_ends_whole(phone: Phone, own) -> None:
    total = len(own.app.test_client().get("/shell.json").json["files"])
    for files in (0, 1, total // 3, total // 2):
        cut_after(own, files)
        assert phone.run(REGISTER) == "redundant", "not installed, and it says so"
        assert phone.run(PROVE) is None
    heal(own)
    before = len(own.gate.seen)
    assert phone.run(REGISTER) in ("installed", "activating", "activated")
    fetched = [line for line in own.gate.seen[before:] if "/static/" in line or "/rulebook/" in line]
    assert len(fetched) < total * 0.6, "what had come already is not fetched again"
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
    assert page.evaluate("() => fetch('/api/server').then(() => 'answered', () => 'none')") == "none"


def test_a_file_that_is_not_the_listed_one_is_never_installed(phone: Phone, own) -> None:
    own.gate.lie_files = lambda request: "502 HTML" if request.path.endswith("/keep.js") else None
    assert phone.run(REGISTER) == "redundant"


def test_files_the_browser_lost_are_noticed_and_fetched_again(phone: Phone, own) -> None:
    phone.run(REGISTER)
    lose = """const members = await caches.open('seamwalk-members'); const keys = await members.keys();
      await members.delete(keys[3]); await members.put(keys[5], new Response('altered'))"""
    phone.run(lose)
    assert len(phone.run(PROVE)["missing"]) == 2
    assert phone.run(PROVE)["missing"] == []


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
    fetched = [line for line in own.gate.seen[before:] if "/static/" in line or "/rulebook/" in line]
    assert fetched == ["GET /static/words/shell.json"], "only what changed"
    phone.run("await dropDraft('p', 'k')")
    with phone.page.expect_navigation():
        phone.run("applyIfQuiet()")
    assert phone.run(PROVE)["missing"] == []
    assert phone.run("return (await caches.keys()).length") == 2


def test_repair_touches_no_work(phone: Phone, own) -> None:
    phone.sign_in("ann")
    phone.note(own.job, "one")
    phone.run(REGISTER)
    with phone.page.expect_navigation():
        phone.run("repairApp()")
    assert phone.run("return counts()")["entries"] == 1
