"""Sign-offs: the statement, the name, the strokes, and what it does not cover."""

from typing import Any

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
        told.append(
            {
                "walk": n,
                "signed": True,
                "digest": signoff.get("digest"),
                "statement": signoff.get("statement"),
                "name": signoff.get("name"),
                "role": signoff.get("role"),
                "by": person(people, signoff.get("by")),
                "at": signoff.get("at"),
                "strokes": _strokes(signoff.get("strokes")),
                "canvas": signoff.get("canvas"),
                "covers": len(signoff.get("covers") or []),
                "uncovered": list(signoff.get("uncovered") or []),
            }
        )
    return told


def _strokes(strokes: Any) -> list[list[int]]:
    """Only whole strokes of whole numbers: what cannot be drawn is left out of the drawing, not of the
    log."""
    if not isinstance(strokes, list):
        return []
    return [
        stroke
        for stroke in strokes
        if isinstance(stroke, list)
        and len(stroke) > 1
        and len(stroke) % 2 == 0
        and all(isinstance(number, int) and not isinstance(number, bool) for number in stroke)
    ]
