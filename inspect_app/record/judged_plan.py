"""The plan that a lot is judged by: what its draw says, computed again, or the stricter one that its series calls for.

Nobody is believed about the numbers of a table: letter, sample and acceptance come from the lot's size, level and AQL.
"""

from inspect_app.record.lot_plans import lot_plans
from inspect_app.record.population import MOST
from inspect_app.rules.refused import Refused

LAXEST_LAST = ("stopped", "tightened", "normal", "reduced")


def laxer(inspection: str, called_for: "str | None") -> bool:
    """Whether a draw under ``inspection`` is laxer than what its series ``called_for`` (None: no series)."""
    return called_for is not None and LAXEST_LAST.index(inspection) > LAXEST_LAST.index(called_for)


def judged_plans(lot: dict, sampling: dict, called_for: "str | None", allowed: tuple = ()) -> dict:
    """``{severity: plan or None}``; a plan is ``{"n", "accept", "reject", "size", "inspection", …}``, from the table
    also ``level, aql, letter``, for zero acceptance by a share ``defective, confidence``. None where the lot's numbers
    give no plan: one slip spoils its own severity and no other.

    ``sampling``: the job's choices. ``allowed``: those of every version of the job; level, AQL and share that ask for
    less than each of them did are not the lot's to choose, and the job's judge.
    """
    size, inspection = lot.get("size"), lot["inspection"]
    if laxer(inspection, called_for):
        inspection = "tightened" if called_for == "stopped" else called_for
    found: dict = {}
    for severity in ("critical", "major", "minor"):
        found[severity] = None
        if type(size) is int and 0 < size <= MOST:
            own = _plan(lot, lot.get("plans") or {}, severity, inspection, sampling)
            least = [_plan(lot, {}, severity, inspection, choice) for choice in allowed]
            if least and all(_asks_less(own, one) for one in least):
                own = _plan(lot, {}, severity, inspection, sampling)
            found[severity] = own
    return found


def _asks_less(plan: "dict | None", other: "dict | None") -> bool:
    if plan is None or other is None:
        return other is not None
    return bool(plan["n"] < other["n"] or plan["accept"] > other["accept"] or plan["reject"] > other["reject"])


def _plan(lot: dict, own: dict, severity: str, inspection: str, sampling: dict) -> "dict | None":
    try:
        chosen = _choices(own, severity, lot["size"], lot["purpose"], sampling)
        return _judged(chosen, severity, lot["size"], lot["inspection"], inspection)
    except Refused:
        return None


def _judged(chosen: dict, severity: str, size: int, drawn_under: str, inspection: str) -> dict:
    plan: dict = lot_plans(size, "work", inspection, chosen)[severity]
    plan["reject"] = plan.get("reject", 1)
    if inspection != drawn_under:
        # A stricter inspection with its larger sample may allow more bad: of both numbers the stricter holds.
        drawn = lot_plans(size, "work", drawn_under, chosen)[severity]
        plan["accept"] = min(plan["accept"], drawn["accept"])
        plan["reject"] = min(plan["reject"], drawn.get("reject", 1))
    plan["size"], plan["inspection"] = size, inspection
    return plan


def _choices(own: dict, severity: str, size: int, purpose: str, sampling: dict) -> dict:
    """As the job's ``sampling``, for one severity: sound choices of ours stand in for the others."""
    needed = "major" if severity == "critical" else severity
    row = own.get(needed) or {}
    if not row.get("level") or not row.get("aql"):
        row = lot_plans(size, purpose, "normal", sampling)[needed]
    chosen: dict = {"critical": None, "major": {"level": "S-4", "aql": "2.5"}, "minor": {"level": "S-4", "aql": "10"}}
    chosen[needed] = {"level": row["level"], "aql": row["aql"]}
    if severity == "critical":
        stated = own.get("critical")
        chosen["critical"] = sampling["critical"] if stated is None else stated
    return chosen
