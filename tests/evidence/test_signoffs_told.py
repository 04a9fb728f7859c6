"""A report's sign-offs are held to the signed entries: a name, a word or a stroke that differs is found."""

import copy

import pytest

from inspect_app.evidence.fact import FAILS, HOLDS
from inspect_app.evidence.signoffs_told import signoffs_fact
from inspect_app.report.sign_off import sign_offs
from tests.bodies import body_of
from tests.record.rhythm_sample import FOREMAN, PEOPLE, Site

STROKES = [[1, 2, 3, 4], [5, 6, 7, 8]]


def signed_site():
    made, walks = Site(), []
    for _ in range(2):
        walk = made.new_id()
        made.say(FOREMAN, "walk", walk, body_of("walk") | {"placed": []})
        walks.append(walk)
    body = body_of("signoff") | {"walk": walks[0], "covers": [], "strokes": [*STROKES, [1], "x"]}
    made.say(FOREMAN, "signoff", walks[0], body)
    record = made.record()
    return record, {walk: n for n, walk in enumerate([*walks, *(set(record["walks"]) - set(walks))], 1)}


RECORD, WALKS = signed_site()
TOLD = {"signoffs": sign_offs(RECORD, PEOPLE, {"walks": WALKS})}


def test_the_page_shows_who_signed_what_with_which_key_and_the_strokes_that_can_be_drawn():
    first, *others = TOLD["signoffs"]
    assert first["signed"] and others and not any(one["signed"] for one in others)
    assert first["kid"] == FOREMAN and first["strokes"] == STROKES and len(first["uncovered"]) == 1


def test_what_was_signed_holds_without_the_key_too_as_older_releases_print_it():
    assert signoffs_fact(TOLD, RECORD).status == HOLDS
    older = copy.deepcopy(TOLD)
    del older["signoffs"][0]["kid"]
    assert signoffs_fact(older, RECORD).status == HOLDS


@pytest.mark.parametrize(
    "change",
    [{"name": "Another"}, {"role": "engineer"}, {"statement": "All is well"}, {"strokes": STROKES[:1]}, {"covers": 9},
     {"strokes": [[1, 2, 3, 5], STROKES[1]]}, {"canvas": {"width": 1, "height": 1}}, {"uncovered": []}, {"kid": "x"},
     {"at": "2026-11-25T16:40:05.120-05:00x"}, {"digest": "other"}, {"signed": False}],
)  # fmt: skip
def test_anything_else_shown_as_somebody_s_signature_is_found(change):
    forged = copy.deepcopy(TOLD)
    forged["signoffs"][0] |= change
    assert signoffs_fact(forged, RECORD).status == FAILS


def test_a_sign_off_left_out_doubled_or_made_up_is_found():
    first, *others = TOLD["signoffs"]
    doubled, made_up = [first, *others, others[0]], [first] * (1 + len(others))
    for shown in (others, [first], doubled, made_up, [first, first, *others], []):
        assert signoffs_fact({"signoffs": shown}, RECORD).status == FAILS
    assert signoffs_fact({}, RECORD).status == FAILS
