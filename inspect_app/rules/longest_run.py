"""``longest_run@1``: the longest run from the fixed line that a slot or a clip can take over the metal's range.

With half-play P, a crew that sets within ±e of the day's aim gets 2(P − e)/(α·(Thigh − Tlow)); a crew that centres at
any temperature gets (P − e)/(α·(Thigh − Tlow)). A clip with o of travel outward and i inward: (o + i − 2e) and
(min(o, i) − e) over the same. First principles; the approved longest run stands whatever comes out here.
"""

from inspect_app.rules.answer import all_measured, answer, reason
from inspect_app.rules.compare import at_most
from inspect_app.rules.inputs import wanted
from inspect_app.rules.refused import Refused
from inspect_app.rules.unit import SYSTEMS
from inspect_app.rules.window import half_play

INPUTS = {
    "expansion": wanted("expansion"),
    "metal_low": wanted("temperature", least=None),
    "metal_high": wanted("temperature", least=None),
    "offset_error": wanted("length", most_mm=100.0),
    "slot": wanted("length", required=False, most_mm=300.0, above_zero=True),
    "shank": wanted("length", required=False, most_mm=50.0, above_zero=True),
    "travel_outward": wanted("length", required=False, most_mm=300.0),
    "travel_inward": wanted("length", required=False, most_mm=300.0),
    "run": wanted("length", required=False),
}
ORDER = ("slot", "travel_outward", "run", "shank", "expansion", "metal_low")


def judge(given: dict, system: str) -> dict:
    """``aimed centred``, none below zero. With a ``run``: ``pass`` where it holds centred at any temperature,
    ``pass`` with ``set_at_aim`` where only the day's aim makes it hold, else ``fail``. Raises Refused ``missing``
    and ``one_of`` (a slot or a clip's travel, not both)."""
    aimed, centred = _free(given)
    error = given["offset_error"]
    per_length = given["expansion"] * (given["metal_high"] - given["metal_low"])
    aimed_run = max(aimed - 2.0 * error, 0.0) / per_length
    centred_run = max(centred - error, 0.0) / per_length
    values = all_measured({"aimed": aimed_run, "centred": centred_run}, SYSTEMS[system]["length"])
    run = given["run"]
    if run is None:
        return answer(values)
    if at_most(run, centred_run):
        return answer(values, "pass")
    if at_most(run, aimed_run):
        return answer(values, "pass", reason("set_at_aim"))
    return answer(values, "fail", reason("run_too_long"))


def _free(given: dict) -> tuple[float, float]:
    """What may be used up from end to end, and from the middle to the nearer end."""
    slot, travel = given["slot"], given["travel_outward"]
    if (slot is None) == (travel is None):
        raise Refused("one_of" if slot is not None else "missing", "slot")
    needed = "shank" if travel is None else "travel_inward"
    if given[needed] is None:
        raise Refused("missing", needed)
    if travel is not None:
        if not given["metal_low"] < given["metal_high"]:
            raise Refused("range_reversed", "metal_high", None)
        return travel + given["travel_inward"], min(travel, given["travel_inward"])
    play = half_play(given)
    return 2.0 * play, play
