"""How many panels of a lot are drawn, and what each severity accepts: the job's choices, read in the tables."""

from inspect_app.record.population import MOST
from inspect_app.rules.decimal_text import read_decimal
from inspect_app.rules.plan import plan
from inspect_app.rules.refused import Refused
from inspect_app.rules.zero_plan import zero_plan

SEVERITIES = ("critical", "major", "minor")


def lot_plans(size: int, purpose: str, inspection: str, sampling: dict) -> dict:
    """``{"critical", "major", "minor"}`` as a lot records them. Raises Refused for a level, an AQL, a share or a
    confidence that is none."""
    found: dict = {}
    for severity in ("major", "minor"):
        chosen = sampling["audit"] if purpose == "audit" and severity == "major" else sampling[severity]
        if purpose == "audit" and severity == "minor":
            chosen = {"level": sampling["audit"]["level"], "aql": sampling["minor"]["aql"]}
        told = plan(size, chosen["level"], chosen["aql"], inspection)
        found[severity] = {
            "level": chosen["level"], "aql": chosen["aql"], "letter": told["letter"], "n": told["n"],
            "accept": told["accept"], "reject": told["reject"],
        }  # fmt: skip
    found["critical"] = {"n": found["major"]["n"], "accept": 0}
    zero = sampling["critical"]
    if zero is not None and zero.get("defective") is not None:
        share = _between(zero["defective"], "defective")
        confidence = _between(zero.get("confidence") or "0.95", "confidence")
        found["critical"] = {
            "n": min(zero_plan(share, confidence, size, None), size), "accept": 0, "defective": zero["defective"],
            "confidence": zero.get("confidence") or "0.95",
        }  # fmt: skip
    return found


def largest(plans: dict) -> int:
    """The panels to draw: samples for several severities are beginnings of one draw."""
    n: int = max([plans[severity]["n"] for severity in plans])
    return n


def laxer_than(body: dict, sampling: dict) -> bool:
    """Whether a lot draws fewer, or accepts more, than these choices ask for under the inspection it states."""
    if body["size"] > MOST:
        return True
    try:
        wanted = lot_plans(body["size"], body["purpose"], body["inspection"], sampling)
    except (Refused, KeyError):
        return True
    for severity in SEVERITIES:
        stated = (body.get("plans") or {}).get(severity)
        if not stated or stated["n"] < wanted[severity]["n"] or stated["accept"] > wanted[severity]["accept"]:
            return True
    return bool(body["places"] < sampling["places"] or body["night_places"] < sampling["night_places"])


def as_computed(body: dict) -> bool:
    """Whether every plan that a lot states is what the tables give for its size, level, AQL and inspection, and the
    number drawn the largest of them."""
    plans = body.get("plans") or {}
    try:
        for severity in plans:
            stated = plans[severity] if severity in SEVERITIES else None
            if stated is None or stated.get("level") is None:
                continue
            told = plan(body["size"], stated["level"], stated["aql"], body["inspection"])
            if any(stated.get(name) != told[name] for name in ("letter", "n", "accept", "reject")):
                return False
        told = {severity: plans[severity] for severity in SEVERITIES if plans.get(severity)}
        return bool(told) and body["n"] == largest(told)
    except (Refused, KeyError, TypeError):
        return False


def _between(text: object, field: str) -> float:
    number = read_decimal(text, field)
    if not 0.0 < number < 1.0:
        raise Refused("out_of_range", field, text)
    return number
