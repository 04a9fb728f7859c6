"""One lot as the fold holds it, written down by hand: what was drawn, and what each drawn panel shows."""

from typing import Any

from inspect_app.record.decision import decide
from inspect_app.record.sampling import OURS

ASKS = {"critical": ["flange/screw"], "major": ["flange/dimple"], "minor": ["flange/wave"]}
SEVERITIES = ("critical", "major", "minor")
LETTERS = {"g": "good", "b": "bad", "u": "unknown"}


def drawn(shown: str) -> list[dict[str, Any]]:
    """A panel a letter: ``g`` good, ``b`` bad in major, ``u`` unknown in major, ``c`` bad in critical, ``m`` bad in
    minor; ``.`` sealed, ``x`` dropped out, ``o`` set and still open, ``-`` covered and nobody looked."""
    panels = []
    for order, letter in enumerate(shown):
        results = dict.fromkeys(SEVERITIES, "unknown" if letter in ".xo-" else "good")
        for name, severity in (("c", "critical"), ("m", "minor"), ("b", "major"), ("u", "major")):
            if letter == name:
                results[severity] = "unknown" if letter == "u" else "bad"
        state = {".": "sealed", "x": "dropped", "o": "due", "-": "covered", "u": "part"}.get(letter, "looked")
        panels.append({"order": order, "state": state, "area": "a", "panel": order + 1, "results": results})
    return panels


def lot(shown: str = "ggggg", **changed: Any) -> dict[str, Any]:
    """60 panels, all set, closed, drawn under normal inspection with our own plans, unless ``changed``."""
    size = changed.get("size", 60)
    one: dict[str, Any] = {
        "id": "l", "digest": "d", "purpose": "work", "crew": "2", "day": "2026-11-25", "size": size, "set": size,
        "closed": True, "inspection": "normal", "plans": {}, "places": 3, "asks": ASKS, "extensions": [],
        "population": [{"area": "a", "from": 1, "to": size}], "drawn": drawn(shown), "disposition": None,
    }  # fmt: skip
    return {**one, **changed}


def decided(shown: str = "ggggg", called_for: str | None = None, sampling: dict[str, Any] | None = None,
            **changed: Any) -> dict[str, Any]:  # fmt: skip
    return decide(lot(shown, **changed), {**OURS, **(sampling or {})}, called_for)


def plans(level: str, aql: str) -> dict[str, Any]:
    """Of a lot, major and minor alike: nobody believes more of them than level and AQL."""
    row = {"level": level, "aql": aql, "letter": "?", "n": 1, "accept": 99, "reject": 100}
    return {"major": row, "minor": row, "critical": {"n": 1, "accept": 99}}
