"""Who signed with which key, for people to read; the enrolments themselves are what proves it."""

from typing import Any

from inspect_app.entry.statement import parse_statement


def keys(statements: list[str]) -> list[dict[str, Any]]:
    """``[{"kid", "person": {"id", "name", "role"}, "device", "from", "until"}]`` in the server's order, from enrolments
    and revocations (JWS). ``until``: when the key was ended, or None; a key enrolled again has a row for each time."""
    told = sorted((parse_statement(one).payload for one in statements), key=lambda one: int(str(one["seq"])))
    rows: list[dict[str, Any]] = []
    for one in told:
        if one["kind"] == "enrolment":
            rows.append({"kid": one["kid"], "person": one["person"], "device": one["device"], "from": one["at"],
                         "until": None})  # fmt: skip
        elif one["kind"] == "revocation":
            for row in rows:
                if row["kid"] == one["kid"] and row["until"] is None:
                    row["until"] = one["at"]
    return rows
