"""Judge a recorded verdict again from its own inputs. The verdict shown at the time stands; this stands
beside it."""

from typing import Any

from inspect_app.rules.refused import Refused
from inspect_app.rules.rulebook import judge
from inspect_app.rules.unit import change_unit

NEAR = 1e-9


def recompute(verdict: dict[str, Any]) -> str | None:
    """``same``, ``different``, or ``not_determinable`` (an unknown rule, inputs it refuses); None where no
    rule was used."""
    rule = verdict.get("rule")
    if not rule:
        return None
    if (verdict.get("reason") or {}).get("code") == "missing_input":
        return "same" if verdict.get("result") == "not_determinable" else "different"
    try:
        again = judge(rule, verdict.get("inputs") or {})
    except Refused:
        return "same" if verdict.get("result") == "not_determinable" else "different"
    except Exception:  # recorded inputs are anybody's data: a rule that breaks on them has no opinion
        return "not_determinable"
    # Some rules only compute; what follows from the number a person said, and that is not judged again.
    agree = again["verdict"] is None or again["verdict"] == verdict.get("result")
    return "same" if agree and _same_values(verdict.get("values") or {}, again["values"]) else "different"


def _same_values(recorded: dict[str, Any], again: dict[str, Any]) -> bool:
    """Every number recorded comes out again, within 1e-9 of itself."""
    for name, quantity in recorded.items():
        found = again.get(name)
        try:
            value = change_unit(float(quantity["value"]), quantity["unit"], found["unit"]) if found else None
        except (TypeError, KeyError, ValueError):
            return False
        if found is None or value is None or abs(value - found["value"]) > NEAR * max(abs(value), 1.0):
            return False
    return True
