"""A crew's series of lots on one assembly: which inspection it stands under, and which lots led there."""

from inspect_app.record.crew import crew_of
from inspect_app.rules.switch import switched

COUNTED = ("A", "R", "M")


def name_of(lot: dict, assembly: "str | None") -> str:
    """``<crew>|<assembly id>``, the crew as ``crew_of`` reads it."""
    return crew_of(lot) + "|" + (assembly or "")


def series(lots: dict, assemblies: dict, sampling: dict, judge) -> dict:  # type: ignore[no-untyped-def]
    """``{name: {"crew", "assembly", "inspection", "because", "since", "decided", "lots"}}`` over the lots of original
    inspection (purpose ``work``); what is reworked or audited is no lot of a series (MIL-STD-105E 4.7).

    ``assemblies``: ``{lot id: assembly id}``. ``judge(lot, called_for)`` decides a lot, given what its series stood
    under before its day, and returns the decision: two lots of one day know nothing of each other. An extension is one
    lot with what it extends. ``because``: a code with its facts; ``since``: the lot after which the present state
    stands (None: from the beginning); ``decided``: lots accepted or not. ``lots``: ``[{"lot", "day", "symbol",
    "called_for"}]`` in order (day, then id), by the major decision: A accepted, R not, M between the two numbers of
    reduced inspection, N not determinable. A lot still open has no symbol and waits.
    Stopped, a series begins again, tightened, with what the technical lead or the engineer chose for the lot that
    stopped it.
    """
    grouped: dict = {}
    extending = {one: True for lot in lots.values() for one in lot["extensions"]}
    parts = {}
    for lot_id in sorted(lots):
        lot = lots[lot_id]
        if lot["purpose"] == "work" and lot_id not in extending:
            grouped.setdefault(name_of(lot, assemblies.get(lot_id)), []).append(lot)
            parts[lot_id] = [lot] + [lots[one] for one in lot["extensions"]]
    return {name: _one(name, grouped[name], parts, sampling, judge) for name in sorted(grouped)}


def _one(name: str, lots: list, parts: dict, sampling: dict, judge) -> dict:  # type: ignore[no-untyped-def]
    lots = sorted(lots, key=lambda lot: (lot["day"], lot["id"]))
    state, because, since = "normal", {"code": "switch_none", "facts": {}}, None
    history: list = []  # since the last switch
    told: list = []
    at = 0
    while at < len(lots):
        today = [lot for lot in lots[at:] if lot["day"] == lots[at]["day"]]
        at += len(today)
        called_for = state
        for lot in today:
            symbol = _symbol([judge(part, called_for) for part in parts[lot["id"]]])
            told.append({"lot": lot["id"], "day": lot["day"], "symbol": symbol, "called_for": called_for})
            if symbol is None or state == "stopped":
                continue
            history.append(symbol)
            turn = switched(history, state, bool(sampling["reduced"]))
            if turn["inspection"] != state:
                state, because, since, history = turn["inspection"], turn["because"], lot["id"], []
            if state == "stopped" and [1 for part in parts[lot["id"]] if (part.get("disposition") or {}).get("stands")]:
                state, because = "tightened", {"code": "switch_corrected", "facts": {}}
    return {
        "crew": lots[0]["crew"].strip(), "assembly": name.split("|")[-1] or None, "inspection": state,
        "because": because, "since": since, "lots": told,
        "decided": len([1 for one in told if one["symbol"] in COUNTED]),
    }  # fmt: skip


def _symbol(decisions: list) -> "str | None":
    """The worst of a lot and its extensions."""
    symbols = [_of(decision["by"]["major"]) for decision in decisions]
    for symbol in ("R", None, "N", "M", "A"):
        if symbol in symbols:
            return symbol
    return None


def _of(major: dict) -> "str | None":
    if major["state"] == "accepted":
        return "M" if major["found"] > major["accept"] else "A"
    return {"not_accepted": "R", "open": None}.get(major["state"], "N")
