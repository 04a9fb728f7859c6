"""Killing the browser at any moment loses nothing that was shown as saved."""

from typing import Any

import pytest

from tests.browser.phone import Phone, entry, picture
from tests.seed import chance


def capture(phone: Phone, office, saved: dict[str, Any], sends: bool) -> None:
    """Start to keep entries and photos without end, and to send them too if it ``sends``; what was saved is told
    outside the browser at once."""
    phone.page.expose_binding("saved", lambda _, name, size: saved.__setitem__(name, size))
    script = """const make = (n) => PICTURE;
      const forEver = async () => { for (let n = Date.now() % 1e6; ; n += 1) {
        const photo = await keepPhoto(make(n));
        await window.saved(photo.sha256, photo.size);
        const kept = await keepEntry(arg);
        await window.saved(kept.digest, 0);
        if (SENDS) sendNow();
      } };
      forEver().catch(() => {})"""
    phone.run(
        script.replace("PICTURE", picture("n", "300000 + n % 7")).replace("SENDS", str(sends).lower()),
        entry(office.job, "killed"),
    )


def survives(profile, office, kills: int, sends: bool = False) -> int:
    dice = chance(f"kills {sends}")
    saved: dict[str, Any] = {}
    phone = Phone(profile.start(), office.url)
    phone.sign_in("ann")
    for _ in range(kills):
        capture(phone, office, saved, sends)
        phone.page.wait_for_timeout(dice.uniform(30, 700))
        profile.kill()
        phone = Phone(profile.start(), office.url)
        entries = {row["digest"] for row in phone.rows("entries")}
        lost = {name for name, size in saved.items() if size == 0} - entries
        assert not lost, f"{len(lost)} saved entries are gone"
    for name, size in saved.items():
        if size:
            back = phone.run("return (await photoBytes(arg)).bytes.length", name)
            assert back == size
    while phone.run("return sendNow()")["entries"]:
        pass
    held = [one for one in office.entries() if one.payload["kind"] == "area"]
    assert len({one.digest for one in held}) == len(held), "nothing twice"
    assert {name for name, size in saved.items() if size == 0} <= {one.digest for one in held}
    chain = sorted(one.payload["seq"] for one in held)
    assert chain == list(range(len(chain))), "no gap, no fork"
    recovered = len(chain) - sum(size == 0 for size in saved.values())
    print(f"{kills} kills{' while sending' if sends else ''}: {len(saved)} saved, 0 lost, {recovered} recovered "
          "that were kept before they could be shown as saved")  # fmt: skip
    return len(saved)


def test_a_few_kills_lose_nothing_saved(profile, office) -> None:
    assert survives(profile, office, 3) > 5


@pytest.mark.soak
@pytest.mark.parametrize("sends", [False, True])
def test_a_hundred_kills_lose_nothing_saved(profile, office, sends: bool) -> None:
    assert survives(profile, office, 100, sends) > 100
