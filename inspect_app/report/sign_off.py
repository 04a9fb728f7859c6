"""Sign-offs: the statement, the name, the strokes, the key that signed, and what it does not cover."""

from typing import Any

from inspect_app.record.signoff_told import signoff_told
from inspect_app.report.person import person


def sign_offs(record: dict[str, Any], people: dict[str, Any], numbers: dict[str, Any]) -> list[dict[str, Any]]:
    """One for each walk; ``signed`` false where nobody signed. ``uncovered`` counts entries of the walk that
    the signature does not name: recorded or arrived after it."""
    told: list[dict[str, Any]] = []
    for key, n in numbers["walks"].items():
        signoff = record["walks"][key].get("signoff")
        if not signoff:
            told.append({"walk": n, "signed": False})
            continue
        said = signoff_told(signoff)
        told.append({"walk": n, "signed": True, **said, "by": person(people, signoff.get("by"))})
    return told
