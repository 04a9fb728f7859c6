"""What was said of each finding after it was opened: corrections, rechecks, reopenings, concessions.

Only its own author takes such a statement back: whoever corrected a place cannot make a bad recheck go away, nor an
inspector a reopening by somebody else. Another person's version stands beside it.
"""

from inspect_app.record.authority import may_replace, objection

KINDS = ("correction", "recheck", "reopening", "concession")


def said(grouped: dict, people: dict, flags: list) -> dict:
    """``{kind: {finding id: [statement]}}`` of every version of the four kinds. A statement is its entry's body plus
    ``kind, id, digest, by, at``; ``gone``: a later version by the same person stands in its place; ``authors``: who
    said any version of the thing; ``names``: digests of what it speaks of; ``problems``: codes, at first why its author
    may not say it."""
    told: dict = {}
    for kind in KINDS:
        told[kind] = {}
        for subject in sorted(grouped.get(kind, {})):
            versions = grouped[kind][subject]["all"]
            gone = _taken_back(versions, people, flags)
            authors = sorted({entry["payload"]["by"] for entry in versions})
            for entry in versions:
                payload = entry["payload"]
                objected = objection(entry, people)
                statement = dict(payload["body"])
                statement.update({
                    "kind": kind, "id": subject, "digest": entry["digest"], "by": payload["by"], "at": payload["at"],
                    "gone": entry["digest"] in gone, "authors": authors, "problems": [objected] if objected else [],
                    "names": payload["replaces"] + (payload["body"].get("of") or []) + _looked_at(payload),
                })  # fmt: skip
                told[kind].setdefault(payload["body"].get("finding"), []).append(statement)
    return told


def _looked_at(payload: dict) -> list:
    return [payload["body"]["correction"]] if payload["kind"] == "recheck" else []


def _taken_back(versions: list, people: dict, flags: list) -> set:
    by_digest = {entry["digest"]: entry for entry in versions}
    gone = set()
    for entry in versions:
        for old in entry["payload"]["replaces"]:
            if old not in by_digest or objection(entry, people):
                continue
            if by_digest[old]["payload"]["by"] == entry["payload"]["by"]:
                gone.add(old)
            elif may_replace(entry, by_digest[old], people):
                facts = {"other": old}
                flags.append({"digest": entry["digest"], "code": "not_theirs_to_replace", "facts": facts})
    return gone
