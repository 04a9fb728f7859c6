"""The inspection that a crew's series calls for on a day that is about to be drawn."""

from inspect_app.record.crew import crew_of
from inspect_app.record.decision import decide
from inspect_app.record.series import name_of, series


def calls_for(record: dict, crew: str, area: str, day: str) -> str:
    """``normal``, ``tightened``, ``reduced`` or ``stopped``.

    Drawing a day closes the crew's earlier days on the area, so these are decided first as the fold will decide them:
    what was not set by now has dropped out. Lots of the same day know nothing of each other.
    """
    lots, assemblies = {}, {}
    for told in record["series"].values():
        for one in told["lots"]:
            if one["day"] < day:
                for lot_id in [one["lot"]] + record["lots"][one["lot"]]["extensions"]:
                    lots[lot_id] = _closed(record["lots"][lot_id], crew, area)
                    assemblies[lot_id] = told["assembly"]
    sampling = record["sampling"]
    found = series(lots, assemblies, sampling, lambda lot, calls: decide(lot, sampling, calls))
    own = found.get(name_of({"crew": crew}, record["areas"][area].get("assembly")))
    return str(own["inspection"]) if own else "normal"


def _closed(lot: dict, crew: str, area: str) -> dict:
    lot = dict(lot)
    same = crew_of(lot) == crew_of({"crew": crew}) and lot["population"][0]["area"] == area
    lot["closed"] = lot["closed"] or same
    return lot
