"""``thickness@1``: the base metal against the gauge that was tested.

The minimum is 95 % of the nominal thickness of the base metal, coating excluded (AISI S100 A2.4, steel; for other
metals the same share is common practice, no source). A coated reading below the bare minimum fails; above it, it
cannot pass without the coating's thickness. A heavier sheet stands (common practice, no source); a lighter one
voids what was tested.
"""

from inspect_app.rules.acceptance import accept
from inspect_app.rules.answer import all_measured, answer, reason
from inspect_app.rules.compare import at_most
from inspect_app.rules.gauge import thicknesses
from inspect_app.rules.inputs import wanted
from inspect_app.rules.refused import Refused
from inspect_app.rules.unit import SYSTEMS, change_unit

INPUTS = {
    "gauge": wanted("text"),
    "system": wanted("choice", choices=("MSG", "GSG", "USS", "BS", "mil")),
    "reading": wanted("length", required=False, most_mm=10.0, above_zero=True),
    "coated": wanted("boolean", required=False),
    "coating_thickness": wanted("length", required=False, most_mm=2.0),
    "uncertainty": wanted("length", required=False, most_mm=2.0),
    "tested_gauge": wanted("text", required=False),
    "tested_system": wanted("choice", required=False, choices=("MSG", "GSG", "USS", "BS", "mil")),
}
ORDER = ("reading", "coating_thickness")
HEAVIER = 1.05  # above the nominal by more than the rolling tolerance: say so (our choice)


def judge(given: dict, system: str) -> dict:
    """``nominal minimum`` of the gauge and, with a reading, ``base``: the reading less ``coating_thickness`` (both
    sides). With a tested gauge ``tested_nominal tested_minimum``: the reading is judged against those, and without
    one the gauges are compared by their base metal."""
    return judged(given, system, False)


def judged(given: dict, system: str, simple: bool) -> dict:
    """As :func:`judge`, by simple acceptance of the reading where ``simple``."""
    length = SYSTEMS[system]["length"]
    nominal, minimum = _known(given["gauge"], given["system"], length)
    values = all_measured({"nominal": nominal, "minimum": minimum}, length)
    ordered = minimum
    if given["tested_gauge"] is not None:
        if given["tested_system"] is None:
            raise Refused("missing", "tested_system")
        nominal, minimum = _known(given["tested_gauge"], given["tested_system"], length)
        values.update(all_measured({"tested_nominal": nominal, "tested_minimum": minimum}, length))
    reading = given["reading"]
    if reading is None:
        return answer(values) if given["tested_gauge"] is None else _compared(values, ordered, minimum)
    bound = given["uncertainty"] or 0.0
    coating = given["coating_thickness"]
    base = reading - (coating or 0.0)
    if not base > 0.0:  # a coating as thick as sheet and coating together: one of the two was misread
        raise Refused("out_of_range", "coating_thickness")
    values.update(all_measured({"base": base, "bound": bound}, length))
    verdict = accept(base, base, bound, (minimum, None), simple, values)
    if verdict == "fail":
        return answer(values, "fail", reason("metal_too_thin"))
    if coating is None and given["coated"] is not False:
        values.pop("risk", None)  # nothing was accepted
        code = "coating_unknown" if given["coated"] else "coated_or_bare"
        return answer(values, "not_determinable", reason(code))
    if verdict == "too_close":
        return answer(values, "too_close", reason("thickness_too_close"))
    heavier = not at_most(base - bound, nominal * HEAVIER)
    return answer(values, "pass", reason("heavier_stands") if heavier else None)


def _known(gauge: str, system: str, length: str) -> tuple[float, float]:
    nominal, minimum = thicknesses(gauge, system)
    return change_unit(nominal, "in", length), change_unit(minimum, "in", length)


def _compared(values: dict, ordered: float, tested: float) -> dict:
    """By the least base metal each may be delivered with: a galvanized gauge counts its zinc in the nominal."""
    if not at_most(tested, ordered):
        return answer(values, "fail", reason("lighter_voids"))
    return answer(values, "pass", None if at_most(ordered, tested) else reason("heavier_stands"))
