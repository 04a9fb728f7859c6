"""What a plan lets through and what a sample rules out: against SciPy, and against lots that were really drawn from."""

import hashlib
import random

import numpy as np
import pytest
from scipy.special import bdtr, betaincinv
from scipy.stats import binom, hypergeom

from inspect_app.rules.draw import draw
from inspect_app.rules.lot_bound import lot_bound
from inspect_app.rules.refused import Refused
from inspect_app.rules.risk import acceptance, acceptance_in_lot, defectives_accepted, share_accepted
from inspect_app.rules.share_bound import share_bound
from inspect_app.rules.zero_plan import zero_plan
from tests.rules.sampling_cases import BIG, CASES, LOTS, chances


def test_the_chance_of_acceptance_from_a_series_is_scipy_s():
    chance = random.Random(41)
    for _ in range(CASES):
        n = chance.randint(1, 2000)
        accept, share = chance.randint(0, n), chance.random() ** chance.choice([1, 3])
        expected = float(bdtr(accept, n, share)) if accept < n else 1.0
        assert acceptance(n, accept, share) == pytest.approx(expected, rel=1e-9, abs=1e-300), (n, accept, share)


def test_the_chance_of_acceptance_of_a_lot_is_scipy_s():
    asked = [(lot, n, accept, bad) for lot, n, accept, bad, _ in chances(42)]
    asked += [(*BIG, accept, bad) for accept in (0, 3, 21) for bad in (0, 60, 600, 3000, 60_000)]
    lots, samples, accepts, bads = np.array(asked).T
    expected = hypergeom.cdf(accepts, lots, bads, samples)
    found = [acceptance_in_lot(*one) for one in asked]
    assert found == pytest.approx(list(expected), rel=1e-8, abs=1e-12)
    assert sum(0.001 < one < 0.999 for one in found) > 20  # it is not all certain


def test_the_share_accepted_with_a_probability_is_where_the_curve_has_it():
    for n, accept in ((5, 0), (5, 1), (20, 1), (80, 2), (500, 21)):
        for probability in (0.95, 0.5, 0.1):
            share = share_accepted(n, accept, probability)
            assert share == pytest.approx(1 - betaincinv(n - accept, accept + 1, probability), rel=1e-9)
    assert share_accepted(3, 3, 0.5) == 1.0


def test_the_most_bad_that_a_lot_may_hold_and_be_accepted_is_the_last_that_scipy_accepts():
    for lot, n, accept in ((60, 5, 0), (60, 5, 1), (500, 50, 2), (12, 12, 1), (*BIG, 10)):
        for probability in (0.95, 0.5, 0.1):
            bad = defectives_accepted(lot, n, accept, probability)
            curve = hypergeom.cdf(accept, lot, np.array([bad, min(bad + 1, lot)]), n)
            assert curve[0] >= probability and (bad == lot or curve[1] < probability), (lot, n, accept)


def test_the_bounds_of_a_share_are_the_beta_quantiles():
    for _, n, found, _, confidence in chances(43):
        left = (1 - confidence) / 2
        low = betaincinv(found, n - found + 1, left) if found else 0.0
        high = betaincinv(found + 1, n - found, 1 - left) if found < n else 1.0
        assert share_bound(found, n, confidence, 2) == pytest.approx((low, high), rel=1e-8, abs=1e-14)
        one = betaincinv(found + 1, n - found, confidence) if found < n else 1.0
        assert share_bound(found, n, confidence, 1) == pytest.approx((0.0, one), rel=1e-8)


def test_a_bound_of_a_share_covers_the_truth_as_often_as_it_promises():
    """Exactly, over every number that may be found: the promise is "at least"."""
    n = 30
    highs = np.array([share_bound(found, n, 0.95, 1)[1] for found in range(n + 1)])
    both = np.array([share_bound(found, n, 0.95, 2) for found in range(n + 1)])
    for share in np.linspace(0.01, 0.99, 25):
        weights = binom.pmf(np.arange(n + 1), n, share)
        assert weights[highs >= share].sum() >= 0.95 - 1e-12
        assert weights[(both[:, 0] <= share) & (share <= both[:, 1])].sum() >= 0.95 - 1e-12


def test_the_most_bad_not_ruled_out_is_the_last_that_scipy_does_not_reject():
    asked = [(lot, n, min(found, n), confidence) for lot, n, found, _, confidence in chances(44)]
    bads = [lot_bound(*one) for one in asked]
    lots, samples, founds, confidences = np.array(asked).T
    lots, samples, founds = lots.astype(int), samples.astype(int), founds.astype(int)
    at, most = np.array(bads), lots - (samples - founds)
    assert (hypergeom.cdf(founds, lots, at, samples) > 1 - confidences).all()
    beyond = np.minimum(at + 1, most)
    ruled_out = (hypergeom.cdf(founds, lots, beyond, samples) <= 1 - confidences) | (at == most)
    assert ruled_out.all() and (at < most).sum() > 100


def test_the_least_sample_that_must_show_one_is_scipy_s():
    chance = random.Random(45)
    asked = [(BIG[0], chance.randint(1, 3000)) for _ in range(10)]
    asked += [(lot, chance.randint(1, lot)) for lot in (chance.randint(1, 3000) for _ in range(CASES))]
    for confidence in (0.9, 0.95, 0.99):
        found = np.array([zero_plan(None, confidence, lot, bad) for lot, bad in asked])
        lots, bads = np.array(asked).T
        assert (hypergeom.cdf(0, lots, bads, found) <= (1 - confidence) * (1 + 1e-9)).all()
        assert (hypergeom.cdf(0, lots, bads, found - 1) > (1 - confidence) * (1 - 1e-9)).all()


@pytest.mark.parametrize(("lot", "n", "accept", "bad"), [(60, 5, 0, 6), (60, 5, 1, 12), (40, 8, 1, 6)])
def test_lots_with_known_bad_ones_are_accepted_as_often_as_computed(lot, n, accept, bad):
    """20,000 lots, each with its own bad pieces and its own draw: within four of its own standard errors."""
    chance = random.Random(46)
    accepted = 0
    for at in range(LOTS):
        spoiled = set(chance.sample(range(lot), bad))
        looked_at = draw(lot, n, hashlib.sha256(at.to_bytes(4, "big")).digest())
        accepted += sum(one in spoiled for one in looked_at) <= accept
    computed = acceptance_in_lot(lot, n, accept, bad)
    error = (computed * (1 - computed) / LOTS) ** 0.5
    assert abs(accepted / LOTS - computed) < 4 * error


def test_a_share_too_small_to_tell_from_none_is_refused_and_no_sample_is_empty():
    with pytest.raises(Refused, match="out_of_range"):
        zero_plan(1e-17, 0.95, None, None)
    assert zero_plan(0.5, 1e-30, 10, None) == zero_plan(None, 1e-30, 10, 9) == 1
