"""The failures of this trade: each is asked for, by name, where it can still be seen."""

import re

import pytest

from tests.checklist.released import NEWEST

# Failure: the items that catch it, each with a word that its question, reason or way to look must say.
FAILURES = {
    "a screw at a slot end": [("nail-flange-fastening", "slot_place", "slot end")],
    "driven so tight that the flange dimples": [
        ("nail-flange-fastening", "dimple", "dimple"), ("nail-flange-fastening", "over_driven", "dished"),
        ("audit-walk", "dimple", "dimple"), ("before-work-fit", "driver_set", "dimple"),
    ],
    "driven so tight that the panel cannot slide by hand": [
        ("nail-flange-fastening", "head_free", "slides by hand"), ("audit-walk", "head_feeler", "grip"),
        ("nail-flange-fastening", "first_panel_slides", "fixed point not yet"),
        ("audit-walk", "slides", "before it is fixed"),
    ],
    "a low tapered head where the panel has relief for a clip": [
        ("nail-flange-fastening", "fastener_identity", "tapered"), ("before-work-fit", "head_form", "relief"),
        ("audit-walk", "head_form", "relief"),
    ],
    "slot burrs curled on the back": [
        ("before-work-fit", "slot_burrs", "curls"), ("nail-flange-fastening", "underlayment", "curled"),
        ("audit-walk", "burrs", "burrs"),
    ],
    "underlayment cut by sliding or dragging panels": [
        ("nail-flange-fastening", "underlayment", "dragged"), ("clip-fastening", "underlayment", "dragged"),
        ("deck-and-underlayment", "no_cuts", "sliding panels"),
    ],
    "a clip standing off the male leg": [
        ("clip-fastening", "clip_gap", "male leg"), ("audit-walk", "clips_off", "off the leg"),
        ("seams-and-panel-ends", "clip_bulge", "off the leg"),
    ],
    "one fastener where two belong": [
        ("clip-fastening", "fasteners_per_clip", "where two"), ("audit-walk", "clips_short", "where two"),
        ("warranty-claim-survey", "fasteners_found", "where two"),
    ],
    "a fixed clip where an expansion clip belongs": [
        ("clip-fastening", "fixed_or_expansion", "fixed clip"), ("before-work-fit", "clip_type", "fixed clip"),
        ("audit-walk", "clip", "fixed clip"),
    ],
    "the wrong clip for the profile": [
        ("clip-fastening", "clip_identity", "another profile"), ("before-work-fit", "clip_type", "another profile"),
    ],
    "the field's spacing in an edge": [
        ("nail-flange-fastening", "spacing", "this zone"), ("clip-fastening", "spacing", "this zone"),
        ("audit-walk", "zone_change", "field's spacing"), ("deck-and-underlayment", "zone_lines", "field's spacing"),
    ],
    "a lighter gauge than tested": [
        ("before-work-fit", "base_thickness", "lighter"), ("before-work-fit", "sheet_thickness", "lighter"),
        ("end-of-day-walk", "coil_thickness", "lighter"), ("audit-walk", "sheet_thickness", "lighter"),
    ],
    "snap-lock below its slope": [("seams-and-panel-ends", "snap_slope", "snap-lock")],
    "a seam not fully closed": [
        ("seams-and-panel-ends", "snap_closed", "unlatched"), ("seams-and-panel-ends", "seams_done", "left open"),
        ("end-of-day-walk", "seams_closed", "left open"),
    ],
    "a seam not folded to its stated angle": [("seams-and-panel-ends", "fold_stage", "angle")],
    "panels not full length": [("seams-and-panel-ends", "full_length", "one length")],
    "the fixed point missing or doubled": [
        ("nail-flange-fastening", "fixed_point", "twice"), ("seams-and-panel-ends", "fixed_point", "doubled"),
        ("before-work-fit", "drawings", "fixed twice"), ("warranty-claim-survey", "fixed_line", "doubled"),
    ],
    "penetrations pinning the panel": [
        ("edges-and-penetrations", "not_pinned", "penetration"), ("edges-and-penetrations", "pipe_room", "pipe"),
        ("edges-and-penetrations", "boots", "pins the panel"),
    ],
    "dissimilar metals": [
        ("before-work-fit", "metals", "copper"), ("edges-and-penetrations", "dissimilar", "copper"),
    ],
    "the approval missing on site": [("before-work-fit", "approval_in_force", "on site")],
    "under-driven screws": [("nail-flange-fastening", "under_driven", "proud"), ("clip-fastening", "heads", "flush")],
    "tilted screws": [("nail-flange-fastening", "under_driven", "tilt"), ("audit-walk", "tilt", "tilt")],
    "stripped screws": [
        ("nail-flange-fastening", "bite", "stripped"), ("clip-fastening", "holding", "spinning"),
        ("audit-walk", "spinners", "stripped"),
    ],
    "a box of the wrong screws": [
        ("before-work-fit", "screw_box", "wrong box"), ("end-of-day-walk", "labels", "wrong screws"),
        ("audit-walk", "screw", "wrong box"),
    ],
    "nothing tied down at night": [("end-of-day-walk", "nothing_loose", "tied")],
}  # fmt: skip
ROWS = [(failure, *row) for failure, rows in FAILURES.items() for row in rows]


@pytest.mark.parametrize(("failure", "definition", "item", "word"), ROWS)
def test_a_failure_of_the_trade_is_asked_for(failure, definition, item, word):
    (found,) = [one for one in NEWEST[definition]["items"] if one["id"] == item]
    told = " ".join(found[part]["en"] for part in ("question", "why", "how")).lower()
    assert word in told
    assert found["severity"] != "record" or item == "labels"


def test_underlayment_under_laid_panels_is_never_answered_for():
    (found,) = [one for one in NEWEST["deck-and-underlayment"]["items"] if one["id"] == "covered_already"]
    (photo,) = [one for one in NEWEST["deck-and-underlayment"]["items"] if one["id"] == "bay_photo"]
    assert "open ends and edges" in found["how"]["en"] and "from below" in found["how"]["en"]
    assert "cannot tell" in photo["how"]["en"] and "never as approved" in photo["how"]["en"]


# One word for one thing, as a crew says it; what must not creep in beside it.
SPANISH = {
    "seam": ("costura", r"\bjuntas? alzadas?\b|\bengargolados?\b"),
    "flange": ("aleta", r"\bpestañas?\b|\bbridas?\b"),
    "slot": ("ranura", r"\bojales?\b|\bhendiduras?\b|\bojos? chinos?\b"),
    "ridge": ("cumbrera", r"\bcaballetes?\b|\bcumbre\b"),
    "eave": ("alero", r"\baleros? bajos?\b|\bvolado\b"),
    "fixed line": ("línea fija", r"\blínea de fijación\b|\blínea de anclaje\b"),
    "hem": ("dobladillo", r"\bbastillas?\b"),
    "underlayment": ("membrana", r"\bsubcapas?\b|\bcapa base\b"),
    "screw": ("tornillo", r"\bpijas?\b|\bpernos?\b"),
    "deck": ("cubierta base", r"\bentablados?\b|\bsustratos?\b"),
}


@pytest.mark.parametrize(("english", "word", "strange"), [(one, *pair) for one, pair in SPANISH.items()])
def test_spanish_keeps_one_word_for_one_thing(english, word, strange):
    texts = [
        (name, item["id"], item[part]["en"].lower(), item[part]["es"].lower())
        for name, one in NEWEST.items() for item in one["items"] for part in ("question", "why", "how")
    ]  # fmt: skip
    assert sum(word in es for _, _, _, es in texts) >= 5
    assert [(name, item) for name, item, _, es in texts if re.search(strange, es)] == []
