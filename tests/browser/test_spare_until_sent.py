"""The second copy of a thing stays until the office has confirmed it, whatever the database says or no longer says."""

from tests.browser.kept import PHOTO
from tests.browser.office import Office
from tests.browser.phone import Phone, keep_picture
from tests.browser.profile import Profile
from tests.browser.test_spare import CLEAR, COPY, HELD, again, damage, held

MISSING = "return (await import('/static/sync/missing.js')).missingOf(arg)"


def without_photos(phone: Phone) -> None:
    phone.context.route("**/api/photos**", lambda route: route.abort())


def test_a_photo_whose_entry_has_gone_out_before_it_comes_back_with_it(profile: Profile, office: Office) -> None:
    phone = again(profile, office)
    without_photos(phone)
    phone.sign_in("ann")
    photo = keep_picture(phone, office.job, 1, PHOTO)["sha256"]
    phone.run("return sendNow()")
    assert [row["what"] for row in phone.rows("outbox")] == ["photo"], "its entry is at the office"
    phone.run(CLEAR)
    assert phone.run(HELD) == ["entry", "photo"]
    profile.kill()
    damage(profile)
    phone = again(profile, office)
    phone.page.get_by_text("Records: 1. Photos: 1.").wait_for()
    without_photos(phone)
    ann = phone.sign_in("ann")["id"]
    phone.run("return sendNow()")
    told = phone.run("return (await import('/static/storage/meta.js')).readMeta(['missing', arg])", ann)
    assert [item["what"] for one in told["phones"] for item in one["unsent"]["items"]] == ["photo"]
    assert phone.run(MISSING, ann)["phones"] == [], "what waits here is not missing"
    phone.context.unroute_all()
    phone.run("return sendNow()")
    assert len(office.photo(photo)) == PHOTO
    assert phone.run(MISSING, ann)["phones"] == []
    phone.run(CLEAR)
    assert phone.run(HELD) == []


def test_what_an_older_build_sent_ahead_of_its_photo_gets_a_copy_again(profile: Profile, office: Office) -> None:
    phone = again(profile, office)
    without_photos(phone)
    phone.sign_in("ann")
    keep_picture(phone, office.job, 1, PHOTO)
    phone.run("return sendNow()")
    phone.run("return caches.delete('seamwalk-spare')")
    phone.run(COPY)
    assert phone.run(HELD) == ["entry", "photo"]


def test_what_is_lost_a_second_time_before_its_author_is_back_comes_back_again(
    profile: Profile, office: Office
) -> None:
    phone = again(profile, office)
    phone.sign_in("ann")
    phone.context.set_offline(True)
    keep_picture(phone, office.job, 1, PHOTO)
    for _ in range(2):
        profile.kill()
        damage(profile)
        phone = again(profile, office)
        phone.page.get_by_text("Records: 1. Photos: 1.").wait_for()
        held(phone, ["entry", "photo"])


def test_what_the_database_lost_of_its_end_comes_back_and_its_chain_goes_on(profile: Profile, office: Office) -> None:
    phone = again(profile, office)
    phone.sign_in("ann")
    phone.context.set_offline(True)
    phone.note(office.job, "first")
    log = max(profile.folder.glob("Default/IndexedDB/*.leveldb/*.log"))
    size = log.stat().st_size
    last = phone.note(office.job, "last")["digest"]
    profile.kill()
    assert log.stat().st_size > size
    with log.open("r+b") as file:  # as of a phone that says of its writes that they are on the disk
        file.truncate(size)
    profile.start()
    phone = Phone(profile.context, office.url, "/")
    phone.page.get_by_text("Records: 1. Photos: 0.").wait_for()
    assert len(phone.rows("people")) == 1, "the same database"
    assert last in {row["digest"] for row in phone.rows("entries")}
    phone.note(office.job, "after")
    phone.run("return sendNow()")
    areas = [one.payload for one in office.entries() if one.payload["kind"] == "area"]
    assert [(one["seq"], one["body"]["name"]) for one in areas] == [(0, "first"), (1, "last"), (2, "after")]
