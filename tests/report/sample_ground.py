"""What the hand-made record stands on: people, options, and how a folded thing looks."""

import hashlib
from typing import Any

ZONE = "-05:00"
FOREMAN, INSPECTOR, KEY = "p-foreman", "p-inspector", "K" * 43
PEOPLE = {
    FOREMAN: {"name": "Tomas Ridgeway (invented)", "role": "foreman", "kids": [KEY]},
    INSPECTOR: {"name": "Mara Plumb (invented)", "role": "inspector", "kids": ["M" * 43]},
}
OPTIONS = {"language": "en", "units": "US", "paper": "letter", "issued": "2026-11-25T18:05:00.000-05:00",
           "number": 1, "final": False, "issuer": "Gannet Sheet Metal (invented)"}  # fmt: skip


def q(value: str, unit: str) -> dict[str, str]:
    return {"value": value, "unit": unit}


def digest(text: str) -> str:
    return (hashlib.sha256(text.encode()).hexdigest() + "A" * 43)[:43]


def base(identity: str, minute: int = 0, by: str = FOREMAN) -> dict[str, Any]:
    at = f"2026-11-25T16:{minute:02d}:05.120{ZONE}"
    return {"id": identity, "digest": digest(identity), "by": by, "at": at, "heads": [digest(identity)],
            "clock": {"monotonic": 1, "server": None, "age": None, "zone": "America/New_York"}}  # fmt: skip
