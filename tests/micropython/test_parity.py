"""The phone's interpreter and the server's give the same answers from the same files."""

import json
import random
from pathlib import Path
from typing import Any

import pytest

from inspect_app.record.ask import ask
from inspect_app.rules.draw import _below
from inspect_app.rules.sampling_table import AQLS, LEVELS
from tests.bodies import body_of
from tests.micropython.node import node
from tests.record.fit_sample import requests as fit_checks
from tests.record.lot_days import request as lots_request
from tests.rules.hostile import spoiled
from tests.rules.pinhole import slot_marks, tapped
from tests.rules.test_slot_cards import scene

TOLD = ("both_bad", "first_only", "second_only", "both_good")
VECTORS = json.loads((Path(__file__).parents[1] / "vectors" / "rules.json").read_text("utf-8"))


def q(number: float, unit: str) -> dict[str, str]:
    return {"value": f"{number:.6f}", "unit": unit}


def random_requests(seed: int, count: int) -> list[str]:
    """Windows, slots, clips, spacings and slopes with numbers as wild as a roof has them."""
    chance = random.Random(seed)
    requests = []
    for at in range(count):
        low, span = chance.uniform(-40, 20), chance.uniform(60, 240)
        heat = {"expansion": {"value": f"{chance.uniform(5, 25):.3f}e-6", "unit": "/F"}, "metal_low": q(low, "F"),
                "metal_high": q(low + span, "F"), "metal_now": q(low + span * chance.uniform(-0.1, 1.1), "F")}
        size = {"slot": q(chance.uniform(0.3, 2), "in"), "shank": q(chance.uniform(0.1, 0.3), "in")}
        where = {"length": q(100, "ft"), "station": q(chance.uniform(0, 101), "ft"), "fixed_line": q(50, "ft")}
        points = {name: [chance.randrange(4000), chance.randrange(3000)] for name in ("ridge_end", "eave_end", "screw")}
        requests += [
            ("window", {**heat, **size, "distance": q(chance.uniform(0, 150), "ft")}),
            ("slot", {**heat, **size, **where, "taps": points}),
            ("clip", {**heat, **where, "travel_outward": q(1, "in"), "travel_inward": q(1, "in"),
                      "tab": q(chance.uniform(-1, 1), "in")}),
            ("spacing", {"gaps": [q(chance.uniform(1, 40), "in") for _ in range(5)], "limit": q(24, "in")}),
            ("slope", {"slope": q(chance.uniform(0, 60), "deg"), "minimum": q(3, "/12")}),
            ("slope", {way: [q(chance.gauss(18, 0.2), "deg") for _ in range(20)] for way in ("readings", "reversed")}),
            ("slot", {**heat, **size, **where, **beside_a_card(chance), "acceptance": "simple"}),
            *(sampled(chance) if at % 5 == 0 else []),
        ]  # fmt: skip
    return [judging(rule, inputs) for rule, inputs in requests]


def sampled(chance: random.Random) -> list[tuple[str, dict[str, Any]]]:
    """A lot of any size: its plan, its risk, its bounds, its draw, and the series that it stands in."""
    lot = chance.choice([chance.randint(2, 300), chance.randint(2, 60_000)])
    n, bad = chance.randint(1, min(lot, 500)), chance.randint(0, lot)
    found, sure = chance.randint(0, min(n, 5)), {"confidence": f"{chance.uniform(0.5, 0.999):.3f}"}
    share, accept = f"{chance.random() ** 3:.6f}", chance.randint(0, 5)
    seed = f"{chance.getrandbits(256):064x}"
    return [
        ("plan", {"lot": lot, "level": chance.choice(LEVELS), "aql": chance.choice(AQLS),
                  "inspection": chance.choice(["normal", "tightened", "reduced"])}),
        ("risk", {"n": n, "accept": accept, "lot": lot, "defectives": bad}),
        ("risk", {"n": n, "accept": accept, "share": share}),
        ("share_bound", {"n": n, "found": found, "sides": chance.choice([1, 2]), **sure}),
        ("lot_bound", {"lot": lot, "n": n, "found": found, **sure}),
        ("zero_plan", {"defective": max(bad, 1), "lot": lot, **sure}),
        ("draw", {"population": lot, "n": n, "seed": seed}),
        ("kappa", {**{name: chance.randint(0, 40) for name in TOLD}, **sure}),
        ("switch", {"history": chance.choices("AAAARMN", k=30), "inspection": "normal", "reduced": "allowed"}),
    ]  # fmt: skip


def beside_a_card(chance: random.Random) -> dict[str, Any]:
    """A slot and a card as a camera sees them."""
    slot, offset, pixel, axis, corners = scene(chance, 35)
    marks = tapped(chance, slot_marks(slot, offset, pixel, axis))
    points = [[f"{one:.2f}" for one in mark] for mark in (*marks, *tapped(chance, [pixel(one) for one in corners]))]
    taps = dict(zip(("ridge_end", "eave_end", "screw"), points, strict=False))
    return {"slot": q(slot, "in"), "shank": q(0.19, "in"), "taps": taps, "card": points[3:]}


def judging(rule: str, inputs: dict[str, Any]) -> str:
    return json.dumps({"call": "judge", "rule": rule, "inputs": inputs})


def fold_request() -> str:
    """Entries of every kind, with a correction, an orphan and a fork."""
    people = {"p": {"name": "P", "role": "foreman", "kids": ["k"]}}
    entries = []
    for at, kind in enumerate(["job", "assembly", "area", "walk", "station", "answer", "photo", "signoff", "area"]):
        payload = {"kind": kind, "subject": f"s-{kind}", "replaces": ["d2"] if at == 8 else [], "by": "p", "at": "",
                   "clock": {}, "seq": min(at, 7), "prev": f"d{at - 1}" if at else None, "body": body_of(kind)}
        entries.append({"digest": f"d{at}", "kid": "k", "payload": payload})  # fmt: skip
    return json.dumps({"call": "fold", "entries": entries, "people": people})


def same(one: Any, other: Any) -> bool:
    if isinstance(one, dict):
        return one.keys() == other.keys() and all(same(one[key], other[key]) for key in one)
    if isinstance(one, list):
        return len(one) == len(other) and all(same(a, b) for a, b in zip(one, other, strict=True))
    if isinstance(one, bool) or isinstance(other, bool):
        return one is other
    if isinstance(one, float) or isinstance(other, float):
        return abs(one - other) <= 1e-12 * max(abs(one), abs(other))
    return bool(one == other)


def compare(requests: list[str], folder: Path) -> None:
    asked = folder / "requests.json"
    asked.write_text(json.dumps(requests), "utf-8")
    answers = json.loads(node("run.mjs", str(asked)))
    assert len(answers) == len(requests) > 0
    for request, answer in zip(requests, answers, strict=True):
        assert same(json.loads(ask(request)), answer), request


def test_the_phone_judges_and_folds_as_the_server_does(tmp_path: Path) -> None:
    known = [judging(one["rule"], one["inputs"]) for one in VECTORS]
    odd = [json.dumps({"call": "nonsense"}), json.dumps({"call": "describe", "rule": "slot"})]
    compare([*known, *odd, fold_request(), lots_request(), *fit_checks(), *random_requests(20, 30)], tmp_path)


def test_the_phone_refuses_what_the_server_refuses_at_the_same_field(tmp_path: Path) -> None:
    compare([judging(rule, inputs) for rule, inputs in spoiled(VECTORS)[::9]], tmp_path)  # each rule, input, kind


@pytest.mark.soak
def test_the_phone_refuses_every_spoiled_input_as_the_server_does(tmp_path: Path) -> None:
    compare([judging(rule, inputs) for rule, inputs in spoiled(VECTORS)], tmp_path)


def test_both_skip_the_same_words_of_a_draw_at_the_edge_of_what_is_even() -> None:
    """Random words never come near the edge, where whole numbers of more than a double's digits are compared."""
    asked = [(m, word) for m in (1, 3, 10, 60, 59_999, 2**31 + 11) for end in [2**64 // m * m]
             for word in (end - 1, min(end, 2**64 - 1), 2**64 - 1, end - m)]  # fmt: skip
    here = [_below(m, iter([word, 2])) for m, word in asked]
    told = node("below.mjs", json.dumps([[str(m), str(word)] for m, word in asked]))
    assert json.loads(told) == here
    assert {2 % m for m, word in asked if word >= 2**64 // m * m} <= set(here)


def test_a_difference_between_the_interpreters_would_be_seen() -> None:
    assert not same({"value": 1.0}, {"value": 1.0 + 3e-12}) and same({"value": 1.0}, {"value": 1.0 + 3e-13})
    assert not same({"verdict": "pass"}, {"verdict": "fail"}) and not same([1, 2], [1])
    assert not same({"a": None}, {}) and not same({"a": False}, {"a": 0})


@pytest.mark.soak
def test_ten_thousand_random_cases_agree(tmp_path: Path) -> None:
    compare(random_requests(21, 2000), tmp_path)
