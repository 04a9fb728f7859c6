"""``python -m tests.museum 2``: keep what the build of today leaves behind as the piece of release 2."""

import shutil
import sys
import tempfile
from pathlib import Path

from playwright.sync_api import sync_playwright

from tests.browser.conftest import CHROMIUM, FLAGS
from tests.browser.office import Office
from tests.browser.phone import Phone
from tests.museum.fill import copied, fill
from tests.museum.piece import write


def main(release: int) -> None:
    folder = Path(tempfile.mkdtemp())
    with sync_playwright() as running, Office(folder / "office") as office:
        browser = running.chromium.launch(executable_path=CHROMIUM, headless=True, args=FLAGS)
        phone = fill(Phone(browser.new_context(), office.url), office)
        browser.close()
        write(release, phone, copied(office, folder / "office", folder / "copy"))
    shutil.rmtree(folder)


if __name__ == "__main__":
    main(int(sys.argv[1]))
