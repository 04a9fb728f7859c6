"""Cohen's kappa: against published examples of three kinds, the delta method done numerically, and many draws."""

import random

import numpy as np
import pytest
from scipy import stats

from inspect_app.rules.kappa import _normal, kappa
from tests.rules.sampling_cases import TABLES

# Fleiss, Cohen and Everitt, Psychological Bulletin 72, 1969 (from memory): 200 cases, kappa 0.429, error 0.054.
CLINICIANS = [[106, 10, 4], [22, 28, 10], [2, 12, 6]]
# Fleiss, Statistical Methods for Rates and Proportions, 2nd ed. 1981, Table 13.1 (from memory): kappa 0.68.
DIAGNOSES = [[75, 1, 4], [5, 4, 1], [0, 0, 10]]
# A statistics package's printed example (from memory): kappa 0.4842, error 0.1380, limits 0.2137 and 0.7547.
PRINTED = [[0, 4, 1], [0, 8, 0], [0, 1, 5]]


def test_published_tables_of_three_kinds_come_out_as_printed() -> None:
    told = kappa(CLINICIANS, 0.95)
    assert (told["kappa"], told["error"]) == (pytest.approx(0.429, abs=5e-4), pytest.approx(0.054, abs=5e-4))
    assert kappa(DIAGNOSES, 0.95)["kappa"] == pytest.approx(0.68, abs=5e-3)
    told = kappa(PRINTED, 0.95)
    found = [told[name] for name in ("kappa", "error", "low", "high")]
    assert found == pytest.approx([0.4842, 0.1380, 0.2137, 0.7547], abs=5e-5)


def of_shares(shares: np.ndarray) -> float:
    same, chance = np.trace(shares), float(shares.sum(1) @ shares.sum(0))
    return float((same - chance) / (1 - chance))


def by_delta_method(table: np.ndarray) -> float:
    """The same error with no formula of ours: the slope of kappa along each share, and a multinomial's covariance."""
    n, shares = table.sum(), table / table.sum()
    slopes = np.zeros_like(shares)
    for at in np.ndindex(*shares.shape):
        up, down = shares.copy(), shares.copy()
        up[at] += 1e-6
        down[at] -= 1e-6
        slopes[at] = (of_shares(up) - of_shares(down)) / 2e-6
    mean = (shares * slopes).sum()
    return float(np.sqrt(max(((shares * slopes**2).sum() - mean**2) / n, 0)))


def test_kappa_and_its_error_are_those_of_a_second_computation() -> None:
    chance = np.random.default_rng(51)
    told = 0
    for _ in range(TABLES):
        table = chance.integers(0, 60, (2, 2)) if chance.random() < 0.7 else chance.integers(0, 30, (3, 3))
        found = kappa(table.tolist(), 0.95)
        if found["kappa"] is None:
            continue
        assert found["kappa"] == pytest.approx(of_shares(table / table.sum()), rel=1e-9, abs=1e-12)
        if found["error"] is not None:
            assert found["error"] == pytest.approx(by_delta_method(table), rel=1e-4, abs=1e-6), table
            told += 1
    assert told > TABLES / 2


def test_the_interval_reaches_as_many_errors_as_the_normal_distribution_says() -> None:
    for confidence in (0.5, 0.8, 0.9, 0.95, 0.99, 0.999):
        assert _normal(confidence) == pytest.approx(stats.norm.ppf(0.5 + confidence / 2), rel=1e-9)


def test_the_interval_covers_the_truth_about_as_often_as_it_says_where_there_is_much_to_go_by() -> None:
    truth = np.array([0.25, 0.1, 0.05, 0.6])
    expected = of_shares(truth.reshape(2, 2))
    draws = np.random.default_rng(52).multinomial(400, truth, 600)
    found = [kappa(one.reshape(2, 2).tolist(), 0.95) for one in draws]
    held = [told["low"] <= expected <= told["high"] for told in found]
    assert 0.92 <= np.mean(held) <= 0.98


def test_it_makes_no_difference_who_is_the_first_and_which_word_is_the_first() -> None:
    chance = random.Random(53)
    for _ in range(50):
        a, b, c, d = (chance.randint(0, 12) for _ in range(4))
        told = [kappa(table, 0.9) for table in ([[a, b], [c, d]], [[a, c], [b, d]], [[d, c], [b, a]])]
        for other in told[1:]:
            assert (other["because"] or {}).get("code") == (told[0]["because"] or {}).get("code")
            for name in ("kappa", "low", "high"):
                assert other[name] == (None if told[0][name] is None else pytest.approx(told[0][name], abs=1e-9))


def test_an_interval_never_leaves_what_kappa_can_be_and_never_has_no_width() -> None:
    for a in range(5):
        for b in range(5):
            for c in range(5):
                for d in range(5):
                    told = kappa([[a, b], [c, d]], 0.99)
                    if told["low"] is not None:
                        assert -1 <= told["low"] < told["high"] <= 1
                        assert told["low"] - 1e-12 <= told["kappa"] <= told["high"] + 1e-12
                    else:
                        assert told["because"]["code"] in ("kappa_none", "kappa_one_kind", "kappa_no_interval")
