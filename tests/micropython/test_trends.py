"""The phone tells a job's trends as the server does."""

import json
from pathlib import Path

from tests.micropython.test_parity import compare
from tests.record.lot_days import day
from tests.record.rhythm_sample import AREA, Site
from tests.record.test_trends import FOUR
from tests.record.trend_sample import Audited


def test_the_phone_tells_trends_as_the_server_does(tmp_path: Path) -> None:
    site = Site()
    day(site, 1, 15, n=0, fails="dimple")
    day(site, 16, 30, n=1, day="2026-11-26")
    records = [FOUR, Audited.of(3, 1, 2, 5).record(), site.record()]
    filters = [{}, {"severity": ["major"], "from": "2026-11-02"}, {"item": ["flange/dimple"], "crew": ["2"]},
               {"area": [AREA], "firm": [""]}, {"to": "x"}]  # fmt: skip
    asked = [{"call": "trends", "record": one, "filters": narrowed} for one in records for narrowed in filters]
    compare([json.dumps(one) for one in asked], tmp_path)
