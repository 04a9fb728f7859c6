"""``limit@2``: ``limit@1`` with the acceptance said: guarded unless ``simple``, and then with its risk."""

from inspect_app.rules.acceptance import ACCEPTANCE, accept, simply
from inspect_app.rules.limit import INPUTS as BEFORE
from inspect_app.rules.limit import ORDER as ORDER
from inspect_app.rules.limit import compared, told

INPUTS = dict(BEFORE, acceptance=ACCEPTANCE)


def judge(given: dict, system: str) -> dict:
    """As ``limit@1``; by simple acceptance of an uncertain reading also ``risk``."""
    values, reading, bound, low, high = compared(given, system)
    verdict = accept(reading, reading, bound, (low, high), simply(given), values)
    return told(values, verdict, reading, low)
