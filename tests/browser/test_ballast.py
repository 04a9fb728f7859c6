"""Room on the disk that windows of one phone hold together in a file of the browser's own."""

from typing import Any

import pytest

from tests.browser.office import Office
from tests.browser.phone import Phone

CALLS = """const { layBallast } = await import('/static/storage/ballast.js');
  const { giveRoom } = await import('/static/storage/held_room.js');"""
SIZE = """const folder = await navigator.storage.getDirectory();
  return (await (await folder.getFileHandle('ballast')).getFile()).size"""
MIB = 1 << 20


@pytest.fixture
def other(phone: Phone, office: Office) -> Phone:
    return Phone(phone.context, office.url)


def begin(phone: Phone) -> None:
    """Lay the ballast, and wait for nothing."""
    phone.run(CALLS + "window.laid = layBallast()")


def laid(phone: Phone) -> Any:
    return phone.run("return window.laid")


def test_two_windows_that_lay_the_ballast_at_once_lay_it_once(phone: Phone, other: Phone) -> None:
    begin(phone)
    begin(other)
    assert [laid(phone), laid(other)] == [True, True]
    assert phone.run(SIZE) == 32 * MIB
    assert phone.rows("ballast") == [], "and not in the database too"


def test_room_that_another_window_is_just_taking_is_given_back(phone: Phone, other: Phone) -> None:
    begin(phone)
    assert other.run(CALLS + "return giveRoom()") == "done"
    laid(phone)
    assert other.run(CALLS + "await giveRoom();" + SIZE) == 0


def test_room_that_the_window_itself_is_just_taking_is_given_back(phone: Phone) -> None:
    both = CALLS + "const laid = layBallast(), given = giveRoom(); return [await laid, await given]"
    assert phone.run(both) == [False, "done"]
    assert phone.run(SIZE) == 0
