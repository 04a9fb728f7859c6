"""``thickness@2``: ``thickness@1`` with the acceptance said: guarded unless ``simple``, and then with its risk."""

from inspect_app.rules.acceptance import ACCEPTANCE, simply
from inspect_app.rules.thickness import INPUTS as BEFORE
from inspect_app.rules.thickness import ORDER as ORDER
from inspect_app.rules.thickness import judged

INPUTS = dict(BEFORE, acceptance=ACCEPTANCE)


def judge(given: dict, system: str) -> dict:
    """As ``thickness@1``; by simple acceptance of an uncertain reading also ``risk``."""
    return judged(given, system, simply(given))
