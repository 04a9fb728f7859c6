"""An install or an update cut after every kilobyte: whole and proved, or said to be not there; the old one opens."""

import contextlib
import os
import random
from collections.abc import Iterator
from typing import Any

import pytest

from tests.browser.byte_cut import ByteCut
from tests.browser.office import Office
from tests.browser.test_engine_shell import REGISTER

KILOBYTE, SHARES = 1024, 8
DONE = ("installed", "activating", "activated")
BUILD = "async () => (await (await fetch('/shell.json')).json()).build"
ASK = """const ask = (worker) => worker ? new Promise((done) => { const { port1, port2 } = new MessageChannel();
  port1.onmessage = ({ data }) => done(data); worker.postMessage({ ask: 'prove' }, [port2]) }) : null;"""
INSTALL = f"async () => {{ try {{ {REGISTER} }} catch (fault) {{ return 'none' }} }}"
READY = f"""async () => {{ {ASK} const found = await navigator.serviceWorker.getRegistration();
  const told = await ask(found?.active ?? found?.waiting);
  return Boolean(told && told.total && !told.missing.length && told.page) }}"""
UPDATE = """async () => { const found = await navigator.serviceWorker.getRegistration();
  try { await found.update() } catch { return 'none' }
  const worker = found.installing ?? found.waiting; if (!worker) return 'none';
  const ends = ['installed', 'activated', 'redundant'];
  await new Promise((done) => { const look = () => ends.includes(worker.state) && done();
    worker.addEventListener('statechange', look); look() });
  return worker.state }"""


@pytest.fixture
def link(own: Office) -> ByteCut:
    cut = ByteCut(own.gate.app)
    own.gate.app = cut
    return cut


@contextlib.contextmanager
def empty(chromium: Any, own: Office) -> Iterator[Any]:
    """A page of a browser that has nothing of ours yet."""
    context = chromium.new_context()
    page = context.new_page()
    page.goto(own.url + "/api/blank")
    yield page
    context.close()


def points(whole: int, stride: int, share: int = 0, shares: int = 1) -> list[int]:
    """One in each stride of the bytes, from a seeded start; of these every so many-th."""
    dice = random.Random(int(os.environ.get("SEED") or 20261125))
    return list(range(dice.randrange(min(stride, whole)), whole, stride))[share::shares]


def installs(chromium: Any, own: Office, link: ByteCut, *places: int) -> str:
    """First installs over links of so many bytes: whole and proved, or not there and said to be so."""
    link.after(None)
    with empty(chromium, own) as page:
        assert page.evaluate(INSTALL) in DONE
    whole = link.passed
    tried = [*points(whole, *places), whole]
    for count in tried:
        link.after(count)
        with empty(chromium, own) as page:
            state, ready = page.evaluate(INSTALL), page.evaluate(READY)
        assert (ready, state in DONE) == (count == whole, count == whole), (count, state, ready)
    return f"{len(tried)} of {whole} bytes"


def updates(page: Any, other: Any, own: Office, link: ByteCut, *places: int) -> str:
    """Updates over links of so many bytes: the build before stays whole and answers with the server gone."""
    page.reload()  # from now on the worker answers it
    was = page.evaluate(BUILD)
    for file in [*(own.static / "words").glob("*.json"), *(own.static / "walk").glob("*.js")]:
        file.write_text(file.read_text() + "\n")
    link.after(None)
    assert other.evaluate(UPDATE) == "installed"
    system = page.context.new_cdp_session(page)
    system.send("ServiceWorker.enable")
    whole = link.passed
    tried = points(whole, *places)
    for count in tried:
        page.evaluate("async () => { await caches.delete('seamwalk-parts') }")  # or each would bring the next further
        link.after(count)
        assert page.evaluate(UPDATE) in ("none", "redundant"), count
        own.gate.open = False
        system.send("ServiceWorker.stopAllWorkers")  # what it knows by heart is gone with it: the disk must have it all
        assert page.evaluate(READY) and page.evaluate(BUILD) == was, count
        assert "Seamwalk" in page.evaluate("async () => (await fetch('/')).text()"), count
        own.gate.open = True
    own.stop()
    page.goto(own.url + "/#/")  # what no test before it opened: the whole app, with nothing behind it
    page.wait_for_selector("#in-login")
    return f"{len(tried)} of {whole} bytes"


def cut(chromium: Any, own: Office, link: ByteCut, stride: int, *share: int) -> None:
    told = f"installs cut at {installs(chromium, own, link, stride, *share)}"
    link.after(None)
    with empty(chromium, own) as page, empty(chromium, own) as other:
        assert page.evaluate(INSTALL) in DONE and other.evaluate(INSTALL) in DONE
        told += f", updates at {updates(page, other, own, link, max(stride // 5, KILOBYTE), *share)}"
    print(f"{told}: none half ready, none lost")


def test_an_install_or_update_cut_anywhere_is_whole_or_says_so_and_the_old_one_opens(
    chromium: Any, own: Office, link: ByteCut
) -> None:
    cut(chromium, own, link, 280 * KILOBYTE)


@pytest.mark.soak
@pytest.mark.parametrize("share", range(SHARES))
def test_an_install_or_update_cut_after_every_kilobyte_is_whole_or_says_so(
    chromium: Any, own: Office, link: ByteCut, share: int
) -> None:
    cut(chromium, own, link, KILOBYTE, share, SHARES)
