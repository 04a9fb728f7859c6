"""Verify what a report says of each crew's days, letter by letter.

Fact ``days_follow``: every day that it prints, and no other, is what the enclosed entries give when they are folded
again (``record/day_record_items.py``), the days of silence between them too. A report of a release before days' records
says nothing of them, and encloses none.
"""

from collections.abc import Mapping
from typing import Any

from inspect_app.evidence.fact import Fact
from inspect_app.evidence.follows import follows
from inspect_app.evidence.lots_told import same
from inspect_app.record.day_record_items import day_items, silent

NAME = "days_follow"


def days_fact(contents: Mapping[str, Any] | None, record: Mapping[str, Any]) -> Fact:
    """The fact above. ``contents``: the enclosed ones, None when they do not read; ``record``: the entries, folded."""
    return follows(NAME, contents, record, _other)


def _other(told: Mapping[str, Any], record: Mapping[str, Any]) -> str | None:
    """The first thing that is said otherwise, left out, doubled or made up."""
    if "daily" not in told and not any(day["entries"] for day in record["days"]):
        return None
    said, true = told["daily"], [day_items(day) for day in record["days"]]
    if len(said) != len(true):
        return "count"
    for n, (one, other) in enumerate(zip(said, true, strict=True), 1):
        if not same({name: one[name] for name in other}, other) or one["n"] != n:
            return f"day {other['day']} {other['crew']}"
    return None if same(told["silent"], silent(record["days"])) else "silent"
