"""The phone tells a job's trends as the server does, from as much of the record as it hands over."""

import json
from pathlib import Path
from typing import Any

from inspect_app.record.trends import trends
from tests.micropython.node import node
from tests.micropython.test_parity import compare
from tests.record.lot_days import day
from tests.record.rhythm_sample import AREA, Site
from tests.record.test_trends import FOUR
from tests.record.trend_sample import Audited

FILTERS: list[dict[str, Any]] = [
    {}, {"severity": ["major"], "from": "2026-11-02"}, {"item": ["flange/dimple"], "crew": ["2"]},
    {"area": [AREA], "firm": [""]}, {"zone": ["field"], "to": "2026-11-26"},
]  # fmt: skip


def records() -> list[dict[str, Any]]:
    site = Site()
    day(site, 1, 15, n=0, fails="dimple")
    day(site, 16, 30, n=1, day="2026-11-26")
    site.photo(3)
    return [FOUR, Audited.of(3, 1, 2, 5).record(), site.record()]


def test_the_phone_tells_trends_as_the_server_does(tmp_path: Path) -> None:
    asked = [{"call": "trends", "record": one, "filters": wanted} for one in records() for wanted in FILTERS]
    asked.append({"call": "trends", "record": FOUR, "filters": {"to": "x"}})
    compare([json.dumps(one) for one in asked], tmp_path)


def test_what_the_phone_leaves_out_changes_no_figure(tmp_path: Path) -> None:
    file = tmp_path / "records.json"
    file.write_text(json.dumps(records()), "utf-8")
    handed = json.loads(node("as_needed.mjs", str(file)))
    assert len(json.dumps(handed)) < 0.7 * len(file.read_text("utf-8"))
    for whole, part in zip(records(), handed, strict=True):
        for wanted in FILTERS:
            assert trends(part, wanted) == trends(whole, wanted)
