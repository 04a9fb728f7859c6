"""Judge a recorded verdict again from its own inputs. The verdict shown at the time stands; this stands
beside it."""

from typing import Any

from inspect_app.rules.refused import Refused
from inspect_app.rules.rulebook import judge


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
    return "same" if (again.get("verdict") or None) == _shown(verdict) else "different"


def _shown(verdict: dict[str, Any]) -> str | None:
    return verdict.get("result") or None
