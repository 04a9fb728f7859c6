"""The draw: fair, and moved by nothing but its ticket, its lot, how many there were and how many were asked for."""

import hashlib
import os
import subprocess
import sys
from collections import Counter
from pathlib import Path

import pytest
from scipy.special import chdtrc

from inspect_app.rules.draw import _below, draw, panel_seed, seed_of
from inspect_app.rules.refused import Refused

TICKET, LOT = b"\x07" * 32, "0190c6a0-0000-7000-8000-000000000001"
AGAIN = f"""
from inspect_app.rules.draw import draw, seed_of
print(draw(60, 13, seed_of({TICKET!r}, {LOT!r})))
"""


def seed(number):
    return hashlib.sha256(number.to_bytes(4, "big")).digest()


def fits(counts, cells, total):
    """The chance of a table at least so uneven, were all cells equal (Pearson's chi-square)."""
    even = total / cells
    off = sum((counts.get(cell, 0) - even) ** 2 / even for cell in range(cells))
    return float(chdtrc(cells - 1, off))


def test_every_place_is_drawn_equally_often_first_and_last():
    """Pinned seeds: 12,000 draws of 5 in 60."""
    drawn = [draw(60, 5, seed(at)) for at in range(12_000)]
    for turn in (0, 4):
        assert 0.001 < fits(Counter(one[turn] for one in drawn), 60, len(drawn)) < 0.999


def test_every_order_of_a_few_places_is_equally_likely():
    """Pinned seeds: 12,000 orders of 4 places in 24 cells; a shuffle that exchanges with any place fails here."""
    orders = Counter(tuple(draw(4, 4, seed(50_000 + at))) for at in range(12_000))
    ranks = {order: rank for rank, order in enumerate(sorted(orders))}
    assert len(ranks) == 24
    assert 0.001 < fits({ranks[order]: count for order, count in orders.items()}, 24, 12_000) < 0.999


def test_an_uneven_draw_would_be_seen():
    counts = Counter(at % 59 for at in range(12_000))
    assert fits(counts, 60, 12_000) < 1e-6


def test_a_smaller_sample_is_the_beginning_of_a_larger_one():
    for population in (1, 2, 17, 60):
        whole = draw(population, population, seed(1))
        assert sorted(whole) == list(range(population))
        assert all(draw(population, n, seed(1)) == whole[:n] for n in range(population + 1))


def test_neither_clock_nor_zone_nor_process_nor_a_second_signature_moves_it():
    """A fresh process on the other side of the world; what is signed again carries the same ticket and lot."""
    environment = {**os.environ, "TZ": "Pacific/Auckland", "PYTHONHASHSEED": "77"}
    ran = subprocess.run([sys.executable, "-c", AGAIN], cwd=Path(__file__).parents[2], env=environment,
                         capture_output=True, text=True, check=True, timeout=60)  # fmt: skip
    assert ran.stdout.strip() == str(draw(60, 13, seed_of(TICKET, LOT)))


def test_what_is_placed_later_leaves_the_sample_of_the_morning_as_it_was():
    """The draw entry keeps how many there were: the sample is made again from that number, not from today's."""
    morning = draw(16, 5, seed_of(TICKET, LOT))
    for placed_since in range(17, 60):
        draw(placed_since, 5, seed_of(TICKET, LOT))
        assert draw(16, 5, seed_of(TICKET, LOT)) == morning


def test_another_ticket_another_lot_and_another_panel_have_seeds_of_their_own():
    seeds = {seed_of(TICKET, LOT), seed_of(b"\x08" * 32, LOT), seed_of(TICKET, LOT + "2")}
    panels = {panel_seed(one, panel) for one in seeds for panel in range(300)}
    assert len(seeds) == 3 and len(panels) == 900
    assert seed_of(TICKET, LOT) == hashlib.sha256(b"draw-1" + TICKET + LOT.encode()).digest()
    assert panel_seed(TICKET, 258) == TICKET + b"\0\0\0\0\0\0\x01\x02"


@pytest.mark.parametrize(
    ("m", "skipped"),  # ⌊2⁶⁴/m⌋·m by hand: 2⁶⁴ mod 3 = 1, mod 10 = 6, mod 60 = 16
    [(3, 2**64 - 1), (10, 2**64 - 6), (10, 2**64 - 1), (60, 2**64 - 16)],
)
def test_a_word_from_the_uneven_end_is_skipped_and_the_one_before_it_is_not(m, skipped):
    assert _below(m, iter([skipped, skipped, m + 1])) == 1
    last = 2**64 - 2**64 % m - 1
    assert _below(m, iter([last, 0])) == m - 1


def test_a_word_is_taken_even_where_there_is_no_choice():
    words = iter([5, 8])
    assert [_below(1, words), _below(7, words)] == [0, 1]


def test_more_than_there_are_cannot_be_drawn():
    with pytest.raises(Refused, match="sample_too_large"):
        draw(5, 6, seed(1))


def test_the_work_of_a_draw_grows_with_the_sample_and_not_with_the_population():
    """Nothing can walk so many places: an answer at all shows that none are walked."""
    drawn = draw(10**15, 500, seed(2))
    assert len(set(drawn)) == 500 and max(drawn) > 10**14
