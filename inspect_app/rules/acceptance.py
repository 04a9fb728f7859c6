"""How a reading that is not exact is accepted: guarded or simple, the same in every rule that says ``acceptance``.

Guarded (ILAC-G8:09/2019 4.2, w = U): pass or fail only where the reading is on that side by at least its uncertainty.
Simple: the reading decides as it stands, and the answer says what that risks: the chance that what was measured lies
beyond the limit, for a normal error of U/2 (``guard.py``; JCGM 106:2012, 7.3, from memory). With two limits the
chances of both sides count.
"""

from inspect_app.rules.answer import measured
from inspect_app.rules.compare import settle
from inspect_app.rules.guard import chance_beyond
from inspect_app.rules.inputs import wanted

ACCEPTANCE = wanted("choice", required=False, choices=("guarded", "simple"))


def simply(given: dict, unless_said: str = "guarded") -> bool:
    """Whether the reading decides as it stands; ``unless_said``: what the rule does by itself."""
    return (given["acceptance"] or unless_said) == "simple"


def accept(
    least: float, most: float, bound: float, limits: tuple, simple: bool, values: dict, scale: float = 0.0
) -> str:
    """``pass``, ``fail`` or ``too_close`` of what was seen as ``least``..``most``, uncertain by ``bound`` more on
    each side, against ``limits`` ``(low, high)``, None for no limit on that side.

    ``least`` is ``most`` for a plain reading; a slot's third is an interval by itself, which no acceptance narrows.
    Simple acceptance of an uncertain reading puts its ``risk`` (0 to 1) among ``values``.
    """
    low, high = limits
    if not simple:
        return settle(least - bound, most + bound, low, high, scale)
    if bound > 0.0:
        above = 0.0 if high is None else chance_beyond(high - most, bound)
        below = 0.0 if low is None else chance_beyond(least - low, bound)
        values["risk"] = measured(min(above + below, 1.0), "")
    return settle(least, most, low, high, scale)
