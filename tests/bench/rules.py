"""A verdict by the phone's interpreter beside the same verdict by the server's."""

import json
import tempfile
from pathlib import Path

from inspect_app.record.ask import ask
from tests.bench.measure import Row, seconds
from tests.micropython.node import node
from tests.micropython.test_parity import VECTORS, judging


def rows() -> list[Row]:
    requests = [judging(one["rule"], one["inputs"]) for one in VECTORS]
    with tempfile.TemporaryDirectory() as folder:
        asked = Path(folder) / "requests.json"
        asked.write_text(json.dumps(requests), "utf-8")
        # In turns, as all ratios: each its own best.
        phone = server = float("inf")
        for _ in range(3):
            phone = min(phone, float(node("../bench/judge.mjs", str(asked))))
            server = min(server, seconds(lambda: [ask(request) for request in requests], 4) / len(requests))
    return [
        Row("a verdict in MicroPython", "the same in CPython", phone / server, 80,
            "an interpreter without a compiler, inside WebAssembly"),
        Row("a verdict in MicroPython", "10 ms", phone / 0.01, 1,
            "a phone ten times slower still answers in 100 ms, at once to a person (common practice, no source)"),
    ]  # fmt: skip
