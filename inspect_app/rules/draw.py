"""``draw@1``: which of a population are looked at, so that nobody can steer it and anybody can redo it.

Block i (from 0) is SHA-256(seed ‖ i as 8 bytes, big-endian): four words of 8 bytes, big-endian, taken in order. A whole
number below m takes the next word w, skips every w ≥ ⌊2⁶⁴/m⌋·m, and is w mod m; a word is taken for m = 1 too. Then a
partial exchange shuffle (R. Durstenfeld, CACM algorithm 235, 1964) over the places 0 … N−1: for k = 0 … n−1 exchange
the places k and k + number below (N − k). The first n places are the sample in the order drawn, so that a smaller
sample is the beginning of a larger one. Only the places touched are kept: the work grows with n, never with N.
"""

import hashlib

from inspect_app.rules.answer import answer, listed
from inspect_app.rules.inputs import wanted
from inspect_app.rules.refused import Refused

PURPOSE = b"draw-1"
INPUTS = {
    "population": wanted("integer", above_zero=True),
    "n": wanted("integer"),
    "seed": wanted("hex"),
}
ORDER = ()


def judge(given: dict, system: str) -> dict:
    """``indices``: from 0, in the order drawn. Raises Refused ``sample_too_large``."""
    return answer({"indices": listed(draw(int(given["population"]), int(given["n"]), given["seed"]))})


def draw(population: int, n: int, seed: bytes) -> list:
    """``n`` different numbers from 0 to ``population`` − 1, in the order drawn. Raises Refused ``sample_too_large``."""
    if n > population:
        raise Refused("sample_too_large", "n", n)
    words = _words(seed)
    moved: dict = {}  # place: what stands there, where that is not its own number
    drawn = []
    for k in range(n):
        place = k + _below(population - k, words)
        drawn.append(moved.get(place, place))
        moved[place] = moved.get(k, k)
    return drawn


def seed_of(ticket: bytes, lot_id: str) -> bytes:
    """The seed of a lot: its ticket came from the server before the lot was named."""
    return hashlib.sha256(PURPOSE + ticket + lot_id.encode()).digest()


def panel_seed(seed: bytes, panel: int) -> bytes:
    """The seed of the places on one panel of the lot: the lot's seed extended by the panel's number, 40 bytes."""
    return seed + panel.to_bytes(8, "big")


def _words(seed: bytes):  # type: ignore[no-untyped-def]  # a generator; its type has no name without typing
    block = 0
    while True:
        digest = hashlib.sha256(seed + block.to_bytes(8, "big")).digest()
        for at in (0, 8, 16, 24):
            yield int.from_bytes(digest[at : at + 8], "big")
        block += 1


def _below(m: int, words) -> int:  # type: ignore[no-untyped-def]
    end = (1 << 64) // m * m
    while True:
        word: int = next(words)
        if word < end:
            return word % m
