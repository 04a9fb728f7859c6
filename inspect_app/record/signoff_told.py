"""What a page says of a sign-off: the same for whoever prints it and for whoever checks what was printed."""


def signoff_told(signoff: dict) -> dict:
    """``signoff``: as ``fold_signoff`` gives it. ``kid``: the phone's key that signed it; ``covers``: how many entries
    of the walk it names; ``uncovered``: digests of those it does not, recorded or arrived after it."""
    return {
        "digest": signoff.get("digest"),
        "kid": signoff.get("kid"),
        "statement": signoff.get("statement"),
        "name": signoff.get("name"),
        "role": signoff.get("role"),
        "at": signoff.get("at"),
        "strokes": strokes_drawn(signoff.get("strokes")),
        "canvas": signoff.get("canvas"),
        "covers": len(signoff.get("covers") or []),
        "uncovered": list(signoff.get("uncovered") or []),
    }


def strokes_drawn(strokes: object) -> list:
    """Only whole strokes of whole numbers: what cannot be drawn is left out of the drawing, not of the log."""
    if not isinstance(strokes, list):
        return []
    return [stroke for stroke in strokes if _whole(stroke)]


def _whole(stroke: object) -> bool:
    if not isinstance(stroke, list) or len(stroke) < 2 or len(stroke) % 2:
        return False
    return all(isinstance(number, int) and not isinstance(number, bool) for number in stroke)
