"""Findings: what did not pass or was pointed out by hand, where, and what became of it."""

from typing import Any

from inspect_app.record.panel_result import SEVERITIES
from inspect_app.record.rejudge import rejudge
from inspect_app.report.acceptance import accepted
from inspect_app.report.finding_photos import pictures
from inspect_app.report.item import find_item
from inspect_app.report.item import working as working_of
from inspect_app.report.person import person

# What a record tells of a finding at the least.
BLANK: dict[str, Any] = {
    "source": "answer", "opened": {"digest": None, "by": None, "at": None}, "walk": None, "station": None, "area": None,
    "panel": None, "from_low_end": None, "zone": None, "definition": None, "item": None, "severity": None,
    "result": None, "required": None, "found": None, "photos": [], "state": "open", "assignment": None,
    "corrections": [], "rechecks": [], "reopenings": [], "concession": None, "closed_by": None, "history": [],
    "problems": [], "firm": None, "crew": None,
}  # fmt: skip


def findings(record: dict[str, Any], people: dict[str, Any], definitions: dict[str, Any], numbers: dict[str, Any],
             answers: list[dict[str, Any]], held: dict[str, Any]) -> list[dict[str, Any]]:  # fmt: skip
    """In reading order: number, id, where it is by the report's numbers, ``severity`` (the worse of the checklist's,
    ``asked``, and the record's), ``told`` (the record's finding as it is), the ``cause`` in the definition's words,
    ``judged`` (of each correction and recheck with a reading: its working, and whether it comes out again), ``people``
    by id, and every photo that its entries name (``finding_photos``)."""
    by_subject = {answer["id"]: answer for answer in answers}
    told = []
    for subject, n in numbers["findings"].items():
        finding = BLANK | record["findings"][subject]
        answer = by_subject.get(subject, {})
        item = find_item(definitions, finding["definition"], finding["item"]) or {}
        told.append({
            "n": n, "id": subject, "state": finding["state"], "source": finding["source"], "result": finding["result"],
            "severity": _worse(answer.get("severity"), finding["severity"]), "asked": item.get("severity"),
            "question": item.get("question"),
            "station": numbers["stations"].get(finding["station"] or ""),
            "walk": numbers["walks"].get(finding["walk"]), "area": finding["area"] or answer.get("area"),
            "cause": _cause(finding, definitions),
            "judged": {one["digest"]: _judged(one) for one in finding["corrections"] + finding["rechecks"]
                       if (one["verdict"] or {}).get("rule")},
            "people": {one: person(people, one) for one in sorted(_named(finding))},
            "pictures": pictures(finding, numbers, held), "told": finding,
        })  # fmt: skip
    return told


def _worse(one: Any, other: Any) -> Any:
    known = [each for each in SEVERITIES if each in (one, other)]
    return known[0] if known else one


def _cause(finding: dict[str, Any], definitions: dict[str, Any]) -> dict[str, Any] | None:
    """``{"en", "es"}`` where the definition has its own list of causes and the code is one of them."""
    code = ((finding["assignment"] or {}).get("cause") or {}).get("code")
    listed = (definitions.get(finding["definition"]) or {}).get("causes") or []
    own = [one for one in listed if code and one["code"] == code]
    return {name: own[0].get(name) for name in ("en", "es")} if own else None


def _judged(statement: dict[str, Any]) -> dict[str, Any]:
    verdict = statement["verdict"]
    return {"working": working_of(verdict), "result": verdict["result"], "accepted": accepted(verdict),
            "recomputed": rejudge(verdict)}  # fmt: skip


def _named(finding: dict[str, Any]) -> set[str]:
    told = [finding["opened"], finding["closed_by"], finding["assignment"], finding["concession"], *finding["history"]]
    return {one["by"] for one in told if one and one["by"]}
