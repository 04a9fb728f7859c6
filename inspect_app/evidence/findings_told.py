"""Verify what a report says of its findings: each state, and everything that led to it.

Fact ``findings_follow``: every finding it prints, and no other, is what the enclosed entries give when they are folded
again (``record/findings.py``), under its own number; no severity is printed milder than the record tells; and what is
counted of them on the cover is what there is. A report of a release before that tells open findings alone.
"""

from collections.abc import Mapping
from typing import Any

from inspect_app.evidence.fact import Fact
from inspect_app.evidence.follows import follows
from inspect_app.evidence.lots_told import same
from inspect_app.record.finding_state import STATES
from inspect_app.record.panel_result import SEVERITIES

NAME = "findings_follow"
UNSETTLED = ("open", "corrected")  # nobody who may has said yet that it is good, or may stand
TOLD = ("state", "source", "area", "result")  # printed from beside the record's own words
SHOWN = (("corrections", "after"), ("rechecks", "seen"), ("reopenings", "reopened"))


def findings_fact(contents: Mapping[str, Any] | None, record: Mapping[str, Any]) -> Fact:
    """The fact above. ``contents``: the enclosed ones, None when they do not read; ``record``: the entries, folded."""
    return follows(NAME, contents, record, _other)


def pictures_of(finding: Mapping[str, Any]) -> list[dict[str, Any]]:
    """``[{"sha256", "role", "of" digest, "by", "at"}]`` of every photo that a finding's entries name, in the order of
    what was said; ``role`` ``before`` ``after`` ``seen`` (at a recheck) ``reopened`` ``document``."""
    named = [("before", finding["opened"], finding["photos"])]
    named += [(role, one, one["photos"]) for name, role in SHOWN for one in finding[name]]
    conceded = finding["concession"]
    named += [("document", conceded, [conceded["document"]])] if conceded and conceded["document"] else []
    return [{"sha256": photo, "role": role, "of": one["digest"], "by": one["by"], "at": one["at"]}
            for role, one, photos in named for photo in photos]  # fmt: skip


def tally(findings: list[Any]) -> dict[str, Any]:
    """``{"findings", "critical", "states": {state: count}}``; ``critical``: those not settled."""
    states = [one["state"] for one in findings]
    return {
        "findings": len(findings),
        "critical": sum(one["severity"] == "critical" and one["state"] in UNSETTLED for one in findings),
        "states": {state: states.count(state) for state in STATES if state in states},
    }


def _other(told: Mapping[str, Any], record: Mapping[str, Any]) -> str | None:
    """The first finding that is said otherwise, left out, doubled or made up."""
    true, said = record["findings"], told.get("findings", [])
    if "daily" not in told and not any("told" in one for one in said):
        return _before(told, true)
    if [one["n"] for one in said] != list(range(1, len(true) + 1)):
        return "count"
    for one in said:
        finding = true.get(one["id"])
        if finding is None or not _as_folded(one, finding):
            return f"finding {one['id']}"
    if len({one["id"] for one in said}) != len(said):
        return "count"
    cover = told["cover"]
    return None if same({name: cover[name] for name in tally(said)}, tally(said)) else "cover"


def _as_folded(one: Mapping[str, Any], finding: Mapping[str, Any]) -> bool:
    shown = [{name: each[name] for name in ("sha256", "role", "of", "by", "at")} for each in one["pictures"]]
    return (
        same(one["told"], finding)
        and all(one[name] == finding[name] for name in TOLD)
        and _rank(one["severity"]) <= _rank(finding["severity"])
        and same(shown, pictures_of(finding))
    )


def _rank(severity: Any) -> int:
    return SEVERITIES.index(severity) if severity in SEVERITIES else len(SEVERITIES)


def _before(told: Mapping[str, Any], true: Mapping[str, Any]) -> str | None:
    """Of an older release: an open finding for each failing answer, and nothing said of any since."""
    silent = [one["source"] == "answer" and one["state"] in ("open", "withdrawn") for one in true.values()]
    done = [name for name, quiet in zip(true, silent, strict=True) if not quiet]
    wanted = sorted(name for name, one in true.items() if one["state"] == "open")
    if done or ("findings" in told and sorted(one["id"] for one in told["findings"]) != wanted):
        return f"finding {(done or ['count'])[0]}"
    return None
