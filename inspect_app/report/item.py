"""One answer to one checklist item, with all that its verdict rests on."""

from typing import Any

from inspect_app.record.rejudge import rejudge
from inspect_app.report.acceptance import accepted
from inspect_app.report.person import person


def find_item(definitions: dict[str, Any], digest: Any, name: Any) -> dict[str, Any] | None:
    """The compiled item, None when the definition or the item is not here."""
    for item in (definitions.get(digest) or {}).get("items", []):
        if item.get("id") == name:
            return dict(item)
    return None


def answered(subject: str, record: dict[str, Any], people: dict[str, Any], definitions: dict[str, Any],
             numbers: dict[str, Any]) -> dict[str, Any]:  # fmt: skip
    """What the report says of one answer: the question as it was asked, the result as it was shown, the
    reading, the working (rule, inputs, values, reason), the note, photos by number, who and when."""
    answer = record["answers"][subject]
    digest = answer.get("definition")
    item = find_item(definitions, digest, answer.get("item"))
    definition = definitions.get(digest) or {}
    verdict = answer.get("verdict") or {}
    photos = list(answer.get("photos") or [])
    return {
        "id": subject,
        "digest": answer.get("digest"),
        "walk": numbers["walks"].get(answer.get("walk")),
        "station": numbers["stations"].get(answer.get("station") or ""),
        "area": _area(answer, record),
        "zone": _zone(answer, record),
        "definition": {
            "id": definition.get("id"),
            "version": definition.get("version"),
            "digest": digest,
            "title": definition.get("title"),
            "known": bool(definition),
        },
        "item": answer.get("item"),
        "question": (item or {}).get("question"),
        "how": (item or {}).get("how"),
        "severity": (item or {}).get("severity"),
        "kind": (item or {}).get("kind"),
        "basis": (item or {}).get("basis"),
        "basis_kind": (item or {}).get("basis_kind"),
        "photo_rule": (item or {}).get("photo"),
        "instrument": (item or {}).get("instrument"),
        "choice": answer.get("choice"),
        "result": answer.get("result"),
        "reading": answer.get("reading"),
        "working": working(verdict),
        "recorded": _recorded(answer),
        "recomputed": rejudge(verdict, answer.get("choice")),
        "accepted": accepted(verdict),
        "note": answer.get("note") or "",
        "photos": [{"sha256": name, "n": numbers["photos"].get(name)} for name in photos],
        "finding": numbers["findings"].get(subject),
        "by": person(people, answer.get("by")),
        "at": answer.get("at"),
        "versions": versions(answer, people),
        "open_versions": len(answer.get("heads") or []),
    }


def _recorded(answer: dict[str, Any]) -> bool:
    """Whether something was only written down, nothing judged: told as ``static/walk/item_row.js`` tells it."""
    verdict = answer.get("verdict") or {}
    if (verdict.get("reason") or {}).get("code") == "recorded":
        return True
    return bool(verdict.get("rule")) and answer.get("choice") is None and answer.get("result") == "not_applicable"


def _area(answer: dict[str, Any], record: dict[str, Any]) -> Any:
    station = record["stations"].get(answer.get("station") or "") or {}
    return answer.get("area") or station.get("area")


def _zone(answer: dict[str, Any], record: dict[str, Any]) -> Any:
    return (record["stations"].get(answer.get("station") or "") or {}).get("zone")


def working(verdict: dict[str, Any]) -> dict[str, Any] | None:
    """How a rule came to a verdict; None where none did."""
    if not verdict.get("rule"):
        return None
    return {
        "rule": verdict["rule"],
        "rulebook": verdict.get("rulebook"),
        "inputs": verdict.get("inputs") or {},
        "values": verdict.get("values") or {},
        "reason": verdict.get("reason"),
    }


def versions(thing: dict[str, Any], people: dict[str, Any]) -> list[dict[str, Any]]:
    """All versions when there is more than one: a correction never hides what it corrects."""
    every = thing.get("versions") or []
    if len(every) < 2:
        return []
    heads = thing.get("heads") or []
    return [
        {"digest": one["digest"], "by": person(people, one.get("by")), "at": one.get("at"),
         "result": one.get("result"), "stands": one["digest"] in heads}
        for one in sorted(every, key=lambda one: (str(one.get("at")), one["digest"]))
    ]  # fmt: skip
