"""Looks: the stations that people recorded, where, and which of them came too late to be a look."""

from inspect_app.record.authority import objection
from inspect_app.record.first_said import first_said
from inspect_app.record.marks import Marks
from inspect_app.rules.quantity import convert
from inspect_app.rules.refused import Refused

NEAR = 0.001  # metres: a place is named by its distance from the low end, which is copied and not measured
TELLING = ("pass", "fail", "too_close")
BEST = ("looked", "part", "unsafe", "covered")


class Looks:
    """Every station by the panel it stands on: ``at[(area, panel)]``, each
    ``{"station", "area", "digest", "lot", "chosen", "reached", "from_low_end", "late", "firsts", "failures", "counts",
    "audit", "tells", "placed"}``.

    ``late``: its own key's chain proves that the panel was covered before. Correcting a look later does not make it
    late, and does not make a late one early: what counts is where it was first said. ``firsts``: ``[(kid, seq)]``
    of that, ``failures`` of the answers there that fail. ``counts``: whether who recorded it may look.
    ``tells``: whether something was found there, good or bad. ``late_answers``: those first given when the panel was
    covered; what they find good was not seen, what they find bad counts all the same.
    """

    def __init__(self, record: dict, grouped: dict, people: dict, marks: Marks) -> None:
        self.at: dict = {}
        self.failing: dict = {}  # area: [(panel, look)]
        self.gone_over: dict = {}  # area: [(panel, look)] that failed, was covered and then called good
        self.claims: dict = {}  # lot: the looks that say they were taken at a place it drew
        self.answers = record["answers"]
        self.late_answers = _late(record, grouped.get("answer", {}), marks)
        failures = _failures(record["answers"], grouped.get("answer", {}))
        telling = _telling(record["answers"], self.late_answers)
        mended = _mended(record["answers"], grouped.get("answer", {}))
        for subject in sorted(record["stations"]):
            station = record["stations"][subject]
            group = grouped["station"][subject]
            firsts = first_said(group["all"], station, ("area", "panel", "lot", "reached"))
            lot = marks.lots.get(station.get("lot"))
            late = (lot is None or lot["purpose"] == "work") and any(
                marks.covered_before(station["area"], station["panel"], kid, seq) for kid, seq in firsts
            )
            look = {
                "station": subject, "digest": station["digest"], "area": station["area"], "lot": station.get("lot"),
                "chosen": station["chosen"], "reached": station["reached"], "from_low_end": station["from_low_end"],
                "late": late, "firsts": firsts, "tells": subject in telling,
                "failures": failures.get(subject, []), "placed": False,
                "audit": lot is not None and (
                    lot["purpose"] == "audit"
                    or (lot["purpose"] == "rework"
                        and not reworked(marks.lots, lot, station["area"], station["panel"]))
                ),
                "counts": any(not objection(entry, people) for entry in group["heads"]),
            }  # fmt: skip
            self.at.setdefault((station["area"], station["panel"]), []).append(look)
            if look["chosen"] == "drawn" and look["lot"] is not None:
                self.claims.setdefault(look["lot"], []).append(look)
            if look["failures"]:
                self.failing.setdefault(station["area"], []).append((station["panel"], look))
            covers = [(marks.covered_at(station["area"], station["panel"], kid), seq, until)
                      for kid, seq, until in mended.get(subject, [])]  # fmt: skip
            if [1 for at, seq, until in covers if at is not None and seq < at and (until is None or at < until)]:
                self.gone_over.setdefault(station["area"], []).append((station["panel"], look))

    def seen(self, area: str, panel: int) -> list:
        """The looks at a panel while its leg could be seen, where somebody answered something; an audit's come after,
        and are none of them."""
        return [
            look for look in self.at.get((area, panel), [])
            if look["reached"] == "yes" and not look["late"] and look["counts"] and not look["audit"] and look["tells"]
        ]

    def drawn_at(self, lot_id: str, area: str, panel: int) -> list:
        """The looks at a panel that say they were taken at a place this lot drew; a failure counts whoever found it."""
        return [
            look for look in self.at.get((area, panel), [])
            if look["lot"] == lot_id and look["chosen"] == "drawn" and (look["counts"] or look["failures"])
        ]

    def fill(self, lot: dict, area: str, panel: int, places: list) -> None:
        """Give each drawn place of the panel the look that was taken there, one with a failed answer before any other.
        A look so placed is ``placed``."""
        own = [(_metres(look["from_low_end"]), look) for look in self.drawn_at(lot["id"], area, panel)]
        for place in places if own else []:
            ranked = []
            here = _metres(place["from_low_end"])
            for there, look in own:
                if here is not None and there is not None and abs(here - there) <= NEAR:
                    look["placed"] = True
                    ranked.append((not look["failures"], BEST.index(self._state(look, lot)), look["station"]))
            if ranked:
                _, best, place["station"] = min(ranked)
                place["state"] = BEST[best]

    def _state(self, look: dict, lot: dict) -> str:
        if look["reached"] != "yes" or look["late"]:
            return "unsafe" if look["reached"] == "unsafe" else "covered"
        for names in (lot.get("asks") or {}).values():
            for name in names:
                subject = look["station"] + "/" + name
                if subject not in self.answers or subject in self.late_answers:
                    return "part"
        return "looked"


def _telling(answers: dict, late: dict) -> dict:
    """The stations where something was found, good or bad: who only came by has not looked."""
    return {
        answers[subject]["station"]: True for subject in answers
        if answers[subject].get("station") is not None and answers[subject]["result"] in TELLING and subject not in late
    }


def _late(record: dict, grouped: dict, marks: Marks) -> dict:
    """The answers whose own key first gave them when it had covered the panel; a correction makes none late. What an
    audit or a rework finds on a covered panel is told from what still shows."""
    found = {}
    for subject in sorted(record["answers"]):
        answer = record["answers"][subject]
        station = record["stations"].get(answer.get("station"))
        if station is None or answer["result"] == "fail":
            continue
        lot = marks.lots.get(station.get("lot"))
        if lot is not None and lot["purpose"] != "work":
            continue
        firsts: dict = {}
        for entry in grouped[subject]["all"]:
            seq = entry["payload"]["seq"]
            firsts[entry["kid"]] = min(seq, firsts.get(entry["kid"], seq))
        if firsts and all(marks.covered_before(station["area"], station["panel"], kid, firsts[kid]) for kid in firsts):
            found[subject] = True
    return found


def reworked(lots: dict, lot: dict, area: str, panel: int) -> bool:
    """Whether a panel is looked at again after rework under this lot: it names the lot of work that set it. A first
    look is no rework, whatever its lot calls itself."""
    before = lots.get(lot.get("reworks"))
    if lot["purpose"] != "rework" or before is None or before["purpose"] == "audit":
        return False
    return all(
        any(row["area"] == area and row["from"] <= panel <= row["to"] for row in one["population"])
        for one in (lot, before)
    )


def _failures(answers: dict, grouped: dict) -> dict:
    """``{station: [(kid, seq)]}``: when each failed answer was first said to fail; what is only recorded cannot."""
    found: dict = {}
    for subject in sorted(answers):
        answer = answers[subject]
        if answer["result"] != "fail" or answer.get("severity") == "record" or answer.get("station") is None:
            continue
        for entry in grouped[subject]["all"]:
            if (entry["payload"]["body"].get("verdict") or {}).get("result") == "fail":
                said = found.setdefault(answer["station"], [])
                said.append((entry["kid"], entry["payload"]["seq"]))
    return found


def _mended(answers: dict, grouped: dict) -> dict:
    """``{station: [(kid, seq, until)]}`` of answers that failed and stand as something else: when a key said that it
    fails, and when the same key first said otherwise after that (None: it never did)."""
    found: dict = {}
    for subject in sorted(answers):
        answer = answers[subject]
        if answer["result"] == "fail" or answer.get("severity") == "record" or answer.get("station") is None:
            continue
        said = [
            (entry["kid"], entry["payload"]["seq"], (entry["payload"]["body"].get("verdict") or {}).get("result"))
            for entry in grouped[subject]["all"]
        ]
        for kid, seq, result in said:
            if result == "fail":
                later = [at for other, at, told in said if other == kid and at > seq and told != "fail"]
                own = found.setdefault(answer["station"], [])
                own.append((kid, seq, min(later) if later else None))
    return found


def _metres(distance: object) -> "float | None":
    try:
        return convert(distance, "m", "from_low_end")
    except Refused:
        return None
