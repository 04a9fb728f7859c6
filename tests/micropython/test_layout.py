"""The phone lays a roof out as the server does, to the last panel, station and fault."""

import copy
import json
from pathlib import Path
from typing import Any

import pytest

from inspect_app.record.ask import ask
from tests.micropython.test_parity import compare
from tests.record.test_own_panel import TAB, context
from tests.rules.roofs import HIP, SHAPES, VALLEY_AND_HIP, assembly, by_chance, q, zone_map
from tests.rules.test_layout_faults import APPROVED, BAD
from tests.seed import SEED

SPACED = assembly(field="12", edge="6", corner="4")


def told(call: str, area: Any, approved: Any = SPACED, **given: Any) -> str:
    return json.dumps({"call": call, "area": area, "assembly": approved, **given})


def requests(body: dict[str, Any]) -> list[str]:
    """Every call about one roof."""
    body = copy.deepcopy(body) | ({} if "zone_map" in body else {"zone_map": zone_map(eave=3, hip=2, rake=3)})
    places = [told("place_at", body, panel=2, from_low_end=q(at, "mm")) for at in ("333.3", "1e6")]
    panels = [told("panel", body, number=number) for number in (2, 999)]
    return [told("layout", body), told("zones", body), *panels, *places]


def judged(panel: int) -> list[str]:
    return [json.dumps({"call": "judge_item", "item": TAB, "context": context(body, panel, at="1", end=end)})
            for body in (HIP, VALLEY_AND_HIP) for end in ("low", "high")]  # fmt: skip


def test_the_phone_lays_out_every_shape_and_names_every_fault_as_the_server_does(tmp_path: Path) -> None:
    shapes = [one for body in SHAPES.values() for one in requests(body)]
    wild = [told("layout", by_chance(seed) | {"coverage": q("3", "m")}) for seed in range(SEED, SEED + 6)]
    faults = [told("layout", body | {"coverage": q("16", "ft")}, APPROVED) for body, _ in BAD[::2]]
    answers = [json.loads(ask(one)) for one in shapes]
    assert {next(iter(one)) for one in answers} == {"ok", "refused"}
    compare([*shapes, *wild, *faults, *judged(3)], tmp_path)


@pytest.mark.soak
def test_a_hundred_outlines_of_chance_are_laid_out_alike(tmp_path: Path) -> None:
    compare([one for seed in range(SEED, SEED + 100) for one in requests(by_chance(seed))], tmp_path)
