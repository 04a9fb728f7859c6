"""A fact of what a report says: that the enclosed entries give the very same when they are folded again."""

from collections.abc import Callable, Mapping
from typing import Any

from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN, Fact

Said = Mapping[str, Any]


def follows(name: str, contents: Said | None, record: Said, other: Callable[[Said, Said], str | None]) -> Fact:
    """The fact of this name. ``contents``: the enclosed ones, None when they do not read; ``record``: the entries,
    folded; ``other(contents, record)``: the first thing that is said otherwise, or None."""
    if contents is None:
        return Fact(name, UNKNOWN, "no_record")
    try:
        what = other(contents, record)
    except Exception as reason:  # contents of any other shape, or entries that cannot be folded
        what = type(reason).__name__
    return Fact(name, FAILS, "says_other", {"what": what}) if what else Fact(name, HOLDS)
