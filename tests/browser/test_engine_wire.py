"""The link breaks after any byte of what the phone sends or is answered, in any way: all that was saved comes once."""

from collections.abc import Iterator

import pytest

from tests.browser.wire import SIDES, Wire, earnest, walk_through
from tests.seed import chance
from tests.tus.cutting_proxy import WAYS

MBIT = 1000  # kbit/s


@pytest.fixture
def wire(chromium, office) -> Iterator[Wire]:
    with earnest(office) as port:
        made = Wire(chromium.new_context(), office, port)
        yield made
        made.proxy.close()


def test_a_break_after_some_byte_loses_nothing_and_doubles_nothing(wire: Wire) -> None:
    dice = chance("wire")
    for side in SIDES:
        places, cuts, wrong = walk_through(wire, dice, side, {"reset": 3, "close": 2, "stall": 1, "silence": 1})
        assert not wrong and cuts >= places - 1, (side, wrong, cuts)
    wire.check()


@pytest.mark.parametrize(("kbits", "photos"), [(MBIT, 2), (100, 1)])
def test_cut_every_fifteen_seconds_a_tenth_at_most_goes_twice(wire: Wire, kbits: int, photos: int) -> None:
    sent, piece = cut_each_fifteen_seconds(wire, kbits, photos, 4_000_000 if kbits >= MBIT else 1_000_000)
    assert 1 < sent <= 1.1 and piece == {MBIT: 131_072, 100: 16_384}[kbits], (sent, piece)
    wire.check()


def test_at_64_kbits_behind_a_proxy_that_holds_requests_back_none_takes_long(chromium, office) -> None:
    with earnest(office) as port:
        wire = Wire(chromium.new_context(), office, port, buffering=True)
        wire.phone.page.evaluate("() => { link.kbits = 64; link.roundTrip = 300 }")
        assert not wire.work(1, 200_000)["left"]
        longest = wire.phone.page.evaluate("link.longest")
        assert 1000 < longest < 20_000, longest  # ms: within what a server's worker is commonly given
        wire.check()
        wire.proxy.close()


def test_what_fell_silent_goes_within_a_minute_after_the_link_is_back(wire: Wire) -> None:
    silent_for(wire, 60)


@pytest.mark.soak
def test_what_was_silent_for_ten_minutes_goes_within_a_minute_after_the_link_is_back(wire: Wire) -> None:
    silent_for(wire, 600)


def silent_for(wire: Wire, seconds: int, hurry: int = 20) -> None:
    """The link falls silent in the middle of a photo, without a word to anybody; the page's waits are ``hurry`` times
    shorter than a phone's."""
    page, photo = wire.phone.page, wire.work(1, 400_000, tries=0)["photo"]

    def freeze() -> None:
        wire.proxy.frozen = True

    wire.proxy.on_cut = freeze
    wire.proxy.cut_after(SIDES["requests"], 150_000, "silence")
    page.evaluate("(hurry) => { link.hurry = hurry }", hurry)
    wire.phone.run("startSync()")
    page.wait_for_timeout(1000 * seconds / hurry)
    assert 0 < wire.arrived(photo) < 400_000, "it fell silent on the way"
    wire.proxy.frozen = False
    for _ in range(60):
        if not wire.phone.rows("outbox"):
            break
        page.wait_for_timeout(1000 / hurry)
    assert wire.phone.rows("outbox") == []
    wire.check()


@pytest.mark.soak
def test_a_page_opened_anew_for_fifteen_seconds_at_a_time_gets_on_each_time(wire: Wire) -> None:
    """At 100 kbit/s: with a new token, the manifest and all that is asked at a start."""
    photo = wire.work(1, 5_000_000, tries=0)["photo"]
    here = before = sent = slices = 0
    while wire.arrived(photo) < 5_000_000:
        wire.proxy.cut_each(None)
        wire.phone.again()
        wire.phone.page.evaluate("() => { link.kbits = 100; link.roundTrip = 150; link.hurry = 20 }")
        wire.proxy.cut_each(187_500)
        wire.phone.run("await sendNow()")
        sent, slices, here = sent + wire.proxy.passed[0], slices + 1, wire.arrived(photo)
        assert here > before and slices < 60, (slices, here)
        before = here
    print(f"a photo of 5 MB in {slices} times fifteen seconds at 100 kbit/s: {sent / 5_000_000:.3f} times its bytes")
    assert sent <= 1.2 * 5_000_000
    wire.proxy.cut_each(None)
    wire.phone.run("await sendNow()")
    wire.check()


def cut_each_fifteen_seconds(wire: Wire, kbits: int, photos: int, size: int) -> tuple[float, int]:
    """``(bytes sent by the phone, headers and all, over bytes of evidence; the largest request)``. The proxy cuts after
    what such a link carries in fifteen seconds; the phone's clock goes on as on such a link."""
    page = wire.phone.page
    page.evaluate("(kbits) => { link.kbits = kbits; link.roundTrip = 150; link.hurry = 10 }", kbits)
    page.evaluate("() => { link.largest = 0 }")
    wire.proxy.cut_each(kbits * 1000 // 8 * 15)
    before = wire.proxy.cuts
    for n in range(photos):
        saved = wire.work(n, size, hurry=20, tries=400)
        assert not saved["left"], saved
    sent, cuts = wire.proxy.passed[0] / (photos * size), wire.proxy.cuts - before
    wire.proxy.cut_each(None)
    assert cuts >= photos * size // (kbits * 1000 // 8 * 15) > 0
    largest = page.evaluate("link.largest")
    print(f"{photos} photos of {size} bytes at {kbits} kbit/s cut {cuts} times: {sent:.4f} times their bytes sent, "
          f"headers and all, in requests of {largest} bytes at most")  # fmt: skip
    return sent, largest


@pytest.mark.soak
def test_three_hundred_photos_of_4_mb_at_1_mbits_cut_every_fifteen_seconds(wire: Wire) -> None:
    assert cut_each_fifteen_seconds(wire, MBIT, 300, 4_000_000)[0] <= 1.1
    wire.check()


@pytest.mark.soak
@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("side", SIDES)
def test_breaks_all_along_a_conversation(wire: Wire, side: str, way: str) -> None:
    times = {way: 60 if way == "silence" else 300}
    places, cuts, wrong = walk_through(wire, chance(f"wire {side} {way}"), side, times)
    print(f"{way} in the {side}: {places} places, {cuts} breaks, {len(wrong)} lost")
    assert not wrong and cuts > places * 0.9, wrong
    wire.check()
