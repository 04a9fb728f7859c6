"""The foreman's looks against the audit's: how often both say the same, and how much of that is more than chance."""

from inspect_app.record.trend_filter import Filter
from inspect_app.record.trend_pairs import pairs
from inspect_app.rules.kappa import kappa

CONFIDENCE = 0.95
CELLS = ("both_bad", "foreman_only", "audit_only", "both_good")


def agreement(record: dict, wanted: Filter) -> dict:
    """``{"looks", "panels", "items", "pairs", "apart"}``.

    ``looks`` counts each pair of ``trend_pairs``, ``panels`` each panel once, bad on a side where any pair of it is:
    ``{"n", the four of CELLS, "agreement", "by_chance", "kappa", "error", "low", "high", "because"}`` as ``kappa@1``
    gives them at 95 %. Items of one panel hang together, so the interval of the panels is the one to rely on.
    ``items``: ``[{"key", "n", the four of CELLS}]``, where most differ first. ``pairs``: each with its ``cell``;
    ``apart``: ``{reason: [pair]}``, compared with nothing."""
    told = pairs(record, wanted)
    by_panel: dict = {}
    by_item: dict = {}
    for pair in told["pairs"]:
        bad = [pair[side]["result"] == "bad" for side in ("foreman", "audit")]
        pair["cell"] = _cell(bad)
        by_item.setdefault(pair["item"], []).append(pair["cell"])
        there = by_panel.setdefault((pair["area"], pair["panel"]), [False, False])
        by_panel[(pair["area"], pair["panel"])] = [there[0] or bad[0], there[1] or bad[1]]
    items = [dict(_counts(by_item[name]), key=name, n=len(by_item[name])) for name in by_item]
    items.sort(key=lambda one: (-one["foreman_only"] - one["audit_only"], -one["n"], one["key"]))
    return {
        "looks": _judged([pair["cell"] for pair in told["pairs"]]),
        "panels": _judged([_cell(by_panel[panel]) for panel in sorted(by_panel)]), "items": items,
        "pairs": told["pairs"], "apart": told["apart"],
    }  # fmt: skip


def _cell(bad: list) -> str:
    """Of ``[foreman, audit]``."""
    return CELLS[(0 if bad[0] else 2) + (0 if bad[1] else 1)]


def _counts(cells: list) -> dict:
    return {name: cells.count(name) for name in CELLS}


def _judged(cells: list) -> dict:
    told = _counts(cells)
    told.update(kappa([
        [told["both_bad"], told["foreman_only"]], [told["audit_only"], told["both_good"]],
    ], CONFIDENCE))  # fmt: skip
    return told
