"""What became of the invented findings: put right in the same view, looked at by another, opened again, let stand."""

import json
from collections.abc import Callable
from typing import Any

from inspect_app.demo import picture
from inspect_app.demo.phone import Phone
from inspect_app.demo.walk import Ticking, in_strings
from inspect_app.record.ask import ask

FIRM, CREW = "Gannet Sheet Metal, crew 2 (invented)", "Crew 2 (invented)"
PUT_RIGHT = "Screw backed off, set again with the clutch at 4; the panel slides under its head."
CAUSE = "The clutch was never set back after the deck screws."
LOOSE = "Seen again from the ladder: the washer is off centre, the flange dished again."
STAYS = "One head in forty: the panel slides at both neighbours, and taking it out would hole the deck."
LETTER = "Letter 9 (invented)"
# What is read once the screws are set again, by item: the reading, and what its rule is asked.
AGAIN: dict[str, tuple[dict[str, Any], dict[str, Any]]] = {
    "over_driven": ({"count": 0, "of": 20}, {"count": 0, "of": 20}),
    "dimple": ({"value": {"value": "0", "unit": "in"}}, {"reading": {"value": "0", "unit": "in"}}),
}


class Followed:
    """``phones`` by role; ``rulebook``: digest of the rules as the server shows it; ``fold()``: everything the foreman
    said is delivered, and the job's record."""

    def __init__(self, phones: dict[str, Phone], job: dict[str, Any], rulebook: str, clock: Ticking,
                 fold: Callable[[], dict[str, Any]]) -> None:  # fmt: skip
        self.phones, self.job, self.rulebook, self.clock, self.fold = phones, job, rulebook, clock, fold

    def tell(self) -> None:
        """One closed, one closed and opened again, one that waits for its recheck, one that an engineer lets stand; the
        others stay open. Two by hand: one is new, one was called good without anything to show for it."""
        found = self._tight(self.fold())
        for finding in found[:4]:
            self._assign(finding, {"code": "tool_setting", "words": CAUSE})
        if len(found) > 0:
            self._recheck(found[0], self._correct(found[0], True), True, "Slides freely, head flat.")
        if len(found) > 1:
            closing = self._recheck(found[1], self._correct(found[1], True), True, "Good.")
            self.clock.advance(minutes=40)
            self._say("inspector", "reopening", None, found[1], of=[closing], reason=LOOSE,
                      photos=[self._picture(-0.3, found[1], "inspector")])  # fmt: skip
        if len(found) > 2:
            self._correct(found[2], True)
        if len(found) > 3:
            self._concede(found[3])
        self._by_hand()
        for role in ("foreman", "inspector", "administrator", "engineer"):
            self.phones[role].deliver()

    def _tight(self, record: dict[str, Any]) -> list[dict[str, Any]]:
        """The heads driven tight and what they left, in the order in which they were found."""
        found = [one for one in record["findings"].values() if one["item"] in AGAIN and one["state"] == "open"]
        return sorted(found, key=lambda one: (one["opened"]["at"], one["id"]))

    def _assign(self, finding: dict[str, Any], cause: dict[str, Any]) -> None:
        self._say("inspector", "assignment", finding["id"], finding, firm=FIRM, crew=CREW, cause=cause,
                  by_day=self.clock().date().isoformat(), note="Before the next panels go on.")  # fmt: skip

    def _correct(self, finding: dict[str, Any], shown: bool) -> str:
        self.clock.advance(minutes=7)
        photos = [self._picture(0.0, finding)] if shown else []
        return self._say("foreman", "correction", None, finding, walk=None, done=PUT_RIGHT, photos=photos,
                         **self._read(finding))  # fmt: skip

    def _recheck(self, finding: dict[str, Any], correction: str, shown: bool, note: str) -> str:
        self.clock.advance(minutes=9)
        photos = [self._picture(0.02, finding, "inspector")] if shown else []
        return self._say("inspector", "recheck", None, finding, correction=correction, result="good", walk=None,
                         photos=photos, note=note, **self._read(finding))  # fmt: skip

    def _read(self, finding: dict[str, Any]) -> dict[str, Any]:
        """Read again by the rule that had failed it; nothing of what was opened by hand."""
        if finding.get("item") not in AGAIN:
            return {"reading": None, "verdict": None}
        (reading, changed), required = AGAIN[finding["item"]], finding["required"]
        asked = {"call": "judge", "rule": required["rule"], "inputs": {**required["inputs"], **changed}}
        told = in_strings(json.loads(ask(json.dumps(asked)))["ok"])
        verdict = {"result": told["verdict"], "rule": told["rule"], "rulebook": self.rulebook,
                   "reason": told["reason"], "inputs": told["inputs"], "values": told["values"]}  # fmt: skip
        return {"reading": reading, "verdict": verdict}

    def _concede(self, finding: dict[str, Any]) -> None:
        engineer, lines = self.phones["engineer"], [LETTER, "of the engineer of record", "one head may stay as it is"]
        paper = engineer.keep_photo(self.job["id"], picture.smaller(picture.label(lines, LETTER, self.clock())))
        self._say("engineer", "concession", finding["id"], finding, document=paper, reference=LETTER,
                  reason=STAYS)  # fmt: skip

    def _by_hand(self) -> None:
        edge = {"value": "2", "unit": "ft"}
        dent = self._open("yard", 7, edge, "minor", "Edge strips free of dents a straightedge shows.",
                   "Dent of a hand's width above the gutter.")  # fmt: skip
        bare = self._open("ferry", 2, edge, "critical", "Eave cleat fastened in every rib of the deck.",
                          "Two ribs in a row without a screw.")  # fmt: skip
        self._assign(dent, {"code": "damaged_since", "words": ""})
        self._assign(bare, {"code": "missing", "words": ""})
        self._recheck(bare, self._correct(bare, False), False, "The crew says both are in.")

    def _open(self, area: str, panel: int, at: dict[str, str], severity: str, required: str,
              found: str) -> dict[str, Any]:  # fmt: skip
        name, place = self.phones["inspector"].new_id(), {"area": self.job["areas"][area]["id"], "panel": panel}
        seen = picture.panel(f"{self.job['areas'][area]['body']['name']}, panel {panel}", self.clock())
        photo = self.phones["inspector"].keep_photo(self.job["id"], picture.smaller(seen))
        self.clock.advance(minutes=3)
        self._sign("inspector", "finding", name, {"walk": None, **place, "from_low_end": at, "severity": severity,
                   "required": required, "found": found, "photos": [photo]})  # fmt: skip
        return {"id": name, **place}

    def _picture(self, offset: float, finding: dict[str, Any], role: str = "foreman") -> str:
        """The same view as the first, taken by whoever looks."""
        tag = f"panel {finding['panel']}, looked at again by the {role}"
        drawn = picture.smaller(picture.flange(offset, 0.34, tag, self.clock()))
        return self.phones[role].keep_photo(self.job["id"], drawn)

    def _say(self, role: str, kind: str, subject: str | None, finding: dict[str, Any], **body: Any) -> str:
        subject = subject or self.phones[role].new_id()
        return self._sign(role, kind, subject, {"finding": finding["id"], **body})

    def _sign(self, role: str, kind: str, subject: str, body: dict[str, Any]) -> str:
        self.clock.advance(seconds=40)
        person = self.phones[role].person
        signed = {"name": person["name"], "role": person["role"]}
        return self.phones[role].say(self.job["id"], kind, subject, {**body, **signed})
