"""A valid body of each kind, from the shared vectors."""

import copy
import json
from pathlib import Path
from typing import Any

from inspect_app.entry.format import parse

_GOOD = json.loads((Path(__file__).parent / "vectors" / "entries.json").read_text("ascii"))["good"]
_TOKENS = {row["name"]: row["token"] for row in _GOOD}


def body_of(kind: str) -> dict[str, Any]:
    """A copy, to be changed at will."""
    body = parse(_TOKENS[kind]).payload["body"]
    assert isinstance(body, dict)
    return copy.deepcopy(body)
