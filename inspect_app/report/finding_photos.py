"""The photos of a finding: those it was opened with, and those of what was said since. The latter no walk holds, and
the entry alone names them."""

from typing import Any

from inspect_app.evidence.findings_told import pictures_of

FACTS = ("held", "lost", "copy", "undecodable", "width", "height")


def pictures(finding: dict[str, Any], numbers: dict[str, Any], held: dict[str, Any]) -> list[dict[str, Any]]:
    """``pictures_of`` a finding, each with its number in the photo log (None where no entry declares it) and whether
    its bytes are here."""
    told = []
    for one in pictures_of(finding):
        facts = held.get(one["sha256"]) or {}
        told.append(one | {"n": numbers["photos"].get(one["sha256"])} | {name: facts.get(name) for name in FACTS}
                    | {"held": bool(facts.get("held"))})  # fmt: skip
    return told


def named_by_findings(record: dict[str, Any]) -> list[str]:
    """Every photo that something said of a finding names, once."""
    return list(dict.fromkeys(one["sha256"] for name in sorted(record["findings"])
                              for one in pictures_of(record["findings"][name])))  # fmt: skip


def photos_missing(findings: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """What of them is not here, as ``missing`` tells it; the photo log and the answers tell of their own."""
    told: dict[str, dict[str, Any]] = {}
    for finding in findings:
        for one in finding["pictures"]:
            own = one["n"] is None and not (one["role"] == "before" and finding["source"] == "answer")
            if own and not one["held"]:
                told.setdefault(one["sha256"], {
                    "code": f"finding_photo_{one['lost'] or 'missing'}", "blocks": True,
                    "facts": {"finding": finding["n"], "sha256": one["sha256"]},
                })  # fmt: skip
    return list(told.values())
