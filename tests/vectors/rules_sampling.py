"""Vectors of sampling: plans, their risks, exact bounds, the draw and the switching of inspection."""

from typing import Any

from tests.vectors.rules_capacity import HAND, vector

TABLES = "MIL-STD-105E Tables I and II"
SEED = "00112233445566778899aabbccddeeff00112233445566778899aabbccddeeff"
ABC = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
AGAIN = "drawn again by Node: tests/node/draw_again.js"
SWITCHING = "MIL-STD-105E 4.7 and 4.8"


def plan(lot: int, level: str, aql: str, inspection: str, letter: str, found: tuple, more: str = "") -> dict[str, Any]:
    values = dict(zip(("n", "accept", "reject"), ([one, ""] for one in found), strict=True))
    return vector(f"{TABLES}: lot {lot}, {level}, AQL {aql}, {inspection}{more}", "plan@1",
                  {"lot": lot, "level": level, "aql": aql, "inspection": inspection},
                  values | {"letter": [letter, ""]})  # fmt: skip


def risk(source: str, inputs: dict[str, Any], acceptance: float, within: float) -> dict[str, Any]:
    return vector(source, "risk@1", inputs, {"acceptance": [acceptance, ""]}) | {"within": within}


def zero(source: str, defective: Any, confidence: str, n: int, lot: int | None = None) -> dict[str, Any]:
    inputs = {"defective": defective, "confidence": confidence} | ({"lot": lot} if lot else {})
    return vector(f"{source}; {HAND}", "zero_plan@1", inputs, {"n": [n, ""]})


def shares(source: str, found: int, n: int, sides: int, low: float, high: float, within: float) -> dict[str, Any]:
    inputs = {"found": found, "n": n, "confidence": "0.95", "sides": sides}
    return vector(source, "share_bound@1", inputs, {"low": [low, ""], "high": [high, ""]}) | {"within": within}


def in_lot(lot: int, n: int, found: int, bad: int) -> dict[str, Any]:
    return vector(f"largest D with P(at most {found} found) > 0.05, hypergeometric; {HAND}", "lot_bound@1",
                  {"lot": lot, "n": n, "found": found, "confidence": "0.95"}, {"defectives": [bad, ""]})  # fmt: skip


def drawn(population: int, seed: str, indices: list[int]) -> dict[str, Any]:
    return vector(AGAIN, "draw@1", {"population": population, "n": len(indices), "seed": seed},
                  {"indices": [indices, ""]})  # fmt: skip


def turn(told: str, history: str, begun: str, now: str, since: int, why: str, reduced: str = "not") -> dict[str, Any]:
    return vector(f"{SWITCHING}: {told}", "switch@1", {"history": history, "inspection": begun, "reduced": reduced},
                  {"inspection": [now, ""], "because": [why, ""], "since": [since, ""]}, None, why)  # fmt: skip


def refused(rule: str, code: str, inputs: dict[str, Any]) -> dict[str, Any]:
    return vector(f"refused: {code}", rule, inputs, {}, refused=code)


# Kiermeier, J. Stat. Software 26(6), 2008, printed output for n 10, c 3.
CURVE = {"0.01": 0.999998, "0.02": 0.9999695, "0.03": 0.9998529, "0.04": 0.9995574, "0.05": 0.9989715,
         "0.06": 0.9979707, "0.07": 0.9964239, "0.08": 0.9941987, "0.09": 0.9911662, "0.1": 0.9872048}  # fmt: skip
LOT = {"lot": 60, "level": "II", "aql": "2.5", "inspection": "normal"}
BOUND = {"found": 1, "n": 20, "confidence": "0.95", "sides": 2}
DRAW = {"population": 60, "n": 5, "seed": SEED}

VECTORS = [
    plan(5000, "II", "1.5", "normal", "L", (200, 7, 8)),
    plan(1000, "II", "1.0", "normal", "J", (80, 2, 3)),
    plan(1000, "II", "1.0", "tightened", "J", (80, 1, 2)),
    plan(1000, "II", "1", "reduced", "J", (32, 1, 3)),
    plan(120, "II", "4.0", "normal", "F", (20, 2, 3)),
    plan(120, "II", "1.0", "normal", "E", (13, 0, 1), ": the arrow up changes the sample too"),
    plan(120, "II", "1.5", "normal", "G", (32, 1, 2), ": the arrow down changes the sample too"),
    plan(60, "II", "2.5", "normal", "F", (20, 1, 2)),
    plan(300, "II", "0.65", "normal", "J", (80, 1, 2)),
    plan(20, "II", "0.65", "normal", "F", (20, 0, 1), ": the sample is the lot, look at all"),
    plan(100, "S-3", "4.0", "normal", "B", (3, 0, 1)),
    plan(8, "III", "2.5", "normal", "C", (5, 0, 1)),
    plan(60, "S-4", "10", "normal", "C", (5, 1, 2)),
    plan(1, "II", "10", "normal", "A", (1, 0, 1), ": a lot of one stands in no row, ours"),
    plan(1000000, "III", "0.010", "tightened", "R", (2000, 0, 1)),
    risk("7 CFR 42.140(c): of lots at 1.0 in 100, n 500, c 3, only 26 percent are accepted",
         {"n": 500, "accept": 3, "share": "0.01"}, 0.26, 0.006),
    *[risk(f"Kiermeier, J. Stat. Software 26(6), 2008: n 10, c 3, share {share}",
           {"n": 10, "accept": 3, "share": share}, acceptance, 5e-8) for share, acceptance in CURVE.items()],
    risk("Kiermeier, J. Stat. Software 26(6), 2008: n 20, c 0", {"n": 20, "accept": 0, "share": "0.05"}, 0.35848592,
         5e-9),
    risk("Kiermeier, J. Stat. Software 26(6), 2008: n 20, c 0", {"n": 20, "accept": 0, "share": "0.15"}, 0.03875953,
         5e-9),
    *[risk(f"NIST handbook, n 52, c 3 (from memory): share {share}", {"n": 52, "accept": 3, "share": share}, acceptance,
           1e-3) for share, acceptance in {"0.01": 0.998, "0.06": 0.620, "0.12": 0.115}.items()],
    risk("C(45,8)/C(50,8); " + HAND, {"n": 8, "accept": 0, "lot": 50, "defectives": 5}, 0.401493, 5e-7),
    risk("a tenth of a lot of 50 is 5 of it; " + HAND, {"n": 8, "accept": 0, "lot": 50, "share": "0.1"}, 0.401493,
         5e-7),
    risk("0.9 to the power of 8; " + HAND, {"n": 8, "accept": 0, "share": "0.1"}, 0.43046721, 1e-12),
    risk("none bad is always accepted; " + HAND, {"n": 8, "accept": 0, "share": 0}, 1.0, 1e-12),
    risk("all bad is never accepted; " + HAND, {"n": 8, "accept": 7, "share": 1}, 0.0, 1e-12),
    *[risk(f"binomial inverse, laid out as MIL-STD-105E Table X ({HAND}): n 80, c {accept}, {percent} % is accepted so",
           {"n": 80, "accept": accept, "share": f"{percent / 100:.6f}"}, at, within)
      for accept, percent, at, within in [(2, 0.55, 0.99, 1e-3), (2, 3.33, 0.5, 1e-3), (1, 0.446, 0.95, 1e-3),
                                          (1, 4.78, 0.1, 1e-3), (0, 0.863, 0.5, 1e-3), (0, 2.84, 0.1, 1e-3)]],
    *[zero(f"least n with (1 − {share})ⁿ ≤ 1 − {confidence}", share, confidence, n)
      for confidence, share, n in [("0.95", "0.05", 59), ("0.95", "0.1", 29), ("0.9", "0.1", 22), ("0.95", "0.01", 299),
                                   ("0.99", "0.01", 459), ("0.95", "0.02", 149), ("0.9", "0.05", 45)]],
    *[zero(f"least n with C({lot - bad}, n)/C({lot}, n) ≤ 0.05", bad, "0.95", n, lot)
      for lot, bad, n in [(50, 5, 22), (100, 5, 45), (200, 10, 51), (500, 25, 56), (40, 4, 21), (1000, 20, 138)]],
    zero("a twentieth of 500 is 25 of it", "0.05", "0.95", 56, 500),
    zero("a twentieth of 50 is 2.5, so 3 of it: (50 − n)(49 − n)(48 − n) ≤ 5880", "0.05", "0.95", 31, 50),
    zero("0.5² is exactly what 0.75 leaves", "0.5", "0.75", 2),
    zero("0.9² is exactly what 0.81 leaves", "0.1", "0.19", 2),
    zero("one bad of one: look at it", 1, "0.95", 1, 1),
    shares("SciPy documentation, BinomTestResult.proportion_ci: 7 of 50", 7, 50, 2, 0.05819170033997342,
           0.26739600249700846, 1e-12),
    shares("1 − 0.025^(1/29); " + HAND, 0, 29, 2, 0.0, 0.1194448691, 5e-11),
    shares("1 − 0.05^(1/59); " + HAND, 0, 59, 1, 0.0, 0.04950761, 5e-9),
    shares("0.025^(1/20), all found; " + HAND, 20, 20, 2, 0.83156653, 1.0, 5e-9),
    in_lot(50, 8, 0, 14),
    in_lot(100, 20, 0, 12),
    in_lot(200, 32, 1, 26),
    in_lot(500, 50, 2, 58),
    in_lot(1200, 80, 2, 89),
    vector("nothing was left unseen; " + HAND, "lot_bound@1", {"lot": 12, "n": 12, "found": 3, "confidence": "0.95"},
           {"defectives": [3, ""]}),
    drawn(60, SEED, [54, 43, 38, 35, 5]),
    drawn(60, SEED, [54, 43, 38, 35, 5, 36, 11, 1, 25, 6, 23, 17, 49]),
    drawn(60000, ABC, [32766, 10219, 3011, 22923, 18235, 957, 22983, 40517, 58359, 18945, 54742, 15336, 29677]),
    drawn(1, ABC, [0]),
    drawn(8, ABC, [6, 0, 3, 1, 7, 5, 4, 2]),
    drawn(40, "00", [1, 31, 38, 39, 10]),
    drawn(1000000, SEED, [415494, 362072, 798888, 828201, 708513]),
    drawn(3, ABC, []),
    vector("capital digits are the same seed", "draw@1", {"population": 8, "n": 2, "seed": ABC.upper()},
           {"indices": [[6, 0], ""]}),
    turn("2 of 5", "A,A,R,A,R", "normal", "tightened", 5, "switch_two_not_accepted"),
    turn("2 of 2", "R,R", "normal", "tightened", 2, "switch_two_not_accepted"),
    turn("2 of 6 is not 2 of 5", "R,A,A,A,A,R", "normal", "normal", 0, "switch_none"),
    turn("5 in a row accepted", "A,R,A,A,A,A,A", "tightened", "normal", 7, "switch_five_accepted"),
    turn("4 in a row are not 5", "A,A,A,A", "tightened", "tightened", 0, "switch_none"),
    turn("10 in a row, and it was allowed", ",".join("A" * 10), "normal", "reduced", 10, "switch_ten_accepted",
         "allowed"),
    turn("10 in a row, and it was not", ",".join("A" * 10), "normal", "normal", 0, "switch_none"),
    turn("one not accepted ends reduced inspection", "A,A,R", "reduced", "normal", 3, "switch_reduced_not_accepted"),
    turn("one between accept and reject does too", "A,M,A", "reduced", "normal", 2, "switch_reduced_between"),
    turn("5 not accepted, counted together, stop", "R,A,R,A,A,R,R,A,R", "tightened", "stopped", 9,
         "switch_five_not_accepted"),
    turn("what is stopped stays so", "A,A,A,A,A,A", "stopped", "stopped", 0, "switch_stopped"),
    turn("one switch after another", "R,R,A,A,A,A,A,A", "normal", "normal", 7, "switch_five_accepted"),
    turn("a lot not determined breaks a run of accepted ones (ours)", "A,A,A,N,A,A", "tightened", "tightened", 0,
         "switch_none"),
    turn("and takes no place among the five (ours)", "R,N,A,A,A,R", "normal", "tightened", 6,
         "switch_two_not_accepted"),
    refused("plan@1", "unknown_aql", LOT | {"aql": "2.4"}),
    refused("plan@1", "not_choice", LOT | {"level": "IV"}),
    refused("plan@1", "not_above_zero", LOT | {"lot": 0}),
    refused("risk@1", "sample_too_large", {"n": 9, "accept": 0, "lot": 8, "defectives": 1}),
    refused("risk@1", "more_bad_than_lot", {"n": 8, "accept": 0, "lot": 8, "defectives": 9}),
    refused("risk@1", "lot_missing", {"n": 8, "accept": 0, "defectives": 1}),
    refused("risk@1", "one_of", {"n": 8, "accept": 0, "lot": 8, "defectives": 1, "share": "0.1"}),
    refused("risk@1", "missing", {"n": 8, "accept": 0}),
    refused("risk@1", "share_outside", {"n": 8, "accept": 0, "share": "1.01"}),
    refused("zero_plan@1", "lot_missing", {"defective": 5, "confidence": "0.95"}),
    refused("zero_plan@1", "not_integer", {"defective": "2.5", "confidence": "0.95", "lot": 50}),
    refused("zero_plan@1", "more_bad_than_lot", {"defective": 51, "confidence": "0.95", "lot": 50}),
    refused("zero_plan@1", "confidence_outside", {"defective": "0.05", "confidence": 1}),
    refused("share_bound@1", "confidence_outside", BOUND | {"confidence": "0"}),
    refused("share_bound@1", "confidence_outside", BOUND | {"confidence": "-0.5"}),
    refused("share_bound@1", "found_above_n", BOUND | {"found": 21}),
    refused("share_bound@1", "sides_one_or_two", BOUND | {"sides": 3}),
    refused("lot_bound@1", "sample_too_large", {"lot": 5, "n": 6, "found": 0, "confidence": "0.95"}),
    refused("lot_bound@1", "found_above_n", {"lot": 50, "n": 6, "found": 7, "confidence": "0.95"}),
    refused("draw@1", "sample_too_large", DRAW | {"n": 61}),
    refused("draw@1", "not_hex", DRAW | {"seed": "0g"}),
    refused("draw@1", "not_hex", DRAW | {"seed": "abc"}),
    refused("switch@1", "not_a_lot", {"history": "A,X", "inspection": "normal"}),
    turn("no lot since the last switch", "", "tightened", "tightened", 0, "switch_none"),
    refused("switch@1", "not_letters", {"history": {}, "inspection": "normal"}),
    refused("switch@1", "not_letters", {"history": 0, "inspection": "normal"}),
    refused("switch@1", "not_choice", {"history": "A", "inspection": "loose"}),
]  # fmt: skip
