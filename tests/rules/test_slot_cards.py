"""A card beside the slot, seen by the pinhole camera of ``pinhole.py``: the bound covers the truth at a tilt up to 30°.

The camera looks anywhere within an inch of the middle between card and slot, from 6 to 18 inches, turned any way; every
tap is off by up to 3 pixels in both directions, and the card's corners are tapped anywhere on their roundings.
"""

import math
import random

import pytest

from inspect_app.rules.rulebook import judge
from tests.rules.photograph import HEAD_RADIUS, card_beside, found_corners, found_marks, screw_in_slot
from tests.rules.pinhole import MIDDLE, SHANK, SIZE, camera, judged_slot, slot_marks, tapped

SEED, PHOTOGRAPHS, DRAWN = 20261125, 2000, 60


def scene(chance, steepest, play=None):
    """``(slot, offset, pixel, axis, corners)`` with the whole card in the picture; ``play``: how near to its slot's end
    the screw may stand."""
    while True:
        slot, turned = chance.uniform(1.0, 1.65), chance.uniform(0, math.pi)
        offset = chance.uniform(-1, 1) * (slot / 2 - (SHANK / 2 if play is None else play))
        corners, middle = card_beside(chance, turned)
        aim, way = chance.uniform(0, 1), chance.uniform(0, math.tau)
        looks_at = (middle[0] / 2 + aim * math.cos(way), middle[1] / 2 + aim * math.sin(way))
        pixel = camera(math.radians(chance.uniform(0, steepest)), chance.uniform(0, math.tau), chance.uniform(6, 18),
                       looks_at)  # fmt: skip
        if all(0 <= pixel(corner)[at] <= SIZE[at] for corner in corners for at in (0, 1)):
            return slot, offset, pixel, (math.cos(turned), math.sin(turned)), corners


def touched(chance, corners):
    """Each corner where it is tapped: anywhere from where the sides would meet to the middle of the rounding."""
    middle = [sum(one[at] for one in corners) / 4 for at in (0, 1)]
    inward = 0.93 / 25.4 * math.sqrt(2) * chance.uniform(0, 1)
    return [(*(one[at] + (middle[at] - one[at]) * inward / math.dist(one[:2], middle) for at in (0, 1)), 0.0)
            for one in corners]  # fmt: skip


def read(slot, marks, corners, **more):
    return judged_slot(judge, slot, marks, card=[[f"{one:.2f}" for one in corner] for corner in corners], **more)


def bent(point, share):
    """Where a lens puts a point that bends by ``share`` at the picture's corner."""
    across, down = (point[at] - MIDDLE[at] for at in (0, 1))
    more = 1 + share * (across * across + down * down) / (MIDDLE[0] ** 2 + MIDDLE[1] ** 2)
    return MIDDLE[0] + across * more, MIDDLE[1] + down * more


def covered(chance, photographs, steepest, bend=0.0):
    """``(share covered, 95 % error, median bound, reasons for none)`` of 2,000 pictures read."""
    errors, bounds, held, refused = [], [], 0, {}
    while len(errors) < photographs:
        slot, offset, pixel, axis, corners = scene(chance, steepest)
        seen = [*slot_marks(slot, offset, pixel, axis), *(pixel(one) for one in touched(chance, corners))]
        points = tapped(chance, [bent(point, bend) for point in seen])
        found = read(slot, points[:3], points[3:])
        if "offset" not in found["values"]:
            refused[found["reason"]["code"]] = refused.get(found["reason"]["code"], 0) + 1
            continue
        errors.append(abs(found["values"]["offset"]["value"] - offset))
        bounds.append(found["values"]["bound"]["value"])
        held += errors[-1] <= bounds[-1]
    share = held / len(errors)
    return share, sorted(errors)[int(len(errors) * 0.95) - 1], sorted(bounds)[len(bounds) // 2], refused


@pytest.mark.parametrize("steepest", [20, 30])
def test_with_a_card_the_bound_covers_the_truth_in_95_of_100_photographs(steepest):
    share, error, bound, refused = covered(random.Random(SEED), PHOTOGRAPHS, steepest)
    print(f"\n  slot with a card: {share:.1%} covered, 95 % within {error:.3f} in, half of the bounds below "
          f"{bound:.3f} in, tilt to {steepest}°; not read: {refused}")  # fmt: skip
    assert share >= 0.95 and error < 0.025 and bound < 0.035
    assert set(refused) <= {"photo_too_small", "photo_too_tilted"}  # a good card is never taken for none


@pytest.mark.parametrize("bend", [-0.03, 0.03])
def test_a_lens_that_bends_by_three_percent_costs_the_bound_nothing(bend):
    share, error, _, _ = covered(random.Random(SEED), 400, 30, bend)
    assert share >= 0.95 and error < 0.025


def test_the_marks_found_in_drawn_blurred_and_compressed_photographs_give_the_truth_within_the_bound():
    """Read off the pixels, with up to 3 pixels of error on top: pictures, not the projection's own formula."""
    chance, held, errors, none = random.Random(SEED), {True: 0, False: 0}, {True: [], False: []}, 0
    while len(errors[True]) + len(errors[False]) < DRAWN:
        with_card = len(errors[True]) <= len(errors[False])
        slot, offset, pixel, axis, corners = scene(chance, 30 if with_card else 20, HEAD_RADIUS + 0.06)
        shapes = screw_in_slot(slot, offset, axis)
        marks = tapped(chance, found_marks(pixel, shapes, slot_marks(slot, offset, pixel, axis)))
        if with_card:
            found = read(slot, marks, tapped(chance, found_corners(pixel, corners)))
        else:
            found = judged_slot(judge, slot, marks)
        if "offset" not in found["values"]:
            none += 1
            assert none < 60 and found["reason"]["code"] in ("photo_too_small", "photo_too_tilted")
            continue
        errors[with_card].append(abs(found["values"]["offset"]["value"] - offset))
        held[with_card] += errors[with_card][-1] <= found["values"]["bound"]["value"]
    print(f"\n  {DRAWN} photographs read off their pixels: largest error {max(errors[True]):.3f} in with a card to 30°,"
          f" {max(errors[False]):.3f} in without to 20°")  # fmt: skip
    assert held[True] >= 0.95 * len(errors[True]) and held[False] >= 0.95 * len(errors[False])


def reasons(approved_longer, raised, steepest):
    """Why 100 photographs of slots large enough in the picture are turned down, None for none: the approved slot is
    longer than the one seen, the card lies so much higher than the flange."""
    chance, told = random.Random(SEED), []
    while len(told) < 100:
        slot, offset, pixel, axis, corners = scene(chance, steepest)
        marks = tapped(chance, slot_marks(slot, offset, pixel, axis))
        if math.dist(*marks[:2]) > 260:
            found = read(slot + approved_longer, marks, [pixel((x, y, raised)) for x, y, _ in corners])
            told.append((found["reason"] or {}).get("code"))
    return told


def test_a_slot_that_is_not_the_approved_one_is_found_by_the_card():
    assert reasons(0.25, 0.0, 20).count("slot_length_differs") >= 99


def test_the_approved_slot_is_never_taken_for_another():
    assert "slot_length_differs" not in reasons(0.0, 0.0, 20)


def test_a_card_on_the_rib_instead_of_the_flange_is_found_by_the_slot_s_length():
    told = reasons(0.0, 1.75, 10)
    assert told.count("slot_length_differs") + told.count("card_shape") >= 99


@pytest.mark.parametrize(
    ("corners", "code"),
    [
        ([(0, 0), (1700, 0), (0, 1080), (1700, 1080)], "card_not_convex"),  # crosswise
        ([(0, 0), (1700, 0), (600, 200), (0, 1080)], "card_not_convex"),  # one tap inside
        ([(0, 0), (1700, 0), (1700, 0), (0, 1080)], "card_not_convex"),  # two on one spot
        ([(0, 0), (380, 0), (380, 240), (0, 240)], "card_too_small"),
        ([(0, 0), (1000, 0), (1000, 1000), (0, 1000)], "card_shape"),  # a square
        ([(0, 0), (1700, 0), (1700, 700), (0, 700)], "card_shape"),  # as flat as from 50° and yet no perspective
        ([(0, 0), (1700, 0), (2100, 1000), (400, 1000)], "card_shape"),  # a slanted one
        ([(0, 0), (1700, 0), (1150, 1000), (550, 1000)], "photo_too_tilted"),
    ],
)
def test_four_taps_that_no_card_can_have_are_turned_down(corners, code):
    marks = [(300, 1300), (800, 1300), (550, 1300)]
    found = read(1.0, marks, corners)
    assert (found["verdict"], found["reason"]["code"]) == ("not_determinable", code)
    assert "offset" not in found["values"]


@pytest.mark.parametrize("turned", [90, 180, 270, 37])
def test_a_picture_turned_or_cut_reads_the_same(turned):
    """No picture's size or middle is known to the rule."""
    chance, turn, told = random.Random(SEED), math.radians(turned), 0
    while told < 10:
        slot, offset, pixel, axis, corners = scene(chance, 25)
        points = [*slot_marks(slot, offset, pixel, axis), *(pixel(one) for one in corners)]
        other = [(700 + x * math.cos(turn) - y * math.sin(turn), 90 + x * math.sin(turn) + y * math.cos(turn))
                 for x, y in points]  # fmt: skip
        one, same = (read(slot, way[:3], way[3:])["values"]
                     for way in (points, other))  # fmt: skip
        assert one.keys() == same.keys()
        if "offset" in one:
            told += 1
            assert [same[name]["value"] for name in ("offset", "bound")] == pytest.approx(
                [one[name]["value"] for name in ("offset", "bound")], abs=2e-3)  # fmt: skip


def test_the_slot_s_ends_exchanged_turn_the_offset_round():
    slot, offset, pixel, axis, corners = scene(random.Random(SEED), 25)
    (ridge, eave, screw), card = slot_marks(slot, offset, pixel, axis), [pixel(one) for one in corners]
    one, other = (read(slot, marks, card)["values"] for marks in ((ridge, eave, screw), (eave, ridge, screw)))
    assert other["toward_ridge"]["value"] == pytest.approx(-one["toward_ridge"]["value"], abs=1e-9)


def test_the_card_may_be_tapped_from_any_corner_and_either_way_round():
    chance = random.Random(SEED)
    slot, offset, pixel, axis, corners = scene(chance, 15)
    marks, card = slot_marks(slot, offset, pixel, axis), [pixel(one) for one in corners]
    found = [read(slot, marks, way[at:] + way[:at])["values"] for way in (card, card[::-1]) for at in range(4)]
    for one in found:
        assert {name: one[name]["value"] for name in ("offset", "bound")} == pytest.approx(
            {name: found[0][name]["value"] for name in ("offset", "bound")}, abs=1e-3)  # fmt: skip
