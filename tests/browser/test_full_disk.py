"""A browser whose disk is really full: what was shown as saved stands, through its end too; with room all goes out."""

import time
from typing import Any

import pytest

from tests.browser.conftest import FLAGS
from tests.browser.kept import PHOTO, stand, tried
from tests.browser.phone import Phone, keep_picture
from tests.browser.profile import Profile
from tests.small_disk import fill, small_disk

SAID = {"kept", "outbox.disk_full", "outbox.storage_stopped"}
PATIENCE = 600  # seconds until the browser has noticed that there is room


@pytest.mark.soak
def test_a_really_full_disk_loses_nothing_saved_and_with_room_all_goes_on(
    playwright: Any, chromium_path: str | None, office: Any, tmp_path: Any
) -> None:
    saved: dict[str, int] = {}
    with small_disk(tmp_path / "disk", 400 << 20) as disk:
        profile = Profile(playwright, chromium_path, FLAGS, disk / "profile")
        phone = Phone(profile.start(), office.url)
        phone.sign_in("ann")
        saved[keep_picture(phone, office.job, 1, PHOTO)["sha256"]] = PHOTO
        said: set[str] = tried(phone, office.job, 2, saved)
        assert said == {"kept"}
        taken = fill(disk / "another program's")
        number = 3
        while "outbox.disk_full" not in said:
            said |= tried(phone, office.job, number, saved)
            number += 1
            assert said <= SAID and number < 200
        shown = stand(phone, saved)
        profile.kill()
        phone = Phone(profile.start(), office.url)
        again = stand(phone, saved)
        (disk / "another program's").unlink()
        since = time.monotonic()
        while tried(phone, office.job, number, saved) != {"kept"}:
            number += 1
            assert time.monotonic() < since + PATIENCE, "there is room, and it was not noticed"
            time.sleep(1)
        waited = time.monotonic() - since
        assert stand(phone, saved)
        while phone.run("return sendNow()")["entries"]:
            pass
        phone.run("await sendNow()")
        profile.close()
    assert all(len(office.photo(name) or b"") == size for name, size in saved.items() if size)
    held = {one.digest for one in office.entries()}
    assert {name for name, size in saved.items() if not size} <= held
    print(f"disk of 400 MiB filled ({taken >> 20} MiB by another program): {len(saved)} saved, 0 lost; readable while "
          f"full: {shown}, by the next browser: {again}; with room it went on after {waited:.0f} s")  # fmt: skip
