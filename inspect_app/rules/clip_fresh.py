"""``clip@2``: ``clip@1`` with the age of the metal's reading and the acceptance said: guarded unless ``simple``."""

from inspect_app.rules.acceptance import ACCEPTANCE, simply
from inspect_app.rules.clip import INPUTS as BEFORE
from inspect_app.rules.clip import ORDER as ORDER
from inspect_app.rules.clip import judged
from inspect_app.rules.metal_age import METAL_AGE, too_old

INPUTS = dict(BEFORE, metal_age=METAL_AGE, acceptance=ACCEPTANCE)


def judge(given: dict, system: str) -> dict:
    """As ``clip@1``; ``not_determinable`` with ``metal_too_old``; by simple acceptance also ``risk``."""
    return judged(given, system, too_old(given), simply(given))
