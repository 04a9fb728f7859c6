"""The phone tells what became of a finding as the server does."""

import json
from pathlib import Path

from tests.micropython.test_parity import compare
from tests.record.rhythm_sample import PEOPLE
from tests.record.test_findings_order import wild


def test_the_phone_folds_findings_as_the_server_does(tmp_path: Path) -> None:
    sites = [wild(seed) for seed in range(12)]
    assert {one["state"] for site in sites for one in site.record()["findings"].values()} > {"open", "closed"}
    asked = [{"call": "fold", "entries": site.entries, "people": PEOPLE} for site in sites]
    compare([json.dumps(one) for one in asked], tmp_path)
