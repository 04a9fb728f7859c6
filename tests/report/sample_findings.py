"""What became of the invented findings: the record's own fold over entries about them."""

from typing import Any

from inspect_app.record.findings import fold_findings
from tests.report.sample_ground import FOREMAN, INSPECTOR, PEOPLE, digest

ENGINEER = "p-engineer"
EVERYBODY = PEOPLE | {ENGINEER: {"name": "Iris Vane (invented)", "role": "engineer", "kids": ["E" * 43]}}
SIGNED = {"name": "", "role": ""}
EMPTY: dict[str, dict[str, Any]] = {
    "finding": {"walk": None, "area": "quay", "severity": "major", "required": "Seam closed over its whole length.",
                "found": "Two hands open at the eave.", "photos": [], "panel": 5,
                "from_low_end": {"value": "3", "unit": "ft"}},
    "assignment": {"firm": "Gannet Sheet Metal (invented)", "crew": "crew 2", "by_day": "2026-11-27",
                   "cause": {"code": "tool_setting", "words": "clutch never set back"}, "note": ""},
    "correction": {"walk": None, "done": "Screw backed off and set anew.", "photos": [], "reading": None,
                   "verdict": None},
    "recheck": {"result": "good", "walk": None, "photos": [], "note": "", "reading": None, "verdict": None},
    "reopening": {"of": [], "reason": "Came loose again.", "photos": []},
    "concession": {"reason": "Holds the uplift of this zone.", "document": None, "reference": "letter 9 (invented)"},
}  # fmt: skip
BY = {"correction": FOREMAN, "assignment": INSPECTOR, "concession": ENGINEER}


def entry(kind: str, subject: str, minute: int, by: str | None = None, **body: Any) -> dict[str, Any]:
    """One entry about a finding; its digest is ``digest(kind, subject, minute)``."""
    who = by or BY.get(kind, INSPECTOR)
    payload = {"kind": kind, "subject": subject, "by": who, "at": f"2026-11-26T09:{minute:02d}:00.000-05:00",
               "replaces": [], "seq": 0, "prev": None, "body": EMPTY[kind] | SIGNED | body}  # fmt: skip
    return {"digest": named(kind, subject, minute), "kid": EVERYBODY[who]["kids"][0], "payload": payload}


def named(kind: str, subject: str, minute: int) -> str:
    return digest(f"{kind} {subject} {minute}")


def findings(things: dict[str, Any], *said: dict[str, Any], flags: list[dict[str, Any]] | None = None) -> Any:
    """``record["findings"]`` of a hand-made record, its failing answers and what was said since."""
    grouped: dict[str, Any] = {"answer": {name: _answered(one) for name, one in things["answers"].items()}}
    for one in said:
        kind, subject = one["payload"]["kind"], one["payload"]["subject"]
        group = grouped.setdefault(kind, {}).setdefault(subject, {"heads": [], "all": []})
        group["all"].append(one)
        group["heads"].append(one)
    return fold_findings(things | {"lots": {}}, grouped, EVERYBODY, [] if flags is None else flags)


def _answered(answer: dict[str, Any]) -> dict[str, Any]:
    said = [{"kind": "answer", "by": one["by"], "at": one["at"], "replaces": [], "body": answer}
            for one in answer["versions"]]
    entries = [{"digest": one["digest"], "kid": "K" * 43, "payload": payload}
               for one, payload in zip(answer["versions"], said, strict=True)]
    return {"heads": entries, "all": entries}  # fmt: skip
