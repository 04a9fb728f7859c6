"""Several windows of one phone: no gap, no fork, nothing twice; one that is frozen holds up nobody for long."""

import os
import signal
import time
from typing import Any

import pytest

from tests.browser import test_engine_sync
from tests.browser.office import Office
from tests.browser.phone import Phone, entry, keep_picture
from tests.browser.profile import Profile

NO_LOCKS = "Object.defineProperty(navigator, 'locks', { value: undefined })"
# Takes the lock as a round does, and never gives it back: what a frozen page does.
HOLD = """await withDb(['meta'], 'readwrite', (tx) => tx.store.put(Date.now() - arg, ['beat']));
  await new Promise((held) => {
    navigator.locks.request('seamwalk-sync', () => { held(); return new Promise(() => {}) }) })"""
HURRY = "const real = AbortSignal.timeout; AbortSignal.timeout = (ms) => real.call(AbortSignal, ms / 25)"
SYNC = [name for name in vars(test_engine_sync) if name.startswith("test_")]
ALONE = [
    name
    for name in SYNC
    if getattr(test_engine_sync, name).__code__.co_varnames[: getattr(test_engine_sync, name).__code__.co_argcount]
    == ("phone", "office")
]


def areas(office: Office) -> list[dict]:
    return [one.payload for one in office.entries() if one.payload["kind"] == "area"]


def keep_at_once(tabs: list[Phone], office: Office, each: int) -> None:
    """Every tab keeps so many entries, all of them at the same time."""
    for tab in tabs:
        tab.page.evaluate(
            """([each, what]) => { window.done = (async () => {
              const { keepEntry } = await import('/static/outbox/keep.js');
              const ten = () => Promise.all(Array.from({ length: 10 }, () => keepEntry(what)));
              for (let n = 0; n < each; n += 10) await ten() })();
              window.done.catch(() => {}) }""",
            [each, entry(office.job, "tabs")],
        )
    for tab in tabs:
        tab.page.evaluate("async () => { await window.done }")


def one_chain(office: Office, links: int) -> None:
    chain = [one for one in areas(office) if one["kind"] == "area"]
    assert sorted(one["seq"] for one in chain) == list(range(links)), "no gap, none twice"
    assert len({one["prev"] for one in chain}) == links, "no fork"


def test_a_window_that_holds_the_lock_and_sleeps_is_passed_by_and_nobody_calls_it_sent_before(
    phone: Phone, office: Office
) -> None:
    phone.sign_in("ann")
    phone.run("await sendNow()")
    other = Phone(phone.context, office.url)
    phone.note(office.job, "one")
    other.page.evaluate(HURRY)
    phone.run(HOLD, 3000)
    before = other.run("return status()")
    after = other.run("return sendNow()")
    assert not areas(office), "the holder was heard of 3 s ago"
    assert (after["online"], after["last"]) == (before["online"], before["last"]), "nothing was heard of the office"
    other.run("await withDb(['meta'], 'readwrite', (tx) => tx.store.put(Date.now() - 16000, ['beat']))")
    assert other.run("return sendNow()")["entries"] == 0
    assert [one["body"]["name"] for one in areas(office)] == ["one"]


@pytest.mark.soak
def test_a_window_stopped_in_the_middle_is_passed_by_within_twenty_seconds(profile: Profile, office: Office) -> None:
    context = profile.start()
    phone = Phone(context, office.url)
    phone.sign_in("ann")
    waited = []
    for n in range(3):
        holder = Phone(context, office.url)
        pid = profile.process_of(holder.page)
        sleeping = Phone(context, office.url)
        for m in range(5):
            phone.note(office.job, f"n{n} {m}")
        keep_picture(phone, office.job, n, 700_000)
        holder.run(HOLD, 0)
        os.kill(pid, signal.SIGSTOP)
        begun = time.monotonic()
        for tab in (phone, sleeping):
            tab.run("startSync(); sendNow(); return null")
        while phone.run("return counts()")["entries"] + phone.run("return counts()")["photos"]:
            assert time.monotonic() - begun < 60
            phone.page.wait_for_timeout(200)
        waited.append(round(time.monotonic() - begun, 1))
        os.kill(pid, signal.SIGKILL)
    held = [one.digest for one in office.entries()]
    assert len(held) == len(set(held))
    one_chain_of = sorted(one["seq"] for one in areas(office))
    assert len(one_chain_of) == 15
    print(f"three windows, the holder stopped: all sent by another after {waited} s")
    assert max(waited) < 25  # 20 s of the rule, and what the sending itself takes


@pytest.mark.soak
@pytest.mark.parametrize("name", ALONE)
def test_all_of_delivery_works_where_the_browser_has_no_locks(name: str, phone: Phone, office: Office) -> None:
    phone.context.add_init_script(NO_LOCKS)
    phone.again()
    assert phone.page.evaluate("navigator.locks === undefined")
    getattr(test_engine_sync, name)(phone, office)


@pytest.mark.soak
@pytest.mark.parametrize("locks", [True, False])
def test_two_windows_that_keep_five_hundred_each_make_one_chain_of_a_thousand(
    chromium: Any, office: Office, locks: bool
) -> None:
    context = chromium.new_context()
    if not locks:
        context.add_init_script(NO_LOCKS)
    phone = Phone(context, office.url)
    phone.sign_in("ann")
    tabs = [phone, Phone(context, office.url)]
    begun = time.monotonic()
    keep_at_once(tabs, office, 500)
    took = time.monotonic() - begun
    for tab in tabs:
        tab.run("sendNow(); return null")
    while phone.run("return sendNow()")["entries"]:
        pass
    one_chain(office, 1000)
    print(f"1000 entries by two windows at once in {took:.0f} s: one chain, no gap, no fork; locks: {locks}")
