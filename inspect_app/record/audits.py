"""An audit against the daily looks on the same panels: how often each found a drawn panel bad."""

from inspect_app.record.panel_result import SEVERITIES
from inspect_app.rules.share_bound import share_bound

CONFIDENCE = 0.95


def audits(lots: dict) -> dict:
    """``{audit lot id: {"areas", "audit", "foreman", "statement"}}``; each side ``{"found", "n", "low", "high"}``, the
    limits two-sided at 95 % (``share_bound``).

    A panel counts where it was drawn and is bad in any severity, or known in every one that was asked. The foreman's
    are those drawn by the lots of daily work among the panels the audit drew from. ``statement``: ``too_few`` where a
    side has none, ``overlap``, else ``audit_higher`` or ``audit_lower``: that two ranges overlap shows no difference,
    and is no proof that there is none.
    """
    work = [lots[lot_id] for lot_id in sorted(lots) if lots[lot_id]["purpose"] == "work"]
    return {lot_id: _audit(lots[lot_id], work) for lot_id in sorted(lots) if lots[lot_id]["purpose"] == "audit"}


def _audit(lot: dict, work: list) -> dict:
    there: dict = {}
    for row in lot["population"]:
        there.setdefault(row["area"], []).append((row["from"], row["to"]))
    audit = _rate(lot["drawn"])
    same = []
    for other in work:
        for panel in other["drawn"]:
            ranges = there.get(panel.get("area"), [])
            if [1 for low, high in ranges if low <= panel["panel"] <= high]:
                same.append(panel)
    foreman = _rate(same)
    return {"areas": sorted(there), "audit": audit, "foreman": foreman, "statement": _statement(audit, foreman)}


def _rate(panels: list) -> dict:
    found = n = 0
    for panel in panels:
        results = [panel["results"][one] for one in SEVERITIES if one in panel["results"]]
        if "bad" in results:
            found += 1
        elif not results or "unknown" in results:
            continue
        n += 1
    low, high = share_bound(found, n, CONFIDENCE, 2)
    return {"found": found, "n": n, "low": low, "high": high}


def _statement(audit: dict, foreman: dict) -> str:
    if not audit["n"] or not foreman["n"]:
        return "too_few"
    if audit["low"] > foreman["high"]:
        return "audit_higher"
    return "audit_lower" if audit["high"] < foreman["low"] else "overlap"
