"""Findings: what did not pass, where, and the evidence for it."""

from typing import Any


def findings(record: dict[str, Any], numbers: dict[str, Any], answers: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """In reading order: number, answer subject, severity, state and where it is. The answer itself holds the
    rest. A finding whose answer is missing is listed with what is known."""
    by_subject = {answer["id"]: answer for answer in answers}
    told = []
    for subject, n in numbers["findings"].items():
        finding, answer = record["findings"][subject], by_subject.get(subject, {})
        told.append({
            "n": n, "id": subject, "state": finding.get("state"), "severity": answer.get("severity"),
            "station": answer.get("station"), "walk": answer.get("walk"), "area": answer.get("area"),
            "result": finding.get("result"),
        })  # fmt: skip
    return told
