"""Random lots and samples as a roof has them, the big lot among them."""

import random
from collections.abc import Iterator

CASES = 200  # of each kind
TABLES = 150  # of two people's looks
LOTS = 20_000  # drawn from in each simulation
BIG = (60_000, 500)


def chances(seed: int) -> Iterator[tuple[int, int, int, int, float]]:
    """``(lot, n, found, defectives, confidence)``."""
    chance = random.Random(seed)
    for at in range(CASES):
        lot, n = BIG if at % 20 == 0 else (lot := chance.randint(2, 3000), chance.randint(1, min(lot, 400)))
        found = min(chance.choice([0, 0, 1, 2, 5, n // 3, n]), n)
        yield lot, n, found, chance.randint(0, lot), chance.choice([0.5, 0.8, 0.9, 0.95, 0.99])
