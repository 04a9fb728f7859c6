"""A browser whose disk is really full: what was shown as saved stands, through its end too; with room all goes out."""

import time
from typing import Any

import pytest

from tests.browser.conftest import FLAGS
from tests.browser.kept import SAID, stand, stand_soon, tried
from tests.browser.phone import Phone
from tests.browser.profile import Profile
from tests.small_disk import fill, small_disk

LAY = "async () => (await import('/static/storage/ballast.js')).layBallast()"
PATIENCE = 600  # seconds until the browser has noticed that there is room
COMMITTED = 60  # seconds in which the browser writes down what it knows of a new origin
MIB = 1 << 20


def waits(phone: Phone) -> int:
    """Send; how much is still to go out."""
    return phone.run("await sendNow(); const { entries, photos } = await counts(); return entries + photos")


@pytest.mark.soak
def test_a_really_full_disk_loses_nothing_saved_and_with_room_all_goes_on(
    playwright: Any, chromium_path: str | None, office: Any, tmp_path: Any
) -> None:
    """In a browser that promises lasting storage: any other may take all of an app's away to make room."""
    saved: dict[str, int] = {}
    with small_disk(tmp_path / "disk", 400 * MIB) as disk:
        profile = Profile(playwright, chromium_path, FLAGS, disk / "profile")
        profile.promise_storage(office.url)
        phone = Phone(profile.start(), office.url, "/")
        phone.sign_in("ann")
        assert phone.page.evaluate("navigator.storage.persist()")
        assert tried(phone, office.job, 0, saved) == {"kept"}
        assert phone.page.evaluate(LAY), "the ballast"
        time.sleep(COMMITTED)
        taken = fill(disk / "another program's")
        said = [tried(phone, office.job, number, saved) for number in range(1, 61)]
        assert set().union(*said) == {"kept", "outbox.disk_full"}, "the ballast's room, and then words"
        within = len(saved)
        shown = []
        for number in range(61, 64):
            shown.append(stand(phone, saved))
            profile.kill()
            phone = Phone(profile.start(), office.url, "/")
            assert tried(phone, office.job, number, saved) <= SAID
        (disk / "another program's").unlink()
        since = time.monotonic()
        while tried(phone, office.job, 100 + int(time.monotonic() - since), saved) != {"kept"}:
            assert time.monotonic() < since + PATIENCE, "there is room, and it was not noticed"
            time.sleep(1)
        waited = time.monotonic() - since
        for _ in range(2):
            assert stand_soon(phone, saved, PATIENCE)
            profile.kill()
            phone = Phone(profile.start(), office.url, "/")
        assert stand_soon(phone, saved, PATIENCE)
        while waits(phone):
            assert time.monotonic() < since + PATIENCE, "it does not go out"
        profile.close()
    assert {name for name, size in saved.items() if not size} <= {one.digest for one in office.entries()}
    told = f"disk of 400 MiB filled ({taken // MIB} MiB by another program): {within} things saved while full"
    print(f"{told}, 0 of {len(saved)} lost through 5 kills; read while full: {shown}; went on {waited:.0f} s after")
