"""Days of a crew as they are walked: planned, set, looked at where the draw says, closed. Invented."""

import json
from typing import Any

from inspect_app.record.lot_draw import places
from inspect_app.record.population import rows_of
from inspect_app.record.stops import drawn_panels
from tests.record.rhythm_sample import ITEMS, LEAD, PEOPLE, Site


def day(site: Site, low: int, high: int, *, n: int, fails: str = "", skip: int = 0, **more: Any) -> str:
    """A day's lot, closed: each drawn panel looked at while its leg is open, but for the first ``skip`` drawn; an item
    fails on the first drawn if wanted."""
    lot = site.plan(low, high, n=n, **more)
    record = site.record()
    body = record["lots"][lot]
    order = [panel for _, panel in drawn_panels(lot, body, rows_of(body["population"]))]
    for panel in sorted(order[skip:]):
        site.mark(lot, panel)
        for place in places(record, lot, panel, 3):
            station = site.station(panel, place["from_low_end"], lot=lot)
            for item in ITEMS:
                site.answer(station, item, "fail" if item == fails and panel == order[0] else "pass")
    site.mark(lot, high + 1)
    return lot


def request() -> str:
    """The fold of two days, one lot lost and accepted by a document that is not there, one with a panel not seen."""
    site = Site()
    lost = day(site, 1, 15, n=0, fails="dimple")
    day(site, 16, 30, n=1, skip=1, day="2026-11-26")
    body = {"lot": lost, "choice": "accept", "reason": "", "document": None, "reference": "", "name": "", "role": ""}
    site.say(LEAD, "disposition", lost, body)
    return json.dumps({"call": "fold", "entries": site.entries, "people": PEOPLE})
