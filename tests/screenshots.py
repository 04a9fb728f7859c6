"""``make screenshots``: the README's pictures, of the invented scenario, into ``tests/pictures/``."""

import subprocess
import sys
import tempfile
from pathlib import Path

from PIL import Image
from playwright.sync_api import sync_playwright

from tests.browser.conftest import CHROMIUM, FLAGS
from tests.browser.roof import Roof
from tests.browser.test_journey import PHONE, ready, walk_a_place
from tests.browser.walker import Walker

PICTURES = Path(__file__).with_name("pictures")
COLOURS = 64
PAGE = 3


def main() -> None:
    PICTURES.mkdir(exist_ok=True)
    with tempfile.TemporaryDirectory() as folder:
        of_the_app(Path(folder))
        of_the_report(Path(folder))


def of_the_app(folder: Path) -> None:
    """The drawn roof of the job, and a reading with its verdict and working."""
    roof = Roof(folder / "data")
    roof.start()
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=CHROMIUM, args=FLAGS)
        walker = Walker(browser.new_page(**PHONE), roof.url, folder)
        walker.sign_in("foreman")
        walker.open_job()
        ready(walker)
        walker.page.screenshot(path=folder / "roof.png")
        keep(folder / "roof.png", "roof.png")
        walker.begin_walk()
        walk_a_place(walker, 0.03)
        walker.page.evaluate("scrollBy(0, document.querySelector('.slot-figure').getBoundingClientRect().top - 260)")
        walker.page.screenshot(path=folder / "verdict.png")
        keep(folder / "verdict.png", "verdict.png")
        browser.close()
    roof.stop()


def of_the_report(folder: Path) -> None:
    """One page of the demonstration's report."""
    demo = folder / "demo"
    subprocess.run([sys.executable, "-m", "inspect_app.command_line", "demo", "--once", "--folder", demo], check=True)
    report = next(demo.glob("reports/*/*.pdf"))
    page = ["-f", str(PAGE), "-l", str(PAGE)]
    subprocess.run(["pdftoppm", "-r", "70", "-png", "-singlefile", *page, report, folder / "page"], check=True)
    keep(folder / "page.png", "report-page.png")


def keep(picture: Path, name: str) -> None:
    """Keep a picture with few colours: small enough for a repository."""
    Image.open(picture).convert("RGB").quantize(COLOURS).save(PICTURES / name, optimize=True)


if __name__ == "__main__":
    main()
