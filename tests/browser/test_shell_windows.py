"""A window that cannot keep work says so soon, one that waits goes on, and older builds spoil nothing newer."""

from typing import Any

from tests.browser.eye import readable
from tests.browser.hand import Hand
from tests.browser.office import Office
from tests.browser.phone import Phone, entry, keep_picture

TIMED = "const from = performance.now(); const able = await capable(); return [able.reason, performance.now() - from]"
# Another window is in the middle of making the database, and does not come to an end until it is let go.
BUSY = """() => { const asked = indexedDB.open('seamwalk', 1);
  asked.onupgradeneeded = () => { const store = asked.result.createObjectStore('x');
    const on = () => { if (window.letGo) asked.transaction.abort(); else store.count().onsuccess = on }; on() } }"""
REFUSALS = {
    "shell.not_capable.key": """const put = IDBObjectStore.prototype.put;
      IDBObjectStore.prototype.put = function (value, key) {
        if (value instanceof CryptoKey) return this.get('nothing');
        return key === undefined ? put.call(this, value) : put.call(this, value, key) }""",
    "shell.not_capable.storage": """IDBFactory.prototype.open = () => {
      throw new DOMException('private', 'SecurityError') }""",
    "shell.not_capable.slow": "crypto.subtle.sign = () => new Promise(() => {})",
}  # fmt: skip
HOLD = """async () => { window.held = await new Promise((done) => {
  const asked = indexedDB.open('seamwalk'); asked.onsuccess = () => done(asked.result) }) }"""


def of_version(own: Office, version: int) -> None:
    """The app as a build with this version of the database."""
    file = own.static / "storage" / "schema.js"
    was, now = (f"VERSION = {one}" for one in (3 - version, version))
    file.write_text(file.read_text().replace(was, now))
    assert now in file.read_text()


def test_a_window_that_cannot_keep_work_says_why_within_two_seconds(chromium: Any, office: Office) -> None:
    for reason, script in REFUSALS.items():
        context = chromium.new_context()
        phone = Phone(context, office.url)
        phone.page.evaluate(f"() => {{ {script} }}")
        told, took = phone.run(TIMED)
        assert (told, took < 3000) == (reason, True), took
        context.close()


def test_a_storage_that_hangs_is_said_and_the_app_goes_on_once_it_answers(chromium: Any, office: Office) -> None:
    context = chromium.new_context(locale="es-MX")
    busy, page = context.new_page(), context.new_page()
    busy.goto(office.url + "/api/blank")
    busy.evaluate(BUSY)
    hand = Hand(page, office.url)
    page.goto(office.url)
    hand.sees("[data-name='barred'][data-reason='shell.not_capable.slow']:has-text('aún no responde')")
    readable(page)
    busy.evaluate("window.letGo = true")
    hand.sees("#in-login")


def test_an_older_window_that_holds_the_records_is_named_and_the_new_one_goes_on_when_it_closes(
    chromium: Any, own: Office
) -> None:
    context = chromium.new_context(locale="en-US")
    old = Phone(context, own.url)
    old.sign_in("ann")
    old.page.evaluate("() => dispatchEvent(new Event('pagehide'))")  # its own connection goes; this one does not
    old.page.evaluate(HOLD)
    of_version(own, 2)
    page = context.new_page()
    hand = Hand(page, own.url)
    page.goto(own.url)
    hand.sees("[data-reason='shell.not_capable.held'], [data-reason='shell.not_capable.slow']", limit=5000)
    hand.sees("[data-reason='shell.not_capable.held']:has-text('Close all other windows')")
    old.page.close()
    hand.sees("[data-name='job'], [data-name='standing']:has-text('Ann')")


def test_what_a_newer_build_keeps_is_sent_by_an_older_one_which_adds_nothing(chromium: Any, own: Office) -> None:
    context = chromium.new_context(locale="en-US")
    old = Phone(context, own.url)
    old.sign_in("ann")
    old.note(own.job, "before")
    photo = keep_picture(old, own.job, 1, 300_000)
    of_version(own, 2)
    newer = Phone(context, own.url)
    assert newer.run("return counts()")["entries"] == 2, "the newer build has opened it"
    old.run("await saveDraft('p', 'k', 1).then(() => { throw new Error('written') }, () => {})")
    code = old.run("return keepEntry(arg).catch((fault) => fault.code)", entry(own.job, "after"))
    assert code == "storage.newer"
    old.run("await sendNow()")
    left = newer.run("return counts()")
    assert (left["entries"], left["photos"]) == (0, 0), "all is sent"
    assert len(own.entries()) == 3 and len(own.photo(photo["sha256"])) == 300_000
    of_version(own, 1)
    page = context.new_page()
    hand = Hand(page, own.url)
    page.goto(own.url)
    hand.sees("[data-name='newer']:has-text('records nothing new')")
    readable(page)
