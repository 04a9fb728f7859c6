"""Lots and jobs that no phone of ours would sign: each has its answer at once, and hides nothing of another."""

from typing import Any

import pytest

from tests.bodies import body_of
from tests.record.rhythm_sample import ASSEMBLY, FOREMAN, LEAD, Site, codes

ZERO = {"n": 1, "accept": 0, "defective": "4e-8", "confidence": "0.95"}


@pytest.mark.parametrize(
    "spoil",
    [
        lambda body: {"plans": {**body["plans"], "critical": None}},
        lambda body: {"plans": {**body["plans"], "of_another_build": 5}},
        lambda body: {"plans": {"of_another_build": {"n": 5}}},
        lambda body: {"size": 9 * 10**15, "plans": {**body["plans"], "critical": ZERO}},
        lambda body: {"places": 9 * 10**15, "night_places": 9 * 10**15, "n": 9 * 10**15},
    ],
)
def test_a_crafted_lot_is_kept_and_another_stays_decided(spoil: Any) -> None:
    site = Site()
    whole = site.plan(41, 60, n=1)
    drawn = site.body(1, 40)
    site.say(FOREMAN, "lot", drawn["subject"], {**drawn["body"], **spoil(drawn["body"])})
    site.mark(drawn["subject"], 20)
    site.mark(whole, 45)
    record = site.record()
    assert record["lots"][whole]["placed"] == 5 and record["lots"][whole]["decision"]["by"]["major"]["plan"]["n"] == 5
    assert record["lots"][drawn["subject"]]["placed"] == 20
    places = [len(stop.get("places") or []) for stop in record["lots"][drawn["subject"]]["drawn"]]
    assert max(places) <= 50


@pytest.mark.parametrize("spacing", ["1e-20", "1e-99", "0.01"])
def test_a_spacing_that_nobody_can_fasten_at_is_no_spacing(spacing: str) -> None:
    site = Site()
    body = body_of("assembly")
    for zone in body["zones"]:
        zone["spacing"] = {"value": spacing, "unit": "in"}
    site.say(LEAD, "assembly", ASSEMBLY, body, (site.assembly,))
    lot = site.plan(1, 40)
    site.mark(lot, 39)
    drawn = [stop for stop in site.record()["lots"][lot]["drawn"] if "panel" in stop]
    assert drawn and all(stop["places"] == [] and stop["results"]["major"] == "unknown" for stop in drawn)


@pytest.mark.parametrize("share", ["0" * 30 + "." + "1" * 30, "-1", "3"])
def test_a_share_not_seen_that_is_no_share_leaves_our_own_in_force(share: str) -> None:
    site = Site(sampling={"nonresponse": share, "places": 4})
    lot = site.plan(1, 40)
    record = site.record()
    assert record["sampling"]["nonresponse"] == "0.10" and record["job"]["sampling"]["own"] == ["places"]
    assert record["lots"][lot]["places"] == 4 and "draw_differs" not in codes(record)
