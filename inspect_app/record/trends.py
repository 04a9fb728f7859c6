"""Trends of a job for whoever leads its crews: what fails, how often, whether the looks agree, how long it stays open.

Every figure is computed from the record alone, whatever order its entries came in, and names the entries it rests on.
"""

from inspect_app.record.trend_agreement import agreement
from inspect_app.record.trend_closing import closing
from inspect_app.record.trend_filter import NAMES, Filter, crew_key
from inspect_app.record.trend_pareto import pareto
from inspect_app.record.trend_rows import crew_names, finding_rows, look_counts
from inspect_app.record.trend_shares import shares

# What a lot, or a pair of looks, does not tell: a figure of theirs is not narrowed by it, and says so.
BLIND = {"shares": ("firm", "zone"), "agreement": ("firm", "zone")}


def trends(record: dict, asked: "dict | None" = None) -> dict:
    """``{"filters", "choices", "crews", "blind", "pareto", "shares", "agreement", "closing"}``.

    ``asked``: as ``trend_filter.Filter`` takes it, which raises Refused for what is no filter. ``choices``: ``{name:
    [values]}`` that the whole job has to narrow by; ``crews``: ``{crew's key: its name}``; ``blind``: ``{figure: [names
    of filters asked for that it cannot follow]}``. The four figures: ``trend_pareto.pareto``, ``trend_shares.shares``,
    ``trend_agreement.agreement`` and ``trend_closing.closing``.
    """
    wanted = Filter(asked)
    rows = finding_rows(record, wanted)
    return {
        "filters": wanted.told(), "choices": _choices(record), "crews": crew_names(record),
        "blind": {name: [one for one in BLIND[name] if one in wanted.wanted] for name in BLIND},
        "pareto": pareto(rows, look_counts(record, wanted)), "shares": shares(record, wanted),
        "agreement": agreement(record, wanted), "closing": closing(record, rows),
    }  # fmt: skip


def _choices(record: dict) -> dict:
    """By name, sorted: all that its findings are counted under, and the areas, crews, systems and items of its lots."""
    found: dict = {name: {} for name in NAMES}
    for row in finding_rows(record):
        for name in NAMES:
            found[name][row[name]] = True
    for lot in record["lots"].values():
        for row in lot["population"]:
            found["area"][row["area"]] = True
        for severity in lot["asks"]:
            found["severity"][severity] = True
            for name in lot["asks"][severity]:
                found["item"][name] = True
    for series in record["series"].values():
        found["crew"][crew_key(series["crew"])] = True
        found["assembly"][series["assembly"] or ""] = True
    return {name: sorted(found[name]) for name in NAMES}
