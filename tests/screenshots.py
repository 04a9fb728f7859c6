"""``make screenshots``: the README's pictures, of the invented scenario, into ``tests/pictures/``."""

import json
import subprocess
import sys
import tempfile
import threading
from dataclasses import replace
from pathlib import Path
from urllib.parse import quote

from PIL import Image
from playwright.sync_api import sync_playwright
from pypdf import PdfReader

from inspect_app.application import create_serving_app
from inspect_app.settings import settings_from, sqlite_in
from inspect_app.web.listening import listening, stop
from tests.browser.conftest import CHROMIUM, FLAGS
from tests.browser.gate import free_port
from tests.browser.roof import Roof
from tests.browser.test_journey import PHONE, ready, walk_a_place
from tests.browser.walker import Walker

PICTURES = Path(__file__).with_name("pictures")
COLOURS = 64
CHAPTER = "The roof"  # from above


def main() -> None:
    PICTURES.mkdir(exist_ok=True)
    with tempfile.TemporaryDirectory() as folder:
        of_the_app(Path(folder))
        demo = Path(folder) / "demo"
        command = [sys.executable, "-m", "inspect_app.command_line", "demo", "--once", "--folder", demo]
        subprocess.run(command, check=True)
        of_the_week(demo, Path(folder))
        of_the_report(demo, Path(folder))


def of_the_app(folder: Path) -> None:
    """A reading with its verdict and working."""
    roof = Roof(folder / "data")
    roof.start()
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=CHROMIUM, args=FLAGS)
        walker = Walker(browser.new_page(**PHONE), roof.url, folder)
        walker.sign_in("foreman")
        walker.open_job()
        ready(walker)
        walker.begin_walk()
        walk_a_place(walker, 0.03)
        walker.page.evaluate("scrollBy(0, document.querySelector('.slot-figure').getBoundingClientRect().top - 260)")
        walker.page.screenshot(path=folder / "verdict.png")
        keep(folder / "verdict.png", "verdict.png")
        browser.close()
    roof.stop()


def of_the_week(demo: Path, folder: Path) -> None:
    """The whole roof from above, a lot's decision and the coverage, of the demonstration's week."""
    settings = settings_from({})
    app = create_serving_app(replace(settings, data=demo, database_url=sqlite_in(demo)))
    note = json.loads((demo / "demonstration.json").read_text("utf-8"))
    password = next(one["password"] for one in note["people"] if one["role"] == "foreman")
    with app.app_context():
        lots = app.extensions["seamwalk"].records.record(note["job"])["lots"]
    lost = next(name for name, lot in sorted(lots.items()) if lot["decision"]["state"] == "not_accepted")
    port = free_port()
    server = listening(app, "127.0.0.1", port)
    threading.Thread(target=server.run, daemon=True).start()
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=CHROMIUM, args=FLAGS)
        page = browser.new_page(**PHONE)
        page.goto(f"http://127.0.0.1:{port}/")
        page.fill("#in-login", "foreman")
        page.fill("#in-password", password)
        page.click('[data-name="sign-in"]')
        page.locator('[data-name="job"]').wait_for(timeout=60000)
        page.locator(".strip").filter(has_text="✓ ready for no signal").wait_for(timeout=60000)
        shown = (("plan", ["plan"], ".roofplan"), ("lot", ["lot", quote(lost, safe="")], '[data-name="drawn-panel"]'),
                 ("coverage", ["coverage"], '[data-name="covered-unseen"]'))  # fmt: skip
        for name, steps, sign in shown:
            page.evaluate("(hash) => { location.hash = hash }", "#/job/" + "/".join([note["job"], *steps]))
            page.locator(sign).first.wait_for(timeout=60000)
            page.wait_for_timeout(1500)  # the counts come from the worker
            page.screenshot(path=folder / f"{name}.png")
            keep(folder / f"{name}.png", f"{name}.png")
        browser.close()
    stop(server)


def of_the_report(demo: Path, folder: Path) -> None:
    """One page of the demonstration's report: the roof with all that is known of its panels."""
    report = min(demo.glob("reports/*/*.pdf"))  # the first, of the whole job
    reader = PdfReader(report)
    chapter = next(one for one in reader.outline if not isinstance(one, list) and one.title == CHAPTER)
    number = str((reader.get_destination_page_number(chapter) or 0) + 1)
    page = ["-f", number, "-l", number]
    subprocess.run(["pdftoppm", "-r", "70", "-png", "-singlefile", *page, report, folder / "page"], check=True)
    keep(folder / "page.png", "report-page.png")


def keep(picture: Path, name: str) -> None:
    """Keep a picture with few colours: small enough for a repository."""
    Image.open(picture).convert("RGB").quantize(COLOURS).save(PICTURES / name, optimize=True)


if __name__ == "__main__":
    main()
