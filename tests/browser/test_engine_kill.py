"""Killing the browser at any moment loses nothing that was shown as saved."""

import random
from typing import Any

import pytest

from tests.browser.phone import Phone, entry, picture


def capture(phone: Phone, office, saved: dict[str, Any]) -> None:
    """Start to keep entries and photos without end; what was saved is told outside the browser at once."""
    phone.page.expose_binding("saved", lambda _, name, size: saved.__setitem__(name, size))
    script = """const make = (n) => PICTURE;
      const forEver = async () => { for (let n = Date.now() % 1e6; ; n += 1) {
        const photo = await keepPhoto(make(n));
        await window.saved(photo.sha256, photo.size);
        const kept = await keepEntry(arg);
        await window.saved(kept.digest, 0);
      } };
      forEver().catch(() => {})"""
    phone.run(script.replace("PICTURE", picture("n", "300000 + n % 7")), entry(office.job, "killed"))


def survives(profile, office, kills: int) -> int:
    dice = random.Random(20261125)
    saved: dict[str, Any] = {}
    phone = Phone(profile.start(), office.url)
    phone.sign_in("ann")
    for _ in range(kills):
        capture(phone, office, saved)
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
    phone.run("await sendNow()")
    chain = sorted(one.payload["seq"] for one in office.entries() if one.payload["kind"] == "area")
    assert chain == list(range(len(chain))), "no gap, no fork"
    return len(saved)


def test_a_few_kills_lose_nothing_saved(profile, office) -> None:
    assert survives(profile, office, 3) > 5


@pytest.mark.soak
def test_fifty_kills_lose_nothing_saved(profile, office) -> None:
    assert survives(profile, office, 50) > 100
