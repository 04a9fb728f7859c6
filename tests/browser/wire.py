"""A phone behind a proxy that breaks connections, before the server as it is served in earnest."""

import contextlib
import threading
from collections.abc import Iterator
from pathlib import Path
from random import Random
from typing import Any

from inspect_app.web.listening import listening, stop
from tests.browser.office import Office
from tests.browser.phone import Phone, entry
from tests.tus.cutting_proxy import REQUESTS, RESPONSES, CuttingProxy

LINK = Path(__file__).with_name("link.js").read_text("utf-8")
SIDES = {"requests": REQUESTS, "responses": RESPONSES}
# A piece of work as a screen does it: an entry, a photo with its entry; then sent until nothing is left.
WORK = """const { n, size, job, area, hurry, tries } = arg; link.hurry = 1;
  const bytes = new Uint8Array(size); new DataView(bytes.buffer).setUint32(4, n);
  for (let at = 8; at < size; at += 65536) crypto.getRandomValues(bytes.subarray(at, Math.min(size, at + 65536)));
  bytes[0] = 0xff; bytes[1] = 0xd8;
  const photo = await keepPhoto(new File([bytes], 'a.jpg', { type: 'image/jpeg' }));
  const kept = await keepEntry({ job, kind: 'photo', subject: photo.sha256, body: {
    walk: '01a00000-0000-7000-8000-00000000000b', station: null, answer: null, role: 'other', sha256: photo.sha256,
    size: photo.size, type: photo.type, source: 'picked' } });
  const saved = { photo: photo.sha256, entries: [kept.digest, (await keepEntry(area)).digest], left: 2, online: [] };"""
SEND = """link.hurry = hurry;
  for (let at = 0; at < tries && saved.left; at += 1) {
    const state = await sendNow(); saved.left = state.entries + state.photos; saved.online.push(state.reason) }
  return saved"""


class Wire:
    """``phone`` speaks to ``office`` through ``proxy``. ``saved`` names what the phone has said to be saved."""

    def __init__(self, context: Any, office: Office, port: int, buffering: bool = False) -> None:
        self.office, self.proxy = office, CuttingProxy(port, buffering, pause=0.05)
        context.add_init_script(LINK)
        self.phone = Phone(context, f"http://127.0.0.1:{self.proxy.port}")
        self.phone.sign_in("ann")
        self.entries: set[str] = set()
        self.photos: set[str] = set()

    def work(self, n: int, size: int, hurry: int = 1, tries: int = 12) -> dict[str, Any]:
        given = {"n": n, "size": size, "job": self.office.job, "area": entry(self.office.job, f"n{n}"),
                 "hurry": hurry, "tries": tries}  # fmt: skip
        saved: dict[str, Any] = self.phone.run(WORK + SEND, given)
        self.entries |= set(saved["entries"])
        self.photos.add(saved["photo"])
        return saved

    def broken(self, n: int, side: int, place: int, way: str) -> str:
        """One piece of work with one break; what was wrong with it, or nothing."""
        self.proxy.cut_after(side, place, way)
        saved = self.work(n, 40_000, hurry=40 if way == "silence" else 10)
        return f"{saved['left']} left after {way} at {place}: {saved['online']}" if saved["left"] else ""

    def check(self) -> None:
        """What was saved has all arrived, once and whole; whatever the phone holds a receipt for is there."""
        digests = [one.digest for one in self.office.entries()]
        assert len(digests) == len(set(digests)) and self.entries <= set(digests)
        mine = [one for one in self.office.entries() if one.payload["kind"] in ("photo", "area")]
        assert len(mine) == len(self.entries), "nothing that was never said"
        vault = self.office.parts.vault
        assert all(vault.found(sha256) == sha256 for sha256 in self.photos) and set(vault.names()) == self.photos
        assert {row["name"] for row in self.phone.rows("receipts")} >= self.entries | self.photos
        assert self.phone.rows("outbox") == []

    def arrived(self, sha256: str) -> int:
        """Bytes of a photo that the server holds, whole or begun."""
        photos = self.office.app.extensions["photos"]
        if photos.vault.holds(sha256):
            return int(photos.vault.path(sha256).stat().st_size)
        return sum(part.stat().st_size for part in photos.uploads.folder.glob("*/*.part"))


def walk_through(wire: Wire, dice: Random, side: str, ways: dict[str, int]) -> tuple[int, int, list[str]]:
    """So many breaks of each way, at places spread over a whole conversation. ``(places, breaks, what was wrong)``."""
    for _ in range(2):  # the first is told besides what the phone asks for once
        wire.proxy.cut_after(SIDES[side], 1 << 40)
        wire.work(dice.randrange(1 << 31), 40_000)
    length, before = wire.proxy.passed[SIDES[side]], wire.proxy.cuts
    places = [(way, int((n + dice.random()) * length / times) + 1) for way, times in ways.items() for n in range(times)]
    wrong = [wire.broken(dice.randrange(1 << 31), SIDES[side], place, way) for way, place in places]
    return len(places), wire.proxy.cuts - before, [one for one in wrong if one]


@contextlib.contextmanager
def earnest(office: Office) -> Iterator[int]:
    """The office's app under the server of ``seamwalk serve``; gives its port."""
    server = listening(office.app, "127.0.0.1", 0)
    threading.Thread(target=server.run, daemon=True).start()
    try:
        yield server.effective_port
    finally:
        stop(server)
