"""Chromium, one process for each test worker, and the real server behind a gate that can be shut."""

import os
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest

from inspect_app.settings import shipped
from tests.browser.office import Office
from tests.browser.phone import Phone
from tests.browser.profile import Profile
from tests.browser.roof import Roof

CHROMIUM = os.environ.get("CHROMIUM") or shutil.which("chromium") or shutil.which("chromium-browser")
# What the driver turns off stands here again: of two such lists the browser takes the last alone.
OFF_IN_THE_DRIVER = (
    "AvoidUnnecessaryBeforeUnloadCheckSync", "DestroyProfileOnBrowserClose", "HttpsUpgrades",
    "HttpsFirstBalancedModeAutoEnable", "LensOverlay", "MediaRouter", "PaintHolding", "ThirdPartyStoragePartitioning",
    "AvoidCorsURLLoaderRestartOnRedirect", "TcpPortRandomizationWin", "OptimizationHints",
    "NetworkTimeServiceQuerying", "AimEnabled", "PreconnectToSearch",
)  # fmt: skip
# Two pages under the address bar, loaded anew for each phone, which has no address bar here: a tenth of its start.
SUGGESTIONS = ("WebUIOmniboxPopup", "WebUIOmniboxAimPopup")
FLAGS = [
    "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
    "--disable-component-update", "--disable-sync", "--use-fake-device-for-media-stream",
    "--use-fake-ui-for-media-stream", f"--disable-features={','.join([*OFF_IN_THE_DRIVER, *SUGGESTIONS])}",
]  # fmt: skip


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    for item in items:
        if Path(item.fspath).is_relative_to(Path(__file__).parent):
            item.add_marker(pytest.mark.browser)
            # File by file, so that both workers drive a browser: with all in one, the other had nothing left to do.
            item.add_marker(pytest.mark.xdist_group(f"browser {Path(item.fspath).stem}"))


@pytest.fixture(scope="session")
def playwright():
    from playwright.sync_api import sync_playwright

    with sync_playwright() as running:
        yield running


@pytest.fixture(scope="session")
def chromium_path() -> str | None:
    """None: the browser that came with the driver."""
    return CHROMIUM


@pytest.fixture(scope="session")
def browser_of_this_worker(playwright, chromium_path):
    browser = playwright.chromium.launch(executable_path=chromium_path, headless=True, args=FLAGS)
    yield browser
    browser.close()


@pytest.fixture
def chromium(browser_of_this_worker):
    """The worker's browser. Its phones end with their test: left open they go on sending, and slow every later one."""
    yield browser_of_this_worker
    for context in browser_of_this_worker.contexts:
        context.close()


@pytest.fixture(scope="session")
def prepared(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """An office's data folder, made once: hashing passwords takes most of the time."""
    folder = tmp_path_factory.mktemp("prepared") / "office"
    Office(folder)
    return folder


@pytest.fixture
def office(prepared: Path, tmp_path: Path) -> Iterator[Office]:
    """A running server with one job and its people."""
    shutil.copytree(prepared, tmp_path / "office")
    with Office(tmp_path / "office") as running:
        yield running


@pytest.fixture
def roof(tmp_path: Path) -> Iterator[Roof]:
    """A running server with the invented scenario's job."""
    made = Roof(tmp_path / "data")
    made.start()
    yield made
    made.stop()


@pytest.fixture
def own(prepared: Path, tmp_path: Path) -> Iterator[Office]:
    """An office whose static files are a copy that a test may change: ``own.static``."""
    shutil.copytree(prepared, tmp_path / "office")
    static = tmp_path / "static"
    shutil.copytree(shipped("static"), static)
    with Office(tmp_path / "office", static=static) as running:
        running.static = static
        yield running


@pytest.fixture
def phone(chromium, office: Office) -> Iterator[Phone]:
    """A phone of its own, with an empty store, on a blank page of the office's origin."""
    context = chromium.new_context()
    yield Phone(context, office.url)
    context.close()


@pytest.fixture
def profile(playwright, chromium_path, tmp_path: Path) -> Iterator[Profile]:
    """A browser of its own with a store on disk, which can be killed."""
    made = Profile(playwright, chromium_path, FLAGS, tmp_path / "profile")
    yield made
    made.close()
