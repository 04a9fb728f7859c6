"""What the record knows of a crew's day before anybody writes it down: panels, metal, walks, holds, findings."""

from inspect_app.record.crew import crew_of
from inspect_app.record.lot_days import Days

PARTS = ("entries", "marks", "told", "metal", "walks", "findings", "actions", "holds")
RESULTS = ("pass", "fail", "too_close", "not_determinable", "not_applicable")


class CrewDays:
    """Each crew's days, gathered: ``found[day, crew]`` with a list for each of ``PARTS``, ``areas`` {id: True} and
    ``crews`` {spelling: True}."""

    def __init__(self) -> None:
        self.found: dict = {}

    def of(self, day: str, crew: object) -> dict:
        """The day of that crew, however the crew is spelled."""
        spelled = crew if isinstance(crew, str) else ""
        key = (day, crew_of({"crew": spelled}))
        if key not in self.found:
            self.found[key] = {"day": day, "areas": {}, "crews": {}}
            for name in PARTS:
                self.found[key][name] = []
        one: dict = self.found[key]
        one["crews"][spelled] = True
        return one


def take_lots(crew_days: CrewDays, record: dict, days: Days) -> None:
    """Panels set by the marks of the crew's lots, the metal's temperatures told with them (``{"at","temperature" q,
    "by","uncertainty","of" (``mark`` ``walk`` ``day``),"digest"}``), and the holds (``{"lot","panel","why","state"}``).
    Of an audit nothing: it is no work of the crew's, its walk tells of it."""
    for subject in sorted(record["lots"]):
        lot = record["lots"][subject]
        if lot["purpose"] == "audit":
            continue
        one = crew_days.of(lot["day"], lot["crew"])
        for row in lot["population"]:
            one["areas"][row["area"]] = True
        if days.marks.roots.get(subject) != subject:
            continue
        day = days.day(subject)
        one["marks"] += [(day["area"], low, high) for low, high in day["own"]]
        for hold in lot["holds"]:
            one["holds"].append({"lot": subject, "panel": hold["panel"], "why": hold["why"], "state": hold["state"]})
        for mark in days.marks.of.get(subject, []):
            if mark["body"].get("metal_temperature") is not None:
                one["metal"].append(_metal(mark["body"], mark["at"], "mark", mark["digest"]))


def take_walks(crew_days: CrewDays, record: dict, days: Days) -> None:
    """Each walk on its day: ``{"walk","digest","definition","areas","at","fall_protection","signed","phases","results"
    {result: answers}}``. ``phases``: what it was there for, ``first`` ``change`` ``night`` ``failed`` of a hold,
    ``stops``, ``audit``, ``rework``, ``by_hand``."""
    released: dict = {}
    for release in record["releases"].values():
        released.setdefault(release.get("walk"), {})[release["why"]] = True
    for subject in sorted(record["walks"]):
        walk = record["walks"][subject]
        one = crew_days.of(walk["at"][:10], walk.get("crew"))
        for area in walk.get("areas") or []:
            one["areas"][area] = True
        one["told"] += [(row["area"], max(row["from"], 1), row["to"]) for row in walk.get("placed") or []]
        if walk.get("metal_temperature") is not None:
            one["metal"].append(_metal(walk, walk["at"], "walk", walk["digest"]))
        results = dict.fromkeys(RESULTS, 0)
        for answer in walk["answers"]:
            said = record["answers"][answer]["result"]
            results[said if said in RESULTS else "not_determinable"] += 1
        phases = dict(released.get(subject, {}))
        for station in walk["stations"]:
            phases.update(_phases(record["stations"][station], record, days))
        one["walks"].append({
            "walk": subject, "digest": walk["digest"], "definition": walk.get("definition"),
            "areas": sorted(walk.get("areas") or []), "at": walk["at"],
            "fall_protection": walk.get("fall_protection"), "signed": walk["signoff"] is not None,
            "phases": sorted(phases), "results": {name: results[name] for name in RESULTS if results[name]},
        })  # fmt: skip


def take_findings(crew_days: CrewDays, record: dict) -> None:
    """``findings``: ids of what was opened that day; ``actions``: what was done about any, ``{"finding","kind","at",
    "digest"}``. Of the crew that the walk names, else of the one that the finding does."""
    for subject in sorted(record["findings"]):
        finding = record["findings"][subject]
        walk = record["walks"].get(finding.get("walk")) or {}
        crew = walk.get("crew") or finding.get("crew")
        opened = finding.get("opened") or record["answers"].get(subject)
        if opened:
            crew_days.of(opened["at"][:10], crew)["findings"].append(subject)
        for act in finding.get("history") or []:
            if opened and act["digest"] != opened.get("digest"):
                one = crew_days.of(act["at"][:10], crew)
                told = {"finding": subject, "kind": act["kind"], "at": act["at"], "digest": act["digest"]}
                one["actions"].append(told)


def _metal(told: dict, at: str, of: str, digest: str) -> dict:
    return {
        "at": at, "temperature": told["metal_temperature"], "by": told.get("metal_temperature_by"),
        "uncertainty": told.get("metal_uncertainty"), "of": of, "digest": digest,
    }  # fmt: skip


def _phases(station: dict, record: dict, days: Days) -> dict:
    lot = record["lots"].get(station.get("lot"))
    if lot is None:
        return {"by_hand": True}
    if lot["purpose"] != "work":
        return {lot["purpose"]: True}
    held = record["lots"][days.marks.roots.get(lot["id"], lot["id"])]["holds"]
    whys = [hold["why"] for hold in held if hold["panel"] == station["panel"]]
    if station["chosen"] != "hand":
        whys.append("stops")
    return dict.fromkeys(whys or ["by_hand"], True)
