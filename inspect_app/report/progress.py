"""How far a report is while it is made: the stage, and the share of the whole that is done."""

from collections.abc import Callable

# Where each stage begins and ends, as shares of the whole. Our choice, from the demonstration's own report: small
# copies of photos and the pages take most of the time.
STAGES = {"gather": (0.0, 0.35), "decide": (0.35, 0.4), "count": (0.4, 0.65), "lay_out": (0.65, 0.92),
          "seal": (0.92, 1.0)}  # fmt: skip
Tell = Callable[[str, float], None]


def quiet(stage: str, share: float) -> None:
    """Nobody asks."""


def part_of(tell: Tell, stage: str) -> Callable[[float], None]:
    """Tells the share of the whole when told the share of one stage, 0 to 1."""
    low, high = STAGES[stage]
    return lambda part: tell(stage, low + (high - low) * min(max(part, 0.0), 1.0))
