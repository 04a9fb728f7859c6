"""What chance in the long runs starts from: ``SEED=7 make soak`` gives others than the first."""

import os
from random import Random

SEED = int(os.environ.get("SEED") or 20261125)


def chance(name: str) -> Random:
    """A source of its own for each test, the same again for the same seed."""
    return Random(f"{SEED} {name}")
