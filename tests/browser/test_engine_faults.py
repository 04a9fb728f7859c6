"""A storage that dies under the app, a full disk: what was saved stands, and nothing says saved too early."""

from tests.browser.eye import SMALLEST, readable
from tests.browser.office import Office
from tests.browser.phone import Phone, entry, keep_picture, picture

AWAY = """() => { window.opens = 0; const open = indexedDB.open;
  IDBFactory.prototype.open = function (...args) { window.opens += 1; return open.apply(this, args) };
  window.there = IDBDatabase.prototype.transaction;
  IDBDatabase.prototype.transaction = () => { throw new DOMException('gone', 'InvalidStateError') } }"""
BACK = "() => { IDBDatabase.prototype.transaction = window.there }"
NOTICE = "[data-name='storage-notice']"
# Pixels of the screen that are left when its last line is scrolled to.
LEFT = """async () => { document.getElementById('app').style.minHeight = '300vh';
  scrollTo(0, document.body.scrollHeight);
  await new Promise(requestAnimationFrame);
  return innerHeight - Math.max(0, document.querySelector('.strip').getBoundingClientRect().bottom) }"""


def test_a_storage_that_stays_away_is_said_and_the_app_recovers(phone: Phone, office) -> None:
    phone.sign_in("ann")
    phone.page.evaluate(AWAY)
    code, opened = phone.run(
        "return [await keepEntry(arg).catch((fault) => fault.code), window.opens]", entry(office.job, "x")
    )
    assert opened <= 4, "a storage that is gone is not asked without end"
    assert code == "outbox.storage_stopped"
    phone.again()
    phone.note(office.job, "x")
    assert phone.run("return counts()")["entries"] == 1


def test_a_draft_that_cannot_be_kept_stays_in_sight_and_is_kept_once_the_storage_is_back(
    phone: Phone, office: Office
) -> None:
    phone.sign_in("ann")
    phone.page.goto(office.url + "/")
    phone.page.locator("[data-name='standing']").wait_for()
    phone.run("await saveDraft('ann', 'area', { name: 'half' })")
    phone.page.evaluate(AWAY)
    code = phone.run("return saveDraft('ann', 'area', { name: 'whole' }).then(() => 'kept', (fault) => fault.code)")
    assert code == "outbox.storage_stopped"
    notice = phone.page.locator(NOTICE)
    notice.wait_for()
    assert "Do not close the app" in notice.inner_text() and notice.locator("[data-name='load-anew']").is_visible()
    assert phone.run("return loadDraft('ann', 'area')") == {"name": "whole"}, "the next screen finds what was typed"
    phone.page.evaluate(BACK)
    notice.wait_for(state="detached")
    phone.again()
    assert phone.run("return loadDraft('ann', 'area')") == {"name": "whole"}


def test_of_two_changes_under_way_the_newer_draft_stands_whichever_is_written_last(phone: Phone) -> None:
    """The first fails once and is written again only after the second."""
    found = phone.run("""const real = IDBDatabase.prototype.transaction; let failed = false;
      IDBDatabase.prototype.transaction = function (stores, ...more) {
        if (!failed && stores[0] === 'drafts') { failed = true; throw new DOMException('gone', 'InvalidStateError') }
        return real.call(this, stores, ...more) };
      await Promise.all([saveDraft('p', 'k', 'older'), saveDraft('p', 'k', 'newer')]);
      return loadDraft('p', 'k')""")
    assert found == "newer"


def test_a_full_disk_refuses_photos_in_words_keeps_text_and_recovers(phone: Phone, office) -> None:
    devtools = phone.context.new_cdp_session(phone.page)
    devtools.send("Storage.overrideQuotaForOrigin", {"origin": office.url, "quotaSize": 14_500_000})
    phone.sign_in("ann")
    saved = [keep_picture(phone, office.job, n, 400_000)["sha256"] for n in range(2)]
    codes = ["kept"]
    while codes[-1] == "kept" and len(codes) < 25:
        photo = picture(10 + len(codes), 900_000)
        codes.append(phone.run(f"return keepPhoto({photo}).then(() => 'kept', (f) => f.code)"))
    assert codes[-1] == "outbox.disk_full", (codes, phone.page.evaluate("navigator.storage.estimate()"))
    for sha256 in saved:
        assert phone.run("return photoBytes(arg).then(({ bytes }) => bytes.length)", sha256) == 400_000
    assert phone.run("return keepEntry(arg).then(() => 'kept', (f) => f.code)", entry(office.job, "t")) in (
        "kept", "outbox.disk_full",
    )  # fmt: skip
    devtools.send("Storage.overrideQuotaForOrigin", {"origin": office.url})
    assert phone.run(f"return keepPhoto({picture(99, 900_000)}).then(() => 'kept', (f) => f.code)") == "kept"
    phone.run("await sendNow()")
    assert all(office.photo(sha256) for sha256 in saved)


def test_a_log_that_cannot_be_turned_over_is_told_with_the_way_out_and_fits_the_smallest_phone(
    phone: Phone, office: Office
) -> None:
    """As in the app: the first try goes unsaid, and the ballast's room with it; each later one is told."""
    phone.sign_in("ann")
    page = phone.page
    page.add_init_script("""const put = IDBObjectStore.prototype.put; window.full = true;
      IDBObjectStore.prototype.put = function (value, key) {
        if (window.full && this.name === 'ballast' && key < 0) throw new DOMException('full', 'QuotaExceededError');
        return put.apply(this, arguments) }""")
    page.goto(office.url + "/")
    notice = page.locator(f"{NOTICE}[data-reason='storage.torn']")
    notice.wait_for()
    assert "Leave the app open until this notice is gone" in notice.inner_text()
    readable(page)
    page.set_viewport_size(SMALLEST)
    left = page.evaluate(LEFT)
    assert left > SMALLEST["height"] / 2, "what waits is sent, and a copy saved, below the notice"
    page.evaluate("() => { window.full = false }")
    notice.wait_for(state="detached")
