"""``edge_width@1``: the width a of the edge and corner zones: a tenth of the least plan dimension or 0.4 of the mean
roof height, whichever is less, and not less than 4 % of that dimension or 3 ft (ASCE 7-02 and 7-10, components and
cladding, note of the roof figures). Later editions zone low roofs otherwise and are refused until their rule has been
read. A proposal: the engineer's zones stand.
"""

from inspect_app.rules.answer import answer, measured
from inspect_app.rules.inputs import wanted
from inspect_app.rules.refused import Refused
from inspect_app.rules.unit import SYSTEMS, change_unit

EDITIONS = ("ASCE 7-02", "ASCE 7-10")
INPUTS = {
    "least_width": wanted("length", above_zero=True),
    "height": wanted("length", above_zero=True),
    "edition": wanted("text"),
}
ORDER = ("least_width", "height")


def judge(given: dict, system: str) -> dict:
    """``width``. Raises Refused ``unknown_edition``."""
    if given["edition"] not in EDITIONS:
        raise Refused("unknown_edition", "edition", given["edition"])
    length = SYSTEMS[system]["length"]
    least, height = given["least_width"], given["height"]
    width = max(min(0.1 * least, 0.4 * height), 0.04 * least, change_unit(3.0, "ft", length))
    return answer({"width": measured(width, length)})
