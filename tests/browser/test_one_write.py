"""A browser that is killed while it writes: its mark of one write under way is undone at the next start, while two of
them are taken for damage, and the whole store is thrown away."""

import pytest

from tests.browser.kept import stand, tried
from tests.browser.office import Office
from tests.browser.phone import Phone
from tests.browser.profile import Profile

FIRST = """window.endless = withDb(['meta'], 'readwrite', async (tx) => {
    for (let n = 0; ; n += 1) await tx.store.put(`${n}`.repeat(500), ['endless', n % 50]) })"""
SECOND = """window.endless = withDb(['photo_chunks'], 'readwrite', async (tx) => {
    for (let n = 0; ; n += 1) await tx.store.put({ photo: 'endless', n: n % 50, bytes: `${n}`.repeat(500) }) })"""
HALF = "return withDb(['meta'], 'readonly', (tx) => tx.store.count(IDBKeyRange.bound(['endless'], ['endless', []])))"
UNDER_WAY = 500  # ms


@pytest.mark.parametrize("windows", [1, 2])
def test_a_browser_killed_while_two_things_are_written_at_once_keeps_all_that_was_saved(
    profile: Profile, office: Office, windows: int
) -> None:
    saved: dict[str, int] = {}
    phone = Phone(profile.start(), office.url, "/")
    phone.sign_in("ann")
    assert tried(phone, office.job, 1, saved) == {"kept"}
    other = Phone(profile.context, office.url, "/") if windows == 2 else phone
    phone.run(FIRST)
    other.run(SECOND)
    phone.page.wait_for_timeout(UNDER_WAY)
    profile.kill()
    phone = Phone(profile.start(), office.url, "/")
    assert stand(phone, saved)
    assert phone.run(HALF) == 0, "what was not ended is undone"
