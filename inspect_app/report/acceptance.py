"""How a reading near its limit was accepted, and what that risks.

Guarded acceptance (ILAC-G8:09/2019, 4.2, w = U) passes only what lies inside by its own uncertainty at least: a wrong
pass has at most 2.5 % of chance. Simple acceptance (w = 0) takes the reading as it stands: up to 50 % at the limit.
"""

from typing import Any

from inspect_app.rules.refused import Refused
from inspect_app.rules.rulebook import describe

# Rules that hold something measured against a limit; a bare count is exact.
MEASURED = ("slot", "clip", "end_gap", "slope", "spacing", "thickness", "limit", "clearance")
SIMPLE = ("spacing",)  # unless the job says otherwise: the approved spacing is the target
UNCERTAIN = ("uncertainty", "metal_uncertainty")


def accepted(verdict: dict[str, Any] | None) -> dict[str, Any] | None:
    """``{"used": "guarded"|"simple", "known": whether an uncertainty entered, "risk": decimal text or None}`` of a
    verdict with ``rule``, ``inputs`` and ``values``; None where nothing that was measured was held against a limit."""
    name = str((verdict or {}).get("rule") or "").split("@")[0]
    inputs, values = (verdict or {}).get("inputs") or {}, (verdict or {}).get("values") or {}
    if verdict is None or name not in MEASURED or verdict.get("result") not in ("pass", "fail", "too_close"):
        return None
    if name == "limit" and not isinstance(inputs.get("reading"), dict):
        return None
    known = _some(values.get("bound")) or any(_some(inputs.get(one)) for one in UNCERTAIN)
    asked = inputs.get("acceptance") if "acceptance" in _inputs(str(verdict["rule"])) else None
    used = asked or ("simple" if name in SIMPLE else "guarded")
    risk = values.get("risk") if verdict.get("result") == "pass" else None
    return {
        "used": used if known else "simple",  # nobody said how far it may be off: it was taken as it stands
        "known": known,
        "risk": str(risk["value"]) if isinstance(risk, dict) and "value" in risk else None,
    }


def _some(quantity: Any) -> bool:
    """Whether it is an uncertainty at all: none stated is written as 0."""
    return isinstance(quantity, dict) and any(digit in str(quantity.get("value")) for digit in "123456789")


def acceptances(answers: list[dict[str, Any]], fits: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """Every reading that was held against a limit: ``{"used", "known", "risk", "rule"}`` with ``answer``,
    ``station`` and the area ``on``, or with ``area`` and ``line`` of a fit check."""
    told = [
        one["accepted"] | {"rule": one["working"]["rule"], "answer": one["id"], "station": one["station"],
                           "on": one["area"]}
        for one in answers if one["accepted"]
    ]  # fmt: skip
    return told + [
        line["accepted"] | {"rule": line["working"]["rule"], "area": one["area"], "line": line["line"]}
        for one in fits for line in one["lines"] if line["accepted"]
    ]  # fmt: skip


def _inputs(rule: str) -> dict[str, Any]:
    try:
        return dict(describe(rule))
    except Refused:  # a rule of another release
        return {}
