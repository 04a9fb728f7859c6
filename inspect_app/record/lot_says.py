"""A lot's decision as sentences: codes of the words ``static/words/lots.json`` with their facts, in reading order.

A whole number in the facts is a count, a float is a share of one (0.13 is said as 13 %), a text stands as it is.
"""

from inspect_app.record.panel_result import SEVERITIES
from inspect_app.rules.decimal_text import read_decimal

FIVE, TEN = 5, 10  # lots running that switch back to normal, and to reduced (MIL-STD-105E 4.7)


def lot_says(lot: dict, sampling: dict, decided: "int | None") -> list:
    """``[{"severity", "code", "facts"}]``; severity None for what is said of the lot as a whole.

    ``decided``: how many lots of its crew's series are decided, None for a lot of no series.
    """
    decision = lot["decision"]
    said: list = []
    _say(said, None, _verdict(lot, decision, sampling))
    if lot.get("disposition"):
        pass  # what comes next was chosen, and stands beside the verdict
    elif decision["state"] == "not_accepted":
        _say(said, None, ("not_accepted.now", {}))
    elif decision["state"] == "not_determinable" and decision["reason"] != "nothing_set":
        _say(said, None, ("undecided.now", {}))
    if decision["laxer"]:
        _say(said, None, ("laxer." + decision["laxer"], {}))
    elif decision["stricter"]:
        _say(said, None, ("stricter", {}))
    for severity in SEVERITIES:
        for sentence in _severity(lot, decision["by"][severity]):
            _say(said, severity, sentence)
    for sentence in _sample(lot, decision, sampling):
        _say(said, None, sentence)
    _say(said, None, _series(decided))
    return said


def to_date_says(one: dict) -> dict:
    """The sentence for one severity of the job to date."""
    if not one["n"]:
        return {"code": "lot.says.to_date.none", "facts": {}}
    return {"code": "lot.says.to_date", "facts": {"found": one["found"], "looked": one["n"], "high": one["high"]}}


def audit_says(audit: dict) -> list:
    """``[{"code", "facts"}]`` of an audit beside the daily looks."""
    said = []
    for side in ("audit", "foreman"):
        one = audit[side]
        if one["n"]:
            facts = {"found": one["found"], "looked": one["n"], "low": one["low"], "high": one["high"]}
            said.append({"code": "lot.audit." + side, "facts": facts})
    for code in (audit["statement"], "caution"):
        said.append({"code": "lot.audit." + code, "facts": {}})
    return said


def _say(said: list, severity: "str | None", sentence: tuple) -> None:
    said.append({"severity": severity, "code": "lot.says." + sentence[0], "facts": sentence[1]})


def _verdict(lot: dict, decision: dict, sampling: dict) -> tuple:
    state, reason, figures = decision["state"], decision["reason"], decision["lot"]
    one = decision["by"].get(decision["severity"])
    if state == "not_accepted":
        facts = {"found": one["found"], "looked": one["n"], "accept": one["reject"] - 1}
        return "not_accepted." + decision["severity"], facts
    if state == "open":
        code = "open" if lot["purpose"] == "work" else "open.audit"
        return code, {"looked": figures["looked"], "drawn": figures["drawn"]}
    if state == "accepted":
        return "accepted", {}
    if reason == "sample_small":
        return reason, {"wanted": one["wanted"], "left": one["drawn"] - one["dropped"]}
    if reason == "draw_small":
        return reason, {"wanted": one["wanted"], "drawn": one["drawn"]}
    if reason == "nonresponse":
        unseen, drawn = figures["nonresponse"], figures["drawn"] - figures["dropped"]
        if one is not None:
            unseen, drawn = one["unknown"], one["drawn"] - one["dropped"]
        return reason, _unseen(unseen, drawn, sampling)
    return reason, {}


def _unseen(unseen: int, drawn: int, sampling: dict) -> dict:
    limit = read_decimal(sampling["nonresponse"], "nonresponse")
    return {"unseen": unseen, "drawn": drawn, "share": unseen / drawn, "limit": limit}


def _severity(lot: dict, one: dict) -> list:
    if one["state"] == "not_asked":
        return [("not_asked", {})]
    said, plan = [], one["plan"]
    if plan is None:
        return [("no_plan", {})]
    facts = {"found": one["found"], "looked": one["n"], "accept": one["accept"]}
    if one["accept"] < one["found"] < one["reject"]:
        facts["reject"] = one["reject"]
        said.append(("found.between", facts))
    else:
        facts["accept"] = one["reject"] - 1 if one["found"] >= one["reject"] else one["accept"]
        said.append(("found", facts))
    if one["unknown"]:
        said.append(("unknown", {"unseen": one["unknown"]}))
    said += _plan(plan)
    risk, counts = one["risk"], one["in_lot"]
    size = one["bound"]["of"] if lot["closed"] else plan["size"]
    if plan["n"] < plan["size"] and (one["n"] < size or not lot["closed"]) and risk["10"] < 1.0:
        code = "risk" if lot["purpose"] == "work" else "risk.other"
        said.append((code, {"half": risk["50"], "tenth": risk["10"], "safe": risk["95"]}))
        said.append(("risk_in_lot", {"size": size, "half_count": counts["50"], "tenth_count": counts["10"]}))
    if one["n"]:
        size = one["bound"]["of"]
        if one["n"] >= size:
            said.append(("bound.all", {"size": size, "found": one["found"]}))
        else:
            said.append(("bound", {"defectives": one["bound"]["defectives"], "size": size}))
    return said


def _plan(plan: dict) -> list:
    facts = {"wanted": plan["n"], "size": plan["size"]}
    if plan.get("level") is not None:
        for name in ("level", "aql", "letter", "accept", "reject"):
            facts[name] = plan[name]
        said = [("plan." + plan["inspection"], facts)]
    elif plan.get("defective") is not None:
        facts["confidence"] = read_decimal(plan["confidence"], "confidence")
        facts["share"] = read_decimal(plan["defective"], "defective")
        said = [("plan.zero_share", facts)]
    else:
        said = [("plan.zero", facts)]
    if plan["n"] >= plan["size"]:
        said.append(("plan.all", {}))
    return said


def _sample(lot: dict, decision: dict, sampling: dict) -> list:
    figures = decision["lot"]
    said = [("places", {"places": lot["places"]})]
    if figures["dropped"]:
        said.append(("dropped", {"dropped": figures["dropped"], "drawn": figures["drawn"]}))
    if figures["nonresponse"] and decision["reason"] != "nonresponse":
        said.append(("unseen", _unseen(figures["nonresponse"], figures["drawn"] - figures["dropped"], sampling)))
    if figures["changed"]:
        said.append(("changed", {"changed": figures["changed"]}))
    said.append(("by_hand", {}))
    return said


def _series(decided: "int | None") -> tuple:
    if decided is None:
        return "isolated.other", {}
    if decided < FIVE:
        return "isolated", {"lots": decided}
    return "series.five" if decided < TEN else "series.ten", {"lots": decided}
