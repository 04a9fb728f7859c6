"""What a roof's layout costs the phone's interpreter, and how that grows with the stations."""

import json
import tempfile
from pathlib import Path
from typing import Any

from inspect_app.record.ask import ask
from tests.bench.measure import Row, seconds
from tests.micropython.node import node
from tests.rules.roofs import area, assembly, q, zone_map


def asking(panels: int, length: int) -> str:
    """The layout of a roof of panels of 16 in, strips along all of its edges; a station a foot and more."""
    width = f"{panels * 4 / 3:.6f}"
    body: dict[str, Any] = area([(0, 0), (width, 0), (width, length), (0, length)], "eave rake ridge rake")
    body |= {"coverage": q("16", "in"), "zones": ["field"], "zone_map": zone_map(eave=4, rake=4, ridge=4)}
    return json.dumps({"call": "layout", "area": body, "assembly": assembly(field="12", edge="6", corner="6")})


def took(folder: Path, panels: int, length: int) -> float:
    asked = folder / "requests.json"
    asked.write_text(json.dumps([asking(panels, length)] * 10), "utf-8")
    return float(node("../bench/judge.mjs", str(asked)))


def rows() -> list[Row]:
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        few, some, many = [min(took(folder, *roof) for _ in range(2)) for roof in ((16, 25), (100, 50), (300, 190))]
        server = min(seconds(lambda: ask(asking(100, 50)), 4) for _ in range(3))
    return [
        Row("laying out 60,000 stations in MicroPython", "600", many / few, 8,
            "counted, not walked: what grows is the list of 300 panels, not the stations"),
        Row("laying out 6,000 stations in MicroPython", "600", some / few, 4, "the same"),
        Row("laying out 6,000 stations in MicroPython", "the same in CPython", some / server, 80,
            "an interpreter without a compiler, inside WebAssembly"),
    ]  # fmt: skip
