"""Find, in a request whose shape is wrong, the first field at fault and its value."""

from typing import Any

from flask import request
from werkzeug.exceptions import HTTPException

SECRET = ("password", "passphrase", "pkcs12")  # fields whose value is never told back, not even to who sent it


def first_fault(error: HTTPException) -> tuple[str, str, object]:
    """``(code, field, value)``: ``field_missing`` or ``field_wrong`` with the path (``items[2].size``), or
    ``bad_json`` when the body is not JSON at all."""
    messages = (getattr(error, "data", None) or {}).get("messages")
    if not isinstance(messages, dict):
        return "bad_json", "request", None
    path: list[str | int] = []
    at: Any = messages
    while isinstance(at, dict) and at:
        key = next(iter(at))
        path.append(key)
        at = at[key]
    source, steps = (path[0], path[1:]) if path else ("json", [])
    if not steps or steps == ["_schema"]:
        return "bad_json", "request", None
    sent: Any = request.args.to_dict() if source == "query" else request.get_json(silent=True)
    found, value = _follow(sent, steps)
    value = None if steps[-1] in SECRET else value
    return ("field_wrong" if found else "field_missing"), _spelled(steps), value


def _follow(value: Any, steps: list[str | int]) -> tuple[bool, object]:
    for step in steps:
        try:
            value = value[step]
        except (KeyError, IndexError, TypeError):
            return False, None
    return True, value


def _spelled(steps: list[str | int]) -> str:
    text = "".join(f"[{step}]" if isinstance(step, int) else f".{step}" for step in steps)
    return text.removeprefix(".")
