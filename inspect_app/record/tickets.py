"""The tickets that lots were drawn by: used once, in order, by the key they were given to.

The server's signature on a ticket is checked where its key is at hand; here it is read, and held to the lot's name.
"""

import json

from inspect_app.record.base64url import decode

LONGEST = 4000  # characters of a statement; what is longer is none


def drawn_by(subject: str, group: dict) -> dict:
    """The entry that drew a lot: of all that use its ticket, the first of the ticket's own key. Signing it again, with
    another plan or the same, never moves the draw."""
    owner = subject.split("/")[0]
    ranked = sorted([
        (entry["kid"] != owner, entry["payload"]["seq"], entry["digest"], at) for at, entry in enumerate(group["all"])
    ])
    found: dict = group["all"][ranked[0][3]]
    return found


def ticket_flags(grouped: dict, lots: dict) -> list:
    """``[(digest, code, facts)]``: ``ticket_twice``, ``ticket_not_theirs``, ``ticket_skipped`` (``from``, ``to``)."""
    found: list = []
    used: dict = {}
    for subject in sorted(lots):
        first = drawn_by(subject, grouped[subject])
        parts = subject.split("/")
        for entry in grouped[subject]["all"]:
            if entry["payload"]["body"] != first["payload"]["body"]:
                found.append((entry["digest"], "ticket_twice", {"other": first["digest"]}))
                found.append((first["digest"], "ticket_twice", {"other": entry["digest"]}))
            if not _theirs(parts, entry):
                found.append((entry["digest"], "ticket_not_theirs", {"other": parts[0]}))
        if len(parts) == 3 and _number(parts[2]) is not None:
            row = (first["payload"]["seq"], _number(parts[2]), first["digest"])
            used.setdefault((parts[0], parts[1]), []).append(row)
    for name in sorted(used):
        highest = -1
        for _, n, digest in sorted(used[name]):
            if n > highest + 1:
                facts = {"other": name[1], "from": highest + 1, "to": n - 1}
                found.append((digest, "ticket_skipped", facts))
            highest = max(highest, n)
    return found


def owner_of(ticket: dict) -> "str | None":
    """The key that the server gave a ticket to, as its statement says; None where there is nothing to read."""
    kid = _statement(ticket.get("statement")).get("kid")
    return kid if isinstance(kid, str) else None


def _theirs(parts: list, entry: dict) -> bool:
    ticket = entry["payload"]["body"].get("ticket") or {}
    told = _statement(ticket.get("statement"))
    same = all(told.get(name) == ticket.get(name) for name in ("series", "n", "random"))
    named = parts == [told.get("kid"), told.get("series"), str(told.get("n"))]
    return named and same and told.get("kid") == entry["kid"] and told.get("job") == entry["payload"].get("job")


def _statement(token: object) -> dict:
    if not isinstance(token, str) or len(token) > LONGEST or token.count(".") != 2:
        return {}
    data = decode(token.split(".")[1])
    try:
        told = json.loads(data.decode()) if data else None
    except (ValueError, RuntimeError):  # anybody's text: no JSON, no UTF-8, or nested beyond reading
        return {}
    return told if isinstance(told, dict) else {}


def _number(text: str) -> "int | None":
    if not text or len(text) > 15 or not all("0" <= letter <= "9" for letter in text):
        return None
    return int(text)
