"""The form of what a phone keeps: stores, keys, and every member of their rows with its kind. No values."""

import base64
import json
import re
from typing import Any

# A member named after a thing: an id, a digest, a key's name.
NAMED = re.compile(r"^([0-9a-f]{8}-[0-9a-f-]{27}|[A-Za-z0-9_-]{43}|[0-9a-f]{64})$")
BYTES = {"$bytes", "$view", "$key", "$absent"}


def form(phone: dict[str, Any]) -> dict[str, Any]:
    """``{"version", "stores": {name: {"keyPath", "indexes", "rows": [path: kind]}}}``, entries opened up to their
    bodies, which have a form of their own by kind and version."""
    stores = {}
    for one in phone["stores"]:
        seen: set[str] = set()
        for key, value in one["rows"]:
            _look(value, _place(one, key), seen)
            if one["name"] == "entries":
                _look(_opened(value["token"]), "token", seen)
        stores[one["name"]] = {"keyPath": one["keyPath"], "indexes": one["indexes"], "rows": sorted(seen)}
    return {"version": phone["version"], "stores": stores}


def _place(store: dict[str, Any], key: Any) -> str:
    """Small facts are told apart by the first part of their key."""
    return str(key[0]) if store["keyPath"] is None and store["name"] == "meta" else "row"


def _opened(token: str) -> dict[str, Any]:
    header, payload = (json.loads(base64.urlsafe_b64decode(part + "==")) for part in token.split(".")[:2])
    return {"header": header, "payload": {**payload, "body": None}}


def _look(value: Any, place: str, seen: set[str]) -> None:
    if isinstance(value, dict) and not value.keys() & BYTES:
        for name, one in value.items():
            _look(one, f"{place}.{'*' if NAMED.match(name) else name}", seen)
        return
    if isinstance(value, list):
        seen.add(f"{place}: list")
        for one in value:
            _look(one, f"{place}[]", seen)
        return
    kind = next(iter(value)) if isinstance(value, dict) else type(value).__name__
    seen.add(f"{place}: {kind}")
