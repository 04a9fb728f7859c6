"""A store whose log ends in the middle of a record, as a dead battery leaves it: nothing that was saved is lost."""

import time
from pathlib import Path

import pytest

from tests.browser.kept import stand, tried
from tests.browser.office import Office
from tests.browser.phone import Phone
from tests.browser.profile import Profile
from tests.seed import chance

DRAFT = """const text = Array.from(crypto.getRandomValues(new Uint8Array(9000)), (n) => n.toString(16)).join('');
  await saveDraft('ann', 'area', { name: text })"""
PATIENCE = 30  # seconds


def log_of(profile: Profile) -> Path:
    """The one that is written at; the one before may be there still, while it is put into tables."""
    return max(profile.folder.glob("Default/IndexedDB/*.leveldb/*.log"))


def tear(log: Path, count: int) -> None:
    """The last so many bytes were never written."""
    data = log.read_bytes()
    assert len(data) > 2 * count
    log.write_bytes(data[:-count])


def opened(profile: Profile, office: Office) -> Phone:
    """The app in a new browser. It has put the log of the last one away."""
    before = log_of(profile)
    phone = Phone(profile.start(), office.url, "/")
    end = time.monotonic() + PATIENCE
    while before.exists():
        assert time.monotonic() < end, "it goes on writing at a torn end"
        phone.page.wait_for_timeout(20)
    return phone


def survives(profile: Profile, office: Office, counts: list[int]) -> int:
    """Tear so many bytes off a draft in the log, one after the other; after each comes new work, and two starts.
    Returns how much was saved."""
    saved: dict[str, int] = {}
    phone = Phone(profile.start(), office.url, "/")
    phone.sign_in("ann")
    for number, count in enumerate(counts):
        tried(phone, office.job, 2 * number, saved)
        phone.run(DRAFT)
        profile.kill()
        tear(log_of(profile), count)
        phone = opened(profile, office)
        assert stand(phone, saved), f"{count} bytes"
        assert tried(phone, office.job, 2 * number + 1, saved) == {"kept"}
        profile.kill()
        phone = opened(profile, office)
        assert stand(phone, saved), f"{count} bytes"
    while phone.run("return sendNow()")["entries"]:
        pass
    assert {name for name, size in saved.items() if not size} <= {one.digest for one in office.entries()}
    return len(saved)


def test_what_a_dead_battery_leaves_of_the_last_write_takes_nothing_else_with_it(
    profile: Profile, office: Office
) -> None:
    assert survives(profile, office, [3]) == 4


@pytest.mark.soak
def test_of_many_torn_ends_none_takes_anything_with_it(profile: Profile, office: Office) -> None:
    dice = chance("torn")
    counts = [1, *(dice.randrange(2, 9000) for _ in range(24))]
    count = survives(profile, office, counts)
    (log,) = profile.folder.glob("Default/IndexedDB/*.leveldb")
    size = sum(file.stat().st_size for file in log.iterdir())
    print(f"{len(counts)} logs torn: {count} saved, 0 lost; {size >> 20} MiB of log and tables at the end")
