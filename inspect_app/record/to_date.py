"""What all drawn panels of the job say together, by severity."""

from inspect_app.record.panel_result import SEVERITIES
from inspect_app.rules.share_bound import share_bound

CONFIDENCE = 0.95


def to_date(lots: dict) -> dict:
    """``{severity: {"found", "n", "high"}}`` over the lots of daily work; ``high`` is the largest bad share not ruled
    out at 95 %, one-sided (``share_bound``), 1.0 while nothing was looked at. What is looked at again, in an audit or
    after rework, is not counted twice."""
    told = {}
    for severity in SEVERITIES:
        found = n = 0
        for lot_id in lots:
            if lots[lot_id]["purpose"] == "work":
                one = lots[lot_id]["decision"]["by"][severity]
                found, n = found + one["found"], n + one["n"]
        told[severity] = {"found": found, "n": n, "high": share_bound(found, n, CONFIDENCE, 1)[1]}
    return told
