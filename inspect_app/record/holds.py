"""Holds: legs that wait for a release before the next panel hides them.

The first panel of the day, the first after a change, the leg left open at night, and a panel where something failed.
A hold that was gone over stays ``covered_against`` for ever: said by the mark itself (``against``), also when that mark
was corrected since, or shown by a cover that no release came before.
"""

from inspect_app.record.looks import Looks
from inspect_app.record.marks import Marks, covered
from inspect_app.record.ranges import holds as within
from inspect_app.record.releases import Releases


def held(root: str, day: dict, marks: Marks, looks: Looks) -> list:
    """``[(panel, why)]`` in order: every panel of the day that is held. ``day``: ``area``, ``first``, ``planned`` and
    ``own``, the ranges planned and set under the lot with its extensions."""
    found = {(day["first"], "first"): True}
    for mark in marks.of.get(root, []):
        # What changed at panel 16 is first seen on panel 17; a change after the last panel meets tomorrow's first.
        following = max(mark["to"] + 1, day["first"])
        if mark["body"].get("change") and (within(day["planned"], following) or within(day["own"], following)):
            found[(following, "change")] = True
        if mark["body"].get("night") and within(day["own"], mark["to"]):
            found[(mark["to"], "night")] = True
    for panel, look in looks.failing.get(day["area"], []):
        if _of_the_day(look, root, marks) and (within(day["planned"], panel) or within(day["own"], panel)):
            found[(panel, "failed")] = True
    for panel, look in looks.gone_over.get(day["area"], []):  # called good since, which uncovers nothing
        if _of_the_day(look, root, marks) and within(day["own"], panel):
            found[(panel, "failed")] = True
    return sorted(found)


def hold(root: str, panel: int, why: str, day: dict, releases: Releases, marks: Marks, looks: Looks) -> dict:
    """One hold as the record gives it, ``unseen`` still to be told. ``day``: also ``placed``, the ranges set under any
    lot of the area."""
    area = day["area"]
    given = releases.of.get((root, panel, why), [])
    before = [one for one in given if not marks.covered_before(area, panel, one["kid"], one["seq"])]
    over = [
        (kid, seq) for kid, seq in marks.against.get((root, panel), [])
        if not any(one["kid"] == kid and one["seq"] < seq for one in given)
    ]
    # Who learnt of it only after the cover went over nothing; it waits for its release all the same.
    known = why != "failed" or _known_before_cover(root, area, panel, marks, looks)
    state = "open"
    if over:
        state = "covered_against"
    elif before or (given and not known):
        state = "released"
    elif covered(day["placed"], panel) and known:
        state = "covered_against"
    elif not within(day["own"], panel):
        state = "ahead"
    release = (before or given)[0]["digest"] if given else None
    return {"panel": panel, "why": why, "state": state, "release": release, "unseen": False}


def _known_before_cover(root: str, area: str, panel: int, marks: Marks, looks: Looks) -> bool:
    """Whether a key that said that something failed there went on to cover it: its own order proves that it knew."""
    if any(at == panel and _of_the_day(look, root, marks) for at, look in looks.gone_over.get(area, [])):
        return True
    for at, look in looks.failing.get(area, []):
        if at == panel and _of_the_day(look, root, marks):
            for kid, seq in look["failures"]:
                cover = marks.covered_at(area, panel, kid)
                if cover is not None and cover > seq:
                    return True
    return False


def _of_the_day(look: dict, root: str, marks: Marks) -> bool:
    """Whether a look stops this lot's cover-up: one of its own, or of no lot. An audit's comes after the cover."""
    return look["lot"] is None or marks.roots.get(look["lot"], "") == root
