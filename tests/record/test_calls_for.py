"""What the phone proposes for a day is what its draw will take, through the phone's own door."""

import json
from typing import Any

from inspect_app.record.ask import ask
from tests.record.rhythm_sample import AREA, Site, drawn_panels


def called(record: dict[str, Any], crew: str, day: str) -> Any:
    asked = {"call": "calls_for", "record": record, "crew": crew, "area": AREA, "day": day}
    return json.loads(ask(json.dumps(asked)))["ok"]


def test_after_two_days_not_accepted_the_third_is_proposed_and_drawn_tightened() -> None:
    site = Site()
    for n, (low, high, day) in enumerate(((1, 20, "2026-11-23"), (21, 40, "2026-11-24"))):
        lot = site.plan(low, high, n=n, day=day)
        site.mark(lot, high)
        panel = drawn_panels(site.record(), lot)[0]
        site.look(lot, panel, fails="dimple")
    record = site.record()
    assert called(record, " 2 ", "2026-11-25") == "tightened"
    assert site.body(41, 60, n=2, day="2026-11-25")["body"]["inspection"] == "tightened"
    assert called(record, "another crew", "2026-11-25") == "normal"
    assert called(record, "2", "2026-11-23") == "normal", "of its own day a lot knows nothing"
