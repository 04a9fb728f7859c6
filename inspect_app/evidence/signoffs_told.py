"""Verify what a report shows of each walk's sign-off: the words, the name, the drawn signature, and what it covers.

Fact ``signoffs_follow``: every sign-off on its pages is the enclosed entry's, to the last stroke, and no walk that was
signed is shown unsigned. Reports of releases before keys were printed name none.
"""

from collections.abc import Mapping
from typing import Any

from inspect_app.evidence.fact import Fact
from inspect_app.evidence.follows import follows
from inspect_app.record.signoff_told import signoff_told

NAME = "signoffs_follow"


def signoffs_fact(contents: Mapping[str, Any] | None, record: Mapping[str, Any]) -> Fact:
    """``contents``: the enclosed ones, None when they do not read; ``record``: the entries, folded, as far as the
    report speaks of them."""
    return follows(NAME, contents, record, _other)


def _other(told: Mapping[str, Any], record: Mapping[str, Any]) -> str | None:
    """The first thing that is shown otherwise, left out, doubled or made up."""
    every = [walk["signoff"] for walk in record["walks"].values()]
    if "signoffs" not in told and not any(every):
        return None
    true = {one["digest"]: signoff_told(one) for one in every if one}
    signed = [one for one in told["signoffs"] if one["signed"]]
    if sorted(one["digest"] for one in signed) != sorted(true) or len(told["signoffs"]) != len(every):
        return "signoffs"
    for one in signed:
        own = true[one["digest"]]
        if any(one[name] != own[name] for name in own if name != "kid" or "kid" in one):
            return f"walk {one['walk']}"
    return None
