"""``thickness@1``: the base metal against the gauge that was tested.

The minimum is 95 % of the nominal thickness of the base metal, coating excluded (AISI S100 A2.4, steel; for other
metals the same share is common practice, no source). A coated reading below the bare minimum fails; above it, it
cannot pass without the coating's thickness. A heavier sheet stands (common practice, no source); a lighter one
voids what was tested.
"""

from inspect_app.rules.answer import all_measured, answer, reason
from inspect_app.rules.compare import at_most, settle
from inspect_app.rules.gauge import thicknesses
from inspect_app.rules.inputs import wanted
from inspect_app.rules.unit import SYSTEMS, change_unit

INPUTS = {
    "gauge": wanted("text"),
    "system": wanted("choice", choices=("MSG", "GSG", "USS", "BS", "mil")),
    "reading": wanted("length", required=False, most_mm=10.0, above_zero=True),
    "coated": wanted("boolean", required=False),
    "coating_thickness": wanted("length", required=False, most_mm=2.0),
    "uncertainty": wanted("length", required=False, most_mm=2.0),
}
ORDER = ("reading", "coating_thickness")
HEAVIER = 1.05  # above the nominal by more than the rolling tolerance: say so (our choice)


def judge(given: dict, system: str) -> dict:
    """``nominal minimum`` and, with a reading, ``base``: the reading less ``coating_thickness`` (both sides)."""
    length = SYSTEMS[system]["length"]
    nominal_inch, minimum_inch = thicknesses(given["gauge"], given["system"])
    nominal, minimum = change_unit(nominal_inch, "in", length), change_unit(minimum_inch, "in", length)
    values = all_measured({"nominal": nominal, "minimum": minimum}, length)
    reading = given["reading"]
    if reading is None:
        return answer(values)
    bound = given["uncertainty"] or 0.0
    coating = given["coating_thickness"]
    base = reading - (coating or 0.0)
    values.update(all_measured({"base": base, "bound": bound}, length))
    verdict = settle(base - bound, base + bound, minimum, None)
    if verdict == "fail":
        return answer(values, "fail", reason("metal_too_thin"))
    if coating is None and given["coated"] is not False:
        code = "coating_unknown" if given["coated"] else "coated_or_bare"
        return answer(values, "not_determinable", reason(code))
    if verdict == "too_close":
        return answer(values, "too_close", reason("thickness_too_close"))
    heavier = not at_most(base - bound, nominal * HEAVIER)
    return answer(values, "pass", reason("heavier_stands") if heavier else None)
