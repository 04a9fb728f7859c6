"""The phone folds a crew's days, draws a lot and tells its places as the server does."""

import json
from pathlib import Path

from tests.micropython.test_parity import compare
from tests.record.rhythm_sample import AREA, ASKED, FOREMAN, PEOPLE, ticket
from tests.record.test_rhythm_order import busy


def test_the_phone_keeps_the_rhythm_as_the_server_does(tmp_path: Path) -> None:
    site = busy()
    record = site.record()
    lots = sorted(record["lots"])
    day = {"call": "draw_lot", "record": record, "purpose": "work", "crew": "2", "day": "2026-11-27",
           "population": [{"area": AREA, "from": 51, "to": 60}], "ticket": ticket(FOREMAN, 4),
           "definitions": ASKED}  # fmt: skip
    audit = {**day, "purpose": "audit", "population": [{"area": AREA, "from": 1, "to": 30}]}
    asked = [
        {"call": "fold", "entries": site.entries, "people": PEOPLE},
        {"call": "fold", "entries": site.entries[::-2], "people": PEOPLE},
        day, audit, {**day, "inspection": "reduced"}, {**day, "population": []},
        *({"call": "places", "record": record, "lot": lot, "panel": 7, "count": 5} for lot in [*lots, "none"]),
    ]  # fmt: skip
    compare([json.dumps(one) for one in asked], tmp_path)
