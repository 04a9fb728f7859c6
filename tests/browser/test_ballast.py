"""Room on the disk that is held beside the database in the browser's own store of responses."""

from typing import Any

import pytest

from tests.browser.office import Office
from tests.browser.phone import Phone
from tests.browser.profile import Profile

CALLS = """const { layBallast } = await import('/static/storage/ballast.js');
  const { giveRoom, tryRoom } = await import('/static/storage/held_room.js');"""
SIZE = """const { usageDetails: { caches } } = await navigator.storage.estimate();
  return Math.round((caches ?? 0) / 2 ** 20)"""


@pytest.fixture
def other(phone: Phone, office: Office) -> Phone:
    return Phone(phone.context, office.url)


def begin(phone: Phone) -> None:
    """Lay the ballast, and wait for nothing."""
    phone.run(CALLS + "window.laid = layBallast()")


def laid(phone: Phone) -> Any:
    return phone.run("return window.laid")


def test_two_windows_that_lay_the_ballast_at_once_lay_it_once(phone: Phone, other: Phone) -> None:
    before = phone.run(SIZE)
    begin(phone)
    begin(other)
    assert [laid(phone), laid(other)] == [True, True]
    assert phone.run(SIZE) - before == 32
    assert phone.rows("ballast") == [], "and not in the database too"
    assert phone.run(CALLS + "return giveRoom()") == "done"
    assert phone.run(SIZE) == before


def test_room_that_the_window_itself_is_just_taking_is_given_back(phone: Phone) -> None:
    before = phone.run(SIZE)
    both = CALLS + "const laid = layBallast(), given = giveRoom(); return [await laid, await given]"
    assert phone.run(both) == [False, "done"]
    assert phone.run(SIZE) == before


def test_what_a_killed_browser_had_taken_is_counted_and_given_back_by_the_next(
    profile: Profile, office: Office
) -> None:
    """A file of the origin's own is not: what it took is counted as 4 GiB once it is cut short."""
    phone = Phone(profile.start(), office.url)
    before = phone.run(SIZE)
    assert phone.run(CALLS + "await layBallast(); return tryRoom(8 * 2 ** 20)") == "done"
    profile.kill()
    phone = Phone(profile.start(), office.url)
    assert phone.run(SIZE) - before == 32
    phone.run(CALLS + "await giveRoom()")
    profile.kill()
    assert Phone(profile.start(), office.url).run(SIZE) == before
