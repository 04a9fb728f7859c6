"""The phone puts a crew's days together, and compares a label with the approval, as the server does."""

import json
from pathlib import Path

from tests.micropython.test_parity import compare
from tests.record.day_sample import COIL
from tests.record.rhythm_sample import AREA, PEOPLE
from tests.record.test_day_record import told


def test_the_phone_tells_the_same_days_and_compares_the_same_labels(tmp_path: Path) -> None:
    site = told()
    record = site.record()
    labels = [COIL, {**COIL, "gauge": 26, "coating": "ÄZ 50"}, {**COIL, "gauge": "9", "gauge_system": ""}, {}]
    asked = [
        {"call": "fold", "entries": site.entries, "people": PEOPLE},
        {"call": "fold", "entries": site.entries[::-2], "people": PEOPLE},
        *({"call": "material", "record": record, "areas": areas, "material": one}
          for one in labels for areas in ([AREA], [], ["none"])),
    ]  # fmt: skip
    compare([json.dumps(one) for one in asked], tmp_path)
