"""Vectors of the agreement of two people: published examples and hand calculations."""

from typing import Any

from tests.vectors.rules_capacity import HAND, vector
from tests.vectors.rules_sampling import refused


def table(both_bad: int, first_only: int, second_only: int, both_good: int, confidence: str = "0.95") -> dict[str, Any]:
    return {"both_bad": both_bad, "first_only": first_only, "second_only": second_only, "both_good": both_good,
            "confidence": confidence}  # fmt: skip


def agreed(source: str, counts: tuple[int, int, int, int], values: dict[str, float], reason: str | None = None,
           verdict: str | None = None, within: float = 1e-9) -> dict[str, Any]:  # fmt: skip
    told = {name: [value, ""] for name, value in values.items()}
    return vector(source, "kappa@1", table(*counts), told, verdict, reason, within=within)


VECTORS = [
    agreed("Sim and Wright, Physical Therapy 85(3), 2005, 39 patients (from memory): kappa 0.67", (22, 2, 4, 11),
           {"kappa": 0.67, "agreement": 0.8462, "by_chance": 0.5385}, within=5e-3),
    agreed("Cohen, same agreement and other margins, as an encyclopaedia prints it (from memory): 0.1304",
           (45, 15, 25, 15), {"kappa": 0.1304, "agreement": 0.6}, within=5e-5),
    agreed("Cohen, same agreement and other margins, as an encyclopaedia prints it (from memory): 0.2593",
           (25, 35, 5, 35), {"kappa": 0.2593, "agreement": 0.6}, within=5e-5),
    agreed("variance (0.01156 + 0.01587 + 0.01089 + 0.01458 − 0.0025) / 50 / 0.5⁴; " + HAND, (20, 5, 10, 15),
           {"kappa": 0.4, "agreement": 0.7, "by_chance": 0.5, "error": 0.12699606, "low": 0.15109229,
            "high": 0.64890771}, within=5e-8),
    agreed("half agree where half would by chance: nothing beyond it; " + HAND, (10, 10, 10, 10),
           {"kappa": 0, "by_chance": 0.5}),
    agreed("0.9 against 0.905 by chance: worse than chance alone; " + HAND, (0, 1, 1, 18),
           {"kappa": -1 / 19, "agreement": 0.9, "by_chance": 0.905}, "kappa_rough"),
    agreed("both found the same two bad of ten: no error, and no certainty; " + HAND, (2, 0, 0, 8),
           {"kappa": 1, "agreement": 1, "by_chance": 0.68}, "kappa_no_interval"),
    agreed("one never found anything: 0 whatever the other found; " + HAND, (0, 0, 5, 15), {"kappa": 0},
           "kappa_no_interval"),
    agreed("each found what the other did not; " + HAND, (0, 5, 5, 0), {"kappa": -1}, "kappa_no_interval"),
    agreed("nothing bad for anybody: 0 by 0; " + HAND, (0, 0, 0, 30), {"agreement": 1, "by_chance": 1},
           "kappa_one_kind", "not_determinable"),
    agreed("all bad for both: 0 by 0; " + HAND, (7, 0, 0, 0), {"agreement": 1}, "kappa_one_kind", "not_determinable"),
    agreed("nobody looked where the other did; " + HAND, (0, 0, 0, 0), {}, "kappa_none", "not_determinable"),
    refused("kappa@1", "confidence_outside", table(1, 2, 3, 4, "1")),
    refused("kappa@1", "negative", table(-1, 2, 3, 4)),
    refused("kappa@1", "not_integer", table(1, 2, 3, 4) | {"both_good": "many"}),
]  # fmt: skip
