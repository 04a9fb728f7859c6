"""``in_force@1``: whether an approval is in force on a day. Its first and its last day count (common practice, no
source; an approval that says otherwise stands). Without a date of expiry nobody knows that it still stands.
"""

from inspect_app.rules.answer import answer, measured, reason
from inspect_app.rules.day_number import day_number
from inspect_app.rules.inputs import wanted
from inspect_app.rules.refused import Refused

INPUTS = {
    "day": wanted("text"),
    "issued": wanted("text", required=False),
    "expires": wanted("text", required=False),
}
ORDER = ()


def judge(given: dict, system: str) -> dict:
    """``days_left`` after ``day`` (0 on the last one), where an expiry is known. Dates are ``2028-03-01``. Raises
    Refused ``not_date`` and ``dates_reversed``."""
    day = day_number(given["day"], "day")
    issued = None if given["issued"] is None else day_number(given["issued"], "issued")
    expires = None if given["expires"] is None else day_number(given["expires"], "expires")
    if issued is not None and expires is not None and expires < issued:
        raise Refused("dates_reversed", "expires", given["expires"])
    values = {} if expires is None else {"days_left": measured(float(expires - day), "")}
    if issued is not None and day < issued:
        return answer(values, "fail", reason("not_yet_in_force"))
    if expires is None:
        return answer(values, "not_determinable", reason("expiry_unknown"))
    if day > expires:
        return answer(values, "fail", reason("expired"))
    return answer(values, "pass")
