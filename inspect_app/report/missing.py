"""Evidence that was declared but is not here. It is listed, and while it may still come the report is a
draft."""

from typing import Any


def missing(
    record: dict[str, Any],
    people: dict[str, Any],
    definitions: dict[str, Any],
    numbers: dict[str, Any],
    held: dict[str, Any],
    answers: list[dict[str, Any]],
) -> list[dict[str, Any]]:
    """``[{"code", "facts", "blocks"}]``; ``blocks``: it forbids a final report."""
    told: list[dict[str, Any]] = []
    if record.get("job") is None:
        told.append(_fact("job_missing"))
    if not record["walks"]:
        told.append(_fact("walk_missing"))
    for sha256, n in numbers["photos"].items():
        facts = held.get(sha256) or {}
        if not facts.get("held"):
            photo = record["photos"][sha256]
            told.append(_fact(f"photo_{facts.get('lost') or 'missing'}", photo=n, sha256=sha256, at=photo.get("at"),
                              station=numbers["stations"].get(photo.get("station") or "")))  # fmt: skip
    named = sorted({one["sha256"] for answer in answers for one in answer["photos"] if one["n"] is None})
    told += [_fact("photo_undeclared", sha256=sha256) for sha256 in named]
    for kid, chain in sorted((record.get("chains") or {}).items()):
        told += [
            _fact("entries_missing", kid=kid, low=low, high=high, person=_owner(people, kid))
            for low, high in chain.get("gaps") or []
        ]
    told += [
        _fact("entry_orphan", digest=flag["digest"], walk=(flag.get("facts") or {}).get("other"))
        for flag in record.get("flags") or [] if flag.get("code") == "orphan"
    ]  # fmt: skip
    told += [
        _fact("not_signed", walk=n) for key, n in numbers["walks"].items()
        if not record["walks"][key].get("signoff")
    ]  # fmt: skip
    used = {record["walks"][key].get("definition") for key in record["walks"]}
    used |= {answer["definition"]["digest"] for answer in answers}
    told += [_fact("definition_missing", digest=one) for one in sorted(map(str, used)) if one not in definitions]
    return told + _places(record, numbers) + _photos_wanted(answers)


def _places(record: dict[str, Any], numbers: dict[str, Any]) -> list[dict[str, Any]]:
    told = []
    for key, n in numbers["stations"].items():
        area = record["stations"][key].get("area")
        if area not in record["areas"]:
            told.append(_fact("area_missing", station=n, area=area))
    for area in record["areas"].values():
        if area.get("assembly") not in record["assemblies"]:
            told.append(_fact("assembly_missing", area=area.get("name"), assembly=area.get("assembly")))
    return told


def _photos_wanted(answers: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """A photo the checklist requires and nobody took can no longer come: listed, but it does not block."""
    return [
        _fact(
            "required_photo",
            blocks=False,
            station=answer["station"],
            walk=answer["walk"],
            question=answer["question"],
        )
        for answer in answers
        if not answer["photos"]
        and answer["result"] != "not_applicable"
        and (answer["photo_rule"] == "required" or (answer["photo_rule"] == "on_fail" and answer["result"] == "fail"))
    ]


def _owner(people: dict[str, Any], kid: str) -> Any:
    for identity in sorted(people):
        if kid in (people[identity].get("kids") or []):
            return people[identity].get("name")
    return None


def _fact(code: str, blocks: bool = True, **facts: Any) -> dict[str, Any]:
    return {"code": code, "facts": facts, "blocks": blocks}
