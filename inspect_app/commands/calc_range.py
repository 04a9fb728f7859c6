"""Which numbers a rule takes for an input, in the unit in which one was given that it does not take."""

from inspect_app.commands.calc_input import quantity
from inspect_app.errors import BadInput
from inspect_app.rules.quantity import SANE
from inspect_app.rules.refused import Refused
from inspect_app.rules.rulebook import describe
from inspect_app.rules.unit import UNITS, change_unit

CODES = ("out_of_range", "negative", "not_above_zero")


def accepted_range(refused: Refused | BadInput, name: str | None) -> dict[str, object] | None:
    """``{"least", "most"}`` as text, the most with its unit, None where the refusal is not about a number's size.
    ``name``: the rule that refused; without it nothing is known."""
    if not isinstance(refused, Refused) or refused.code not in CODES or name is None:
        return None
    wants = describe(name).get(refused.field.partition("[")[0])
    if refused.accepted is not None:
        least, most = refused.accepted
        return {"least": f"{least:.7g}", "most": f"{most:.7g}"}
    try:
        given = quantity(str(refused.value), refused.field, "any")
    except BadInput:
        return None
    if wants is None or not isinstance(given, dict) or given["unit"] not in UNITS:
        return None
    unit, dimension = given["unit"], UNITS[given["unit"]][0]
    least, most, sane_unit = SANE[dimension]
    least, most = change_unit(least, sane_unit, unit), change_unit(most, sane_unit, unit)
    if dimension == "length" and wants["most_mm"] is not None:
        most = min(most, change_unit(wants["most_mm"], "mm", unit))
    if wants["least"] is not None and wants["dimension"] in (dimension, "lengths"):
        least = max(least, wants["least"])
    number = float(given["value"])
    if least < number <= most:  # refused for another reason than its size
        return None
    return {"least": f"{least:.7g}", "most": f"{most:.7g} {unit}"}
