"""The decision of one lot, severity by severity, from what its drawn panels show."""

from inspect_app.record.judged_plan import judged_plans, laxer
from inspect_app.record.let_through import let_through
from inspect_app.record.panel_result import SEVERITIES
from inspect_app.rules.compare import at_most
from inspect_app.rules.decimal_text import read_decimal
from inspect_app.rules.lot_bound import lot_bound

CONFIDENCE = 0.95
TO_COME = ("sealed", "next")  # not set yet; in a closed lot: never set
STILL_OPEN = ("due", "part")  # set, and somebody may still look


def decide(lot: dict, sampling: dict, called_for: "str | None" = None, allowed: tuple = ()) -> dict:
    """What the record holds as the lot's ``decision``.

    ``lot``: as the fold holds it, ``drawn`` with ``results`` (``panel_result``), ``closed``, ``set`` (how many of its
    own panels are). ``called_for``: the inspection that its crew's series stood under before its day; None for a lot of
    no series. ``allowed``: as of ``judged_plans``. Gives ``{"state", "reason", "severity", "by": {severity: …}, "lot":
    {…}, "laxer", "stricter"}``:

    - *not accepted* as soon as a severity has found as many bad as its plan rejects, the lot open or not;
    - *open* until the lot is closed;
    - *not determinable*: nothing set, nothing asked, no plan, a smaller draw than its own plan asks
      for, fewer than half of the plan's sample left, or a larger
      share of drawn and set panels not fully looked at than the job allows (half and share are ours, no source);
    - else *accepted*.

    The sample of a severity is the beginning of the draw, as long as its plan asks; a critical failure counts on every
    drawn panel (MIL-STD-105E lets a lot be rejected for any critical defect: from memory). Panels never set drop out.
    """
    limit = read_decimal(sampling["nonresponse"], "nonresponse")
    panels = sorted(lot["drawn"], key=lambda panel: panel["order"])
    plans = judged_plans(lot, sampling, called_for, allowed)
    by = {severity: _by(lot, severity, panels, limit, plans[severity]) for severity in SEVERITIES}
    figures = _figures(lot, panels, by)
    state, reason, severity = _state(lot, by, figures, limit)
    return {
        "state": state, "reason": reason, "severity": severity, "by": by, "lot": figures,
        "laxer": called_for if laxer(lot["inspection"], called_for) else None,
        "stricter": called_for is not None and laxer(called_for, lot["inspection"]),
    }  # fmt: skip


def dropped(lot: dict, panel: dict) -> bool:
    """Whether a drawn panel dropped out: it was not set before its lot closed."""
    return panel["state"] == "dropped" or (lot["closed"] and panel["state"] in TO_COME)


def _by(lot: dict, severity: str, panels: list, limit: float, plan: "dict | None") -> dict:
    wanted = plan["n"] if plan else 0
    sample = panels if severity == "critical" or not plan else panels[:wanted]
    left = [panel for panel in sample if not dropped(lot, panel)]
    results = [(panel.get("results") or {}).get(severity) for panel in left]
    found, good = results.count("bad"), results.count("good")
    unknown = len([1 for panel in left if _unknown(lot, panel, severity)])
    one = {
        "state": "open", "reason": None, "n": found + good, "drawn": len(sample), "dropped": len(sample) - len(left),
        "found": found, "unknown": unknown, "wanted": wanted, "accept": plan["accept"] if plan else None,
        "reject": plan["reject"] if plan else None, "plan": plan, "risk": None, "in_lot": None,
        "bound": _bound(lot, found, found + good),
    }  # fmt: skip
    if plan:
        looked = found + good if lot["closed"] else len(left)
        points = let_through(looked, plan["reject"] - 1, _size(lot, looked))
        one["risk"], one["in_lot"] = points["share"], points["count"]
    one["state"], one["reason"] = _severity_state(lot, one, len(left), limit, bool((lot["asks"] or {}).get(severity)))
    return one


def _unknown(lot: dict, panel: dict, severity: "str | None") -> bool:
    """Set, and this severity (None: any) not known of it; in an open lot only where nobody will look any more."""
    results = panel.get("results") or {}
    asked = [severity] if severity else [one for one in SEVERITIES if (lot["asks"] or {}).get(one)]
    gone = lot["closed"] or panel["state"] not in TO_COME + STILL_OPEN
    return gone and bool([one for one in asked if results.get(one, "unknown") == "unknown"])


def _severity_state(lot: dict, one: dict, left: int, limit: float, asked: bool) -> tuple:
    if one["reject"] is not None and one["found"] >= one["reject"]:
        return "not_accepted", None
    if not asked:
        return "not_asked", None
    if not lot["closed"]:
        return "open", None
    if one["reject"] is None:
        return "not_determinable", "no_plan"
    if not left:
        return "not_determinable", "nothing_set"
    if one["drawn"] < one["wanted"] and one["plan"]["inspection"] == lot["inspection"]:
        return "not_determinable", "draw_small"  # its own plan asked for more: who draws chooses no smaller sample
    if left * 2 < one["wanted"] and left < lot["set"]:  # who has looked at all that is there has no small sample
        return "not_determinable", "draw_small" if one["drawn"] * 2 < one["wanted"] else "sample_small"
    if not at_most(float(one["unknown"]), limit * left):
        return "not_determinable", "nonresponse"
    return "accepted", None


def _size(lot: dict, looked: int) -> int:
    """Of the lot that the sample speaks for: what was set, in an open lot what is planned."""
    size: int = lot["set"] if lot["closed"] else lot["size"]
    return max(size, looked)


def _bound(lot: dict, found: int, n: int) -> dict:
    """How many of the panels set may be bad, 95 %, exact for this very lot."""
    size = max(lot["set"], n)
    bad = lot_bound(size, n, found, CONFIDENCE)
    return {"defectives": bad, "of": size, "share": bad / size if size else 1.0}


def _figures(lot: dict, panels: list, by: dict) -> dict:
    gone = [panel for panel in panels if dropped(lot, panel)]
    unseen = looked = 0
    for at in range(len(panels)):
        if panels[at] in gone or panels[at]["state"] in TO_COME:
            continue
        # Beyond its plan's sample a severity needs no look.
        wanted = [one for one in SEVERITIES if (lot["asks"] or {}).get(one) and at < by[one]["drawn"]]
        if [one for one in wanted if _unknown(lot, panels[at], one)]:
            unseen += 1
        elif not [one for one in wanted if (panels[at].get("results") or {}).get(one, "unknown") == "unknown"]:
            looked += 1
    return {
        "planned": lot["size"], "placed": lot["set"], "drawn": len(panels), "looked": looked, "nonresponse": unseen,
        "dropped": len(gone),
    }  # fmt: skip


def _state(lot: dict, by: dict, figures: dict, limit: float) -> tuple:
    """``(state, reason, severity)`` of the lot: the worst of its severities, the gravest first."""
    for severity in SEVERITIES:
        if by[severity]["state"] == "not_accepted":
            return "not_accepted", "found", severity
    if not lot["closed"]:
        return "open", None, None
    if not lot["set"]:
        return "not_determinable", "nothing_set", None
    if not [one for one in SEVERITIES if by[one]["state"] != "not_asked"]:
        return "not_determinable", "nothing_asked", None
    for severity in SEVERITIES:
        if by[severity]["state"] == "not_determinable":
            return "not_determinable", by[severity]["reason"], severity
    if not at_most(float(figures["nonresponse"]), limit * (figures["drawn"] - figures["dropped"])):
        return "not_determinable", "nonresponse", None
    return "accepted", None, None
