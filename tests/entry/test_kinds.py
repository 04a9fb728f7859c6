"""The table of kinds in the contributors' guide and the shapes in the code say the same."""

import re
from pathlib import Path

import pytest

from inspect_app.entry.kinds import BODIES, check_body
from inspect_app.entry.quantity import UNITS
from inspect_app.entry.refusal import Refused
from inspect_app.rules.unit import dimension_of

from .known import payload_of

GUIDE = (Path(__file__).parents[2] / "DEVELOPERS.md").read_text(encoding="utf-8")


def rows() -> dict[str, str]:
    """Kind to the text of its body in the guide's table."""
    found = re.findall(r"^\| `(\w+)` \| [^|]+ \| ([^|]+) \| [^|]+ \|$", GUIDE, re.MULTILINE)
    return {kind: body for kind, body in found if kind in BODIES}


def top_level(body: str) -> dict[str, bool]:
    """Field names of one row to whether they are required; what stands in brackets belongs to a field."""
    previous = None
    while previous != body:
        previous, body = body, re.sub(r"\([^()\[\]{}]*\)|\[[^()\[\]{}]*\]|\{[^()\[\]{}]*\}", "", body)
    fields = {}
    for part in body.split(","):
        match = re.search(r"`(\w+)`", part)
        if match:
            fields[match.group(1)] = not part.strip().endswith("?")
    return fields


def test_the_guide_has_a_row_for_every_kind() -> None:
    assert set(rows()) == set(BODIES)


@pytest.mark.parametrize("kind", sorted(BODIES))
def test_what_the_guide_requires_is_required_and_the_rest_is_not(kind: str) -> None:
    payload = payload_of(kind)
    documented = top_level(rows()[kind])
    assert set(payload["body"]) <= set(documented), "the vectors use only documented fields"
    for name, required in documented.items():
        body = {key: value for key, value in payload["body"].items() if key != name}
        if required:
            with pytest.raises(Refused) as caught:
                check_body(kind, body)
            assert (caught.value.code, caught.value.field) == ("missing_field", f"body.{name}")
        else:
            check_body(kind, body)
            check_body(kind, body | {name: None})


def test_the_units_are_the_guide_s() -> None:
    line = re.search(r"^Units: (.*?)\.$", GUIDE, re.MULTILINE | re.DOTALL)
    assert line
    documented = [unit for group in re.findall(r"`([^`]+)`", line.group(1)) for unit in group.split()]
    assert sorted(documented) == sorted(unit for units in UNITS.values() for unit in units)


def test_the_rulebook_knows_every_unit_in_the_same_dimension() -> None:
    for dimension, units in UNITS.items():
        assert {dimension_of(unit) for unit in units} == {dimension}
