"""What making a saved copy takes of the phone's memory: the page's and the browser's own, while it is made."""

import threading
import time
from pathlib import Path

import pytest

from tests.browser.office import Office
from tests.browser.phone import Phone, keep_picture
from tests.browser.profile import Profile

PHOTOS, SIZE, MB = 100, 4_000_000, 1024 * 1024
MAKE = """const { makeCopy } = await import('/static/copy/make.js'); const { file } = await makeCopy();
  let bytes = 0; for (const reader = file.stream().getReader();;) { const { done, value } = await reader.read()
    if (done) return bytes; bytes += value.length }"""


class Watch(threading.Thread):
    """The most memory (resident, MiB) that pages and the browser's main process hold while it runs."""

    def __init__(self, profile: Profile) -> None:
        super().__init__(daemon=True)
        self.of = {"pages": profile.pages, "browser": profile._browsers}
        self.most, self.over = dict.fromkeys(self.of, 0.0), threading.Event()

    def run(self) -> None:
        while not self.over.is_set():
            for name, found in self.of.items():
                self.most[name] = max(self.most[name], sum(map(resident, found())))
            time.sleep(0.2)


def resident(pid: int) -> float:
    try:
        lines = Path(f"/proc/{pid}/status").read_text().splitlines()
    except OSError:
        return 0
    return sum(int(line.split()[1]) for line in lines if line.startswith("VmRSS")) / 1024


@pytest.mark.soak
def test_a_copy_of_400_mb_takes_the_page_no_more_memory_than_some_photos(profile: Profile, office: Office) -> None:
    phone = Phone(profile.start(), office.url)
    phone.sign_in("ann")
    office.stop()
    for n in range(PHOTOS):
        keep_picture(phone, office.job, n, SIZE)
    profile.close()
    office.start()
    phone = Phone(profile.start(), office.url)  # nothing of the keeping is in memory any more
    before, watch = Watch(profile), Watch(profile)
    before.over.set()
    before.most = {name: sum(map(resident, found())) for name, found in before.of.items()}
    watch.start()
    copied = phone.run(MAKE)
    watch.over.set()
    watch.join()
    more = {name: watch.most[name] - before.most[name] for name in watch.most}
    print(f"a copy of {PHOTOS} photos, {copied / MB:.0f} MiB, made and read: "
          f"pages {more['pages']:.0f} MiB more, the browser {more['browser']:.0f} MiB more")  # fmt: skip
    assert copied > PHOTOS * SIZE
    assert more["pages"] < 40 * SIZE / MB
