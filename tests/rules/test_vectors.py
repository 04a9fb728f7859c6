"""Every released rule against the vectors: published and hand-derived values, named beside each."""

import json
from pathlib import Path
from typing import Any

import pytest

from inspect_app.rules.refused import Refused
from inspect_app.rules.rulebook import judge

VECTORS = json.loads((Path(__file__).parents[1] / "vectors" / "rules.json").read_text("utf-8"))
# What is printed to so many digits is compared to so many: the smallest step of what a source prints.
PRINTED = {"in": 6e-5, "mm": 6e-5, "deg": 6e-5, "%": 6e-5, "/12": 6e-5, "": 1e-12, "F": 1e-9, "dF": 1e-9, "K": 1e-9}


@pytest.mark.parametrize("vector", VECTORS, ids=lambda one: f"{one['rule']}: {one['source'][:60]}")
def test_a_released_rule_answers_as_its_source_says(vector: dict[str, Any]) -> None:
    if vector["refused"]:
        with pytest.raises(Refused) as refused:
            judge(vector["rule"], vector["inputs"])
        assert refused.value.code == vector["refused"]
        return
    found = judge(vector["rule"], vector["inputs"])
    assert found["verdict"] == vector["verdict"]
    assert (found["reason"] or {}).get("code") == vector["reason"]
    for name, (value, unit) in vector["values"].items():
        assert found["values"][name]["unit"] == unit
        told = found["values"][name]["value"]
        if isinstance(value, (str, list)):
            assert told == value
        else:
            assert told == pytest.approx(value, abs=vector.get("within") or PRINTED[unit], rel=0)
