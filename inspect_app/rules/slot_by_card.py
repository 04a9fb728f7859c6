"""``slot@2``: ``slot@1``, also with a card beside the slot, the age of the metal's reading, and the acceptance said.

A card of size ID-1 lying in the flange's plane gives that plane (``card_view.py`` says what is assumed): the taps are
measured in it, so a tilt of up to 30° is taken, the head's parallax is taken off, and the slot's own length is checked
against the approved one. The bound covers the truth in 95 of 100 photographs and more
(``tests/rules/test_slot_cards.py``).
"""

from inspect_app.rules.acceptance import ACCEPTANCE, simply
from inspect_app.rules.answer import answer
from inspect_app.rules.inputs import wanted
from inspect_app.rules.metal_age import METAL_AGE, too_old
from inspect_app.rules.refused import Refused
from inspect_app.rules.slot import INPUTS as BEFORE
from inspect_app.rules.slot import ORDER as ORDER
from inspect_app.rules.slot import settled, window_here
from inspect_app.rules.slot_card_reading import read_card
from inspect_app.rules.slot_reading import beside, read_offset, usable

INPUTS = dict(BEFORE, card=wanted("card", required=False), metal_age=METAL_AGE, acceptance=ACCEPTANCE)


def judge(given: dict, system: str) -> dict:
    """As ``slot@1``; by simple acceptance also ``risk``. With a ``card`` a ``tilt`` given does not count. Simple
    acceptance takes taps as they stand; a third, and an end under the head, stay the intervals that they are. Raises
    Refused ``missing`` for a card without taps, and as ``slot@1``."""
    here = window_here(given, system)
    seen = _seen(given, here["play"])
    unusable = seen.get("reason") or too_old(given)
    if unusable is not None:
        return answer(here["shown"], "not_determinable", unusable, here["known"])
    seen["astray"] = seen["bound"]  # the metal's doubt says nothing of where the screw was seen
    return settled(given, here, seen, simply(given))


def _seen(given: dict, play: float) -> dict:
    if given["card"] is not None:
        if given["taps"] is None:
            raise Refused("missing", "taps", None)
        told = dict(given)
        told["tilt"] = None
        unusable = usable(told)
        if unusable is not None:
            return {"reason": unusable}
        seen = read_card(given)
        seen["known"] = 0.0
        return seen
    unusable = usable(given)
    if unusable is not None:
        return {"reason": unusable}
    toward_ridge, bound = read_offset(given, play)
    return {"toward_ridge": toward_ridge, "bound": bound, "beside": beside(given),
            "known": bound if given["taps"] is None else 0.0}  # fmt: skip
