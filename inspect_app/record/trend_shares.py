"""The share of bad panels lot by lot, with what each sample can tell of it and no more."""

from inspect_app.record.panel_result import SEVERITIES, given_at, panel_result
from inspect_app.record.trend_filter import Filter, crew_key
from inspect_app.rules.share_bound import share_bound
from inspect_app.rules.tail import hypergeometric

CONFIDENCE = 0.95
NOT_SET = ("sealed", "next", "dropped")
APART = 0.00135  # one side of three standard errors, as control charts draw them (W. A. Shewhart, 1931; from memory)


def shares(record: dict, wanted: Filter) -> list:
    """One for each of ``record.series`` with a lot that is wanted, in order of name: ``{"name", "crew", "assembly",
    "inspection", "because", "since", "whole", "points"}``, the points by day, then lot.

    A point: ``{"lot", "extensions", "digests", "day", "symbol", "called_for", "found", "n", "unknown", "share" or None,
    "low", "high", "stands"}``; ``whole`` the same figures of all its points together. A drawn panel counts where it is
    bad in a wanted severity or known in every wanted one that was asked; with items wanted, by these alone. The limits
    are exact, two-sided at 95 % (``share_bound``). ``stands``: ``higher`` or ``lower`` where a lot's number would come
    from the same share as the others with a chance of ``APART`` at most (hypergeometric, given all that was found: R.
    A. Fisher's exact test), else None: few looks never stand out.
    """
    given = _given(record, wanted) if "item" in wanted.wanted else None
    told = []
    for name in sorted(record["series"]):
        series = record["series"][name]
        if not wanted.takes("crew", crew_key(series["crew"])) or not wanted.takes("assembly", series["assembly"]):
            continue
        points = []
        for one in series["lots"]:
            lot = record["lots"][one["lot"]]
            area = lot["population"][0]["area"] if lot["population"] else ""
            if wanted.in_days(lot["day"]) and wanted.takes("area", area):
                points.append(_point(record, one, wanted, given))
        if points:
            whole = _figures(sum([one["found"] for one in points]), sum([one["n"] for one in points]))
            whole["unknown"] = sum([one["unknown"] for one in points])
            for point in points:
                point["stands"] = _stands(point, whole)
            told.append({
                "name": name, "crew": series["crew"], "assembly": series["assembly"],
                "inspection": series["inspection"], "because": series["because"], "since": series["since"],
                "whole": whole, "points": points,
            })  # fmt: skip
    return told


def _point(record: dict, one: dict, wanted: Filter, given: "dict | None") -> dict:
    lot = record["lots"][one["lot"]]
    parts = [lot] + [record["lots"][other] for other in lot["extensions"]]
    found = n = unknown = 0
    for part in parts:
        for panel in part["drawn"]:
            said = _panel(record, part, panel, wanted, given)
            found += said == "bad"
            n += said in ("bad", "good")
            unknown += said == "unknown"
    point = _figures(found, n)
    point.update({
        "lot": one["lot"], "extensions": list(lot["extensions"]), "digests": [part["digest"] for part in parts],
        "day": one["day"], "symbol": one["symbol"], "called_for": one["called_for"], "unknown": unknown,
    })  # fmt: skip
    return point


def _panel(record: dict, lot: dict, panel: dict, wanted: Filter, given: "dict | None") -> "str | None":
    """``bad``, ``good``, ``unknown``; None where it is not set or nothing wanted was asked."""
    if panel["state"] in NOT_SET:
        return None
    results = panel["results"]
    if given is not None:
        asks = {}
        for severity in lot["asks"]:
            asks[severity] = [name for name in lot["asks"][severity] if wanted.takes("item", name)]
        results = panel_result(panel.get("places") or [], asks, given, record["stations"])
    own = [results[severity] for severity in SEVERITIES if severity in results and wanted.takes("severity", severity)]
    if not own:
        return None
    return "bad" if "bad" in own else "unknown" if "unknown" in own else "good"


def _given(record: dict, wanted: Filter) -> dict:
    """What was answered at each station, of the wanted items alone."""
    given = given_at(record["answers"])
    return {
        station: {name: given[station][name] for name in given[station] if wanted.takes("item", name)}
        for station in given
    }  # fmt: skip


def _figures(found: int, n: int) -> dict:
    low, high = share_bound(found, n, CONFIDENCE, 2)
    return {"found": found, "n": n, "share": found / n if n else None, "low": low, "high": high}


def _stands(point: dict, whole: dict) -> "str | None":
    if not 0 < point["n"] < whole["n"] or not whole["found"]:
        return None
    so_many = 1.0
    if point["found"]:
        so_many = hypergeometric(whole["n"], point["n"], point["found"] - 1, whole["found"])[1]
    if so_many <= APART:
        return "higher"
    so_few = hypergeometric(whole["n"], point["n"], point["found"], whole["found"])[0]
    return "lower" if so_few <= APART else None
