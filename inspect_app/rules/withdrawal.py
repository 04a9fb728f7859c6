"""``withdrawal@1``: a wood screw drawn out of the side of solid wood. W = 2850·G²·D pounds per inch of thread in the
wood (NDS 12.2.2). Not for thin sheathing: in plywood the equation promises too much (J. Korean Wood Sci. Tech. 49(1)
93), and there only tested values hold. A comparison only: capacity is the engineer's.
"""

from inspect_app.rules.answer import answer, measured
from inspect_app.rules.inputs import wanted
from inspect_app.rules.refused import Refused
from inspect_app.rules.unit import SYSTEMS, change_unit

INPUTS = {
    "specific_gravity": wanted("number", above_zero=True),
    "diameter": wanted("length", most_mm=25.0, above_zero=True),
    "penetration": wanted("length", most_mm=500.0, above_zero=True),
}
ORDER = ("diameter", "penetration")
LIGHTEST, HEAVIEST = 0.2, 1.1  # of any wood that is built with (our bounds)


def judge(given: dict, system: str) -> dict:
    """``per_length force``; ``penetration``: thread in the main member, without the tip. No verdict."""
    gravity = given["specific_gravity"]
    if not LIGHTEST <= gravity <= HEAVIEST:
        raise Refused("out_of_range", "specific_gravity", None, (LIGHTEST, HEAVIEST))
    length = SYSTEMS[system]["length"]
    per_inch = 2850.0 * gravity * gravity * change_unit(given["diameter"], length, "in")
    force = per_inch * change_unit(given["penetration"], length, "in")
    line, whole = SYSTEMS[system]["line_force"], SYSTEMS[system]["force"]
    return answer({
        "per_length": measured(change_unit(per_inch, "lbf/in", line), line),
        "force": measured(change_unit(force, "lbf", whole), whole),
    })
