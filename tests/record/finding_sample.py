"""Findings and what is said of them, by phones in memory. Invented."""

import hashlib
from typing import Any

from tests.bodies import body_of
from tests.record.rhythm_sample import AREA, FOREMAN, INSPECTOR, WALK, Site

HERE = {"value": "7.5", "unit": "ft"}
VERDICT = {"result": "pass", "rule": "limit@2", "rulebook": "", "reason": None, "inputs": {}, "values": {}}
FAILED = VERDICT | {"result": "fail"}
SIGNED = {"name": "", "role": ""}


def picture(name: str) -> str:
    return hashlib.sha256(name.encode()).hexdigest()


class Place(Site):
    """A roof with one failed answer, ``self.finding``, of that severity; the first photo is ``before``."""

    def __init__(self, severity: str | None = "major", rule: str | None = None) -> None:
        super().__init__()
        self.at = self.station(9, HERE, chosen="hand")
        self.finding = f"{self.at}/flange/screw"
        self.failing = self.reply("fail", severity, rule)

    def reply(self, result: str, severity: str | None = "major", rule: str | None = None, kid: str = FOREMAN,
              replaces: tuple[str, ...] = ()) -> str:  # fmt: skip
        body = {**body_of("answer"), "walk": WALK, "station": self.at, "area": AREA, "item": "screw",
                "photos": [picture("before")], "choice": None if rule else result,
                "reading": {"head": "0.3"} if rule else None,
                "verdict": {**VERDICT, "result": result, "rule": rule}}  # fmt: skip
        body.pop("severity", None)
        return self.say(kid, "answer", self.finding, body | ({"severity": severity} if severity else {}), replaces)

    def hand(self, kid: str = INSPECTOR, subject: str | None = None, replaces: tuple[str, ...] = (),
             **changed: Any) -> str:  # fmt: skip
        subject = subject or self.new_id()
        body = {"walk": WALK, "area": AREA, "severity": "minor", "required": "seam closed", "found": "seam open",
                "photos": [picture("hand")], "panel": 9, "from_low_end": HERE, **SIGNED, **changed}
        self.say(kid, "finding", subject, body, replaces)
        return subject  # fmt: skip

    def correct(self, kid: str = FOREMAN, finding: str | None = None, subject: str | None = None,
                replaces: tuple[str, ...] = (), **changed: Any) -> str:  # fmt: skip
        body = {"finding": finding or self.finding, "walk": None, "done": "backed off", "photos": [], "reading": None,
                "verdict": None, **SIGNED, **changed}
        return self.say(kid, "correction", subject or self.new_id(), body, replaces)  # fmt: skip

    def recheck(self, correction: str, result: str = "good", kid: str = INSPECTOR, finding: str | None = None,
                subject: str | None = None, replaces: tuple[str, ...] = (), **changed: Any) -> str:  # fmt: skip
        body = {"finding": finding or self.finding, "correction": correction, "result": result, "walk": None,
                "photos": [], "note": "", "reading": None, "verdict": None, **SIGNED, **changed}
        return self.say(kid, "recheck", subject or self.new_id(), body, replaces)  # fmt: skip

    def reopen(self, *of: str, kid: str = FOREMAN, finding: str | None = None, subject: str | None = None,
               replaces: tuple[str, ...] = ()) -> str:  # fmt: skip
        body = {"finding": finding or self.finding, "of": list(of), "reason": "came loose", "photos": [], **SIGNED}
        return self.say(kid, "reopening", subject or self.new_id(), body, replaces)

    def concede(self, kid: str, document: str | None = None, reference: str = "", finding: str | None = None,
                replaces: tuple[str, ...] = ()) -> str:  # fmt: skip
        finding = finding or self.finding
        body = {"finding": finding, "reason": "holds", "document": document, "reference": reference, **SIGNED}
        return self.say(kid, "concession", finding, body, replaces)

    def assign(self, kid: str = INSPECTOR, finding: str | None = None, **changed: Any) -> str:
        finding = finding or self.finding
        body = {"finding": finding, "firm": "Gable (invented)", "crew": "Crew 9", "by_day": "2026-11-28",
                "cause": {"code": None, "words": "torque"}, "note": "", **SIGNED, **changed}
        return self.say(kid, "assignment", finding, body)  # fmt: skip

    def told(self, finding: str | None = None) -> dict[str, Any]:
        found: dict[str, Any] = self.record()["findings"][finding or self.finding]
        return found

    def state(self, finding: str | None = None) -> str:
        return str(self.told(finding)["state"])
