"""A database that the browser throws away as damaged: what was only on the phone comes back from its second copy."""

import time
from pathlib import Path

from tests.browser.kept import PHOTO
from tests.browser.office import Office
from tests.browser.phone import Phone, entry, keep_picture
from tests.browser.profile import Profile

BACK = "return (await import('/static/shell/put_back.js')).putBack()"
BALLAST = "return (await import('/static/storage/ballast.js')).layBallast()"
HELD = """const { copies } = await import('/static/spare/copies.js');
  return (await copies()).map(({ what }) => what).sort()"""
FULL = """const put = IDBObjectStore.prototype.put;
IDBObjectStore.prototype.put = function (value, ...key) {
  const full = this.name === 'photo_chunks' && value.photo !== 'probe';
  if (full) throw new DOMException('made to fail', 'QuotaExceededError');
  return put.call(this, value, ...key) }"""
NONE = """() => {
  CacheStorage.prototype.open = async () => { throw new DOMException('made to fail', 'SecurityError') } }"""
SLOW = """const read = Response.prototype.arrayBuffer;
Response.prototype.arrayBuffer = async function () {
  if (this.headers.get('X-Head')) await new Promise((resolve) => { setTimeout(resolve, 2500) })
  return read.call(this) }"""
GONE = """return new Promise((resolve, reject) => { const gone = indexedDB.deleteDatabase('seamwalk');
  gone.onsuccess = resolve; gone.onerror = reject }).then(() => 0)"""
CLEAR = "return (await import('/static/shell/second_copy.js')).clearSent()"
COPY = "return (await import('/static/shell/second_copy.js')).copyWaiting()"


def damage(profile: Profile) -> None:
    """A record of the log whose length was written and whose bytes were not, as a power cut leaves one where a file's
    size goes to the disk before what is in it."""
    log = max(profile.folder.glob("Default/IndexedDB/*.leveldb/*.log"))
    at = log.stat().st_size
    left = 32_768 - at % 32_768
    assert left > 100, "the record fits into its block"
    with Path(log).open("ab") as file:
        file.write(b"\1\2\3\4" + (80).to_bytes(2, "little") + b"\1" + bytes(80))


def rot(profile: Profile, what: bytes) -> None:
    """One bit of the second copy, somewhere in this."""
    held = profile.folder / "Default" / "Service Worker" / "CacheStorage"
    for place in (place for place in held.rglob("*") if place.is_file()):
        data = bytearray(place.read_bytes())
        at = data.find(what)
        if at >= 0:
            data[at] ^= 1
            place.write_bytes(data)
            return
    raise AssertionError("it is in no file")


def held(phone: Phone, wanted: list[str], seconds: int = 30) -> None:
    """Once the page has come to rest: what is saved does not wait for its second copy for long."""
    end = time.monotonic() + seconds
    while (found := phone.run(HELD)) != wanted:
        assert time.monotonic() < end, found
        time.sleep(0.3)


def again(profile: Profile, office: Office) -> Phone:
    """Photos are kept twice in a browser that promised lasting storage, while its ballast is whole."""
    if not (profile.folder / "Default").exists():
        profile.promise_storage(office.url)
    phone = Phone(profile.start(), office.url, "/")
    phone.run(BALLAST)
    return phone


def test_what_the_browser_throws_away_with_its_database_comes_back_and_goes_out(
    profile: Profile, office: Office
) -> None:
    phone = again(profile, office)
    phone.sign_in("ann")
    sent = phone.note(office.job, "sent before")["digest"]
    phone.run("return sendNow()")
    photo = keep_picture(phone, office.job, 1, PHOTO)["sha256"]
    unsent = phone.note(office.job, "unsent")["digest"]
    profile.kill()
    damage(profile)
    phone = again(profile, office)
    told = phone.page.locator("[data-name=put-back]").get_by_text("Records: 3. Photos: 1.")
    assert told.wait_for() is None, "what had gone out since the page began comes too, and does no harm"
    assert phone.rows("people") == phone.rows("receipts") == [], "the browser has thrown its database away"
    once = phone.run(BACK)
    assert (once["entries"], once["photos"], once["whole"]) == (0, 0, True)
    profile.kill()
    phone = again(profile, office)
    phone.sign_in("ann")
    assert phone.run("return sendNow()")["entries"] == 0
    there = {one.digest for one in office.entries()}
    assert {sent, unsent} <= there and len(office.entries()) == len(there)
    assert len(office.photo(photo)) == PHOTO
    phone.run(CLEAR)
    assert phone.run(HELD) == [], "what the office has is kept twice no more"
    phone.page.locator("[data-name=put-back-seen]").click()
    phone.page.locator("[data-name=put-back]").wait_for(state="detached")


def test_what_finds_no_room_to_come_back_comes_at_the_next_start_and_what_rotted_hides_nothing(
    profile: Profile, office: Office
) -> None:
    phone = again(profile, office)
    phone.sign_in("ann")
    phone.note(office.job, "first")
    phone.context.set_offline(True)
    rotten = phone.note(office.job, "rotten")["digest"]
    token = next(row["token"] for row in phone.rows("entries") if row["digest"] == rotten)
    photo = keep_picture(phone, office.job, 1, PHOTO)["sha256"]
    profile.kill()
    damage(profile)
    rot(profile, token.encode())
    profile.start().add_init_script(FULL)
    phone = Phone(profile.context, office.url, "/")
    phone.page.get_by_text("Records: 2. Photos: 0. Photos that did not come back: 1.").wait_for()
    profile.kill()
    phone = again(profile, office)
    phone.page.get_by_text("Records: 2. Photos: 1.").wait_for()
    phone.sign_in("ann")
    phone.run("return sendNow()")
    assert len(office.photo(photo)) == PHOTO
    assert rotten not in {one.digest for one in office.entries()}


def test_what_is_still_coming_back_is_not_taken_for_sent(profile: Profile, office: Office) -> None:
    phone = again(profile, office)
    phone.sign_in("ann")
    for number in range(4):
        keep_picture(phone, office.job, number, PHOTO)
    profile.kill()
    damage(profile)
    profile.start().add_init_script(SLOW)
    phone = Phone(profile.context, office.url, "/")
    phone.run(CLEAR)
    phone.page.get_by_text("Records: 4. Photos: 4.").wait_for()


def test_windows_whose_database_goes_while_they_live_put_back_at_once_and_ask_who_it_is(
    profile: Profile, office: Office
) -> None:
    phone = again(profile, office)
    phone.sign_in("ann")
    other = Phone(profile.context, office.url, "/")
    phone.context.set_offline(True)
    unsent = phone.note(office.job, "unsent")["digest"]
    held(phone, ["entry"])
    phone.run(GONE)
    phone.run(CLEAR)
    for one in (phone, other):
        one.page.get_by_text("Records: 1. Photos: 0.").wait_for()
        one.page.locator("[data-name=sign-in]").wait_for()
    assert len(phone.rows("outbox")) == 1
    phone.run(CLEAR)
    profile.kill()
    damage(profile)
    phone = again(profile, office)
    phone.page.get_by_text("Records: 1. Photos: 0.").wait_for()
    phone.sign_in("ann")
    phone.run("return sendNow()")
    assert [one.digest for one in office.entries()].count(unsent) == 1


def test_what_an_older_build_kept_once_is_copied_at_the_next_start(profile: Profile, office: Office) -> None:
    phone = again(profile, office)
    phone.sign_in("ann")
    phone.context.set_offline(True)
    phone.page.evaluate(NONE)
    keep_picture(phone, office.job, 2, PHOTO)
    profile.kill()
    profile.start().route("**/api/**", lambda route: route.abort())
    phone = Phone(profile.context, office.url, "/")
    phone.run(COPY)
    assert phone.run(HELD) == ["entry", "photo"]
    profile.kill()
    damage(profile)
    phone = again(profile, office)
    phone.page.get_by_text("Records: 1. Photos: 1.").wait_for()


def test_a_second_copy_stands_in_nobody_s_way(phone: Phone, office: Office) -> None:
    phone.sign_in("ann")
    phone.page.evaluate(NONE)
    keep_picture(phone, office.job, 2, 1000)
    assert phone.run("return keepEntry(arg).then((kept) => kept.digest.length)", entry(office.job, "one")) == 43
