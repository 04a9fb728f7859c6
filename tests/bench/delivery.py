"""What delivery costs: the real client in Chromium and the real server, beside a plain upload of as many bytes from the
same page through the same proxy, and the bytes that went over the wire beside the bytes of evidence."""

import os
import tempfile
from pathlib import Path
from time import perf_counter

from flask import request
from playwright.sync_api import sync_playwright

from tests.bench.measure import Row
from tests.browser.conftest import CHROMIUM, FLAGS
from tests.browser.office import Office
from tests.browser.phone import entry
from tests.browser.wire import Wire, earnest

PHOTOS, SIZE, ENTRIES, PASSES = 6, 4_000_000, 60, 3
PAGE = Path(__file__).with_suffix(".js").read_text("utf-8")
KEEP = """for (let n = 0; n < arg.photos; n += 1) {
    const file = new File([picture(arg.size)], 'a.jpg', { type: 'image/jpeg' });
    await keepEntry(declared(arg.job, await keepPhoto(file))) }
  for (const one of arg.entries) await keepEntry(one)"""
SEND = "link.now = 0; const { entries, photos } = await sendNow(); return [entries + photos, link.now]"


def rows() -> list[Row]:
    with tempfile.TemporaryDirectory() as name, sync_playwright() as driver:
        browser = driver.chromium.launch(executable_path=CHROMIUM, headless=True, args=FLAGS)
        office = Office(Path(name) / "office")
        plain(office, Path(name) / "plain")
        try:
            with earnest(office) as port:
                context = browser.new_context()
                context.add_init_script(PAGE)
                wire = Wire(context, office, port)
                ours, theirs, link = _in_turns(wire)
                photos, text = _bytes(wire, PHOTOS, 0), _bytes(wire, 0, ENTRIES)
                wire.proxy.close()
        finally:
            browser.close()
    return [
        Row(f"deliver {PHOTOS} photos of 4 MB, {ours:.1f} s", f"a plain upload of them, {theirs:.1f} s",
            ours / theirs, 6, "read from the phone's storage, hashed on both sides, each piece synced on its own"),
        Row("the same at 1 Mbit/s with round trips of 150 ms", "the plain upload there", link, 1.3,
            "a round trip for each piece, so that a cut costs a second or two at most"),
        Row("bytes over the wire, both ways, for photos", "their bytes", photos, 1.05,
            "headers of some thirty pieces a photo"),
        Row(f"bytes over the wire, both ways, for {ENTRIES} entries", "their bytes", text, 4,
            "named in the manifest, answered with a receipt each, and brought back with others' once"),
    ]  # fmt: skip


def plain(office: Office, target: Path) -> None:
    """A route that does no more than a plain upload must: the bytes on the disk, synced."""

    def take() -> str:
        request.max_content_length = SIZE * 2
        with target.open("wb") as out:
            out.write(request.get_data())
            out.flush()
            os.fsync(out.fileno())
        return "taken"

    office.app.add_url_rule("/api/plain", "plain", take, methods=["POST"])


def _in_turns(wire: Wire) -> tuple[float, float, float]:
    """Seconds of both, the best of some passes, and their ratio by the clock of a link of 1 Mbit/s."""
    wire.phone.page.evaluate("() => { link.kbits = 1000; link.roundTrip = 150 }")
    given = {"photos": PHOTOS, "size": SIZE, "job": wire.office.job, "entries": []}
    ours, theirs, ratios = [], [], []
    for _ in range(PASSES):
        wire.phone.run(KEEP, given)
        start = perf_counter()
        left, paced = wire.phone.run(SEND)
        ours.append(perf_counter() - start)
        assert left == 0
        start = perf_counter()
        ratios.append(paced / wire.phone.page.evaluate("(given) => plain(given)", given))
        theirs.append(perf_counter() - start)
    return min(ours), min(theirs), min(ratios)


def _bytes(wire: Wire, photos: int, entries: int) -> float:
    """Bytes passed in both directions, over those of the photos or the entries."""
    many = [entry(wire.office.job, f"b{n}") for n in range(entries)]
    wire.phone.run(KEEP, {"photos": photos, "size": SIZE, "job": wire.office.job, "entries": many})
    evidence = sum(row["size"] for row in wire.phone.rows("outbox"))
    wire.proxy.cut_after(0, 1 << 40)
    assert wire.phone.run(SEND)[0] == 0
    return sum(wire.proxy.passed) / evidence
