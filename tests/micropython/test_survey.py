"""The phone tells what is around a place as the server does: distances, order, days, what nobody saw."""

import json
from pathlib import Path

from tests.micropython.test_parity import compare
from tests.record.test_survey import busy, scope


def test_the_phone_surveys_a_place_as_the_server_does(tmp_path: Path) -> None:
    record = busy().record()
    places = [scope(), scope(panel=1, radius="0.5"), scope(panel=61, at="0", radius="20"), scope(panel=99)]
    wear = {"mark": {"value": "0.5", "unit": "in"}, "uncertainty": {"value": "0.06", "unit": "in"},
            "distance": {"value": "40", "unit": "ft"}, "expansion": {"value": "6.5e-6", "unit": "/F"},
            "metal_low": {"value": "-20", "unit": "F"}, "metal_high": {"value": "180", "unit": "F"}}  # fmt: skip
    asked: list[object] = [{"call": "survey", "record": record, "place": place} for place in places]
    compare([json.dumps(one) for one in [*asked, {"call": "judge", "rule": "wear", "inputs": wear}]], tmp_path)
