"""People as a report names them."""

from typing import Any


def person(people: dict[str, Any], identity: Any) -> dict[str, Any]:
    """``{"id", "name", "role"}``; name and role None for somebody this server does not know."""
    known = people.get(identity) or {}
    return {"id": identity, "name": known.get("name"), "role": known.get("role")}
