"""``movement@1``: how far a panel of a given length moves. ΔL = α·d·ΔT (first principles)."""

from inspect_app.rules.answer import answer, measured
from inspect_app.rules.inputs import wanted
from inspect_app.rules.refused import Refused
from inspect_app.rules.thermal import movement_of
from inspect_app.rules.unit import SYSTEMS

INPUTS = {
    "distance": wanted("length"),
    "expansion": wanted("expansion"),
    "change": wanted("difference", required=False, least=None),
    "metal_low": wanted("temperature", required=False, least=None),
    "metal_high": wanted("temperature", required=False, least=None),
}
ORDER = ("distance", "expansion", "change", "metal_low", "metal_high")


def judge(given: dict, system: str) -> dict:
    """``movement`` over a temperature ``change``, or from ``metal_low`` to ``metal_high``. Without a verdict."""
    change = given["change"]
    if change is None:
        if given["metal_low"] is None or given["metal_high"] is None:
            raise Refused("missing", "change")
        change = given["metal_high"] - given["metal_low"]
    length = SYSTEMS[system]["length"]
    return answer({"movement": measured(movement_of(given["expansion"], given["distance"], change), length)})
