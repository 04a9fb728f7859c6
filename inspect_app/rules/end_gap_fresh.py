"""``end_gap@2``: ``end_gap@1`` with the metal's age and the acceptance said: guarded unless ``simple``.

Where nobody knows the metal's temperature now, its whole ``change`` is taken both ways, the worst case.
"""

from inspect_app.rules.acceptance import ACCEPTANCE, simply
from inspect_app.rules.end_gap import INPUTS as BEFORE
from inspect_app.rules.end_gap import ORDER as ORDER
from inspect_app.rules.end_gap import judged, still_to_come
from inspect_app.rules.inputs import wanted
from inspect_app.rules.metal_age import METAL_AGE, too_old
from inspect_app.rules.refused import Refused
from inspect_app.rules.thermal import movement_of

METAL = ("metal_low", "metal_high", "metal_now")
INPUTS = dict(
    BEFORE,
    metal_low=wanted("temperature", required=False, least=None),
    metal_high=wanted("temperature", required=False, least=None),
    metal_now=wanted("temperature", required=False, least=None),
    change=wanted("difference", required=False, least=None),
    metal_age=METAL_AGE,
    acceptance=ACCEPTANCE,
)


def judge(given: dict, system: str) -> dict:
    """As ``end_gap@1``; ``not_determinable`` with ``metal_too_old``; by simple acceptance also ``risk``. Raises Refused
    ``missing`` for a temperature without ``change`` in its stead, and ``one_of`` for both."""
    change = given["change"]
    if change is not None:
        for name in METAL:
            if given[name] is not None:
                raise Refused("one_of", "change", None)
        moves = abs(movement_of(given["expansion"], given["distance"], change))
        return judged(given, system, moves, moves, None, simply(given))
    for name in METAL:
        if given[name] is None:
            raise Refused("missing", name)
    grow, shrink, unknown = still_to_come(given)
    return judged(given, system, grow, shrink, unknown or too_old(given), simply(given))
