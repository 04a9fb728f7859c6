"""The compiled checklists that are here: enclosed in a report, or beside it in its package."""

import hashlib
import json
from collections.abc import Collection, Mapping
from typing import Any

from inspect_app.entry.base64url import encode
from inspect_app.evidence.enclosure import DEFINITIONS


def checklists(files: Mapping[str, bytes], beside: Collection[bytes]) -> dict[str, Any]:
    """``{digest: definition}``, each under the digest of its own bytes, whatever name it came under; what is no
    definition is left out. ``files``: those that the report encloses."""
    found: dict[str, Any] = {}
    for data in (*files.get(DEFINITIONS, b"").split(b"\n"), *beside):
        try:
            told = json.loads(data)
        except (ValueError, RecursionError):  # an empty line, or anything at all
            continue
        if isinstance(told, dict) and isinstance(told.get("items"), list):
            found[encode(hashlib.sha256(data).digest())] = told
    return found
