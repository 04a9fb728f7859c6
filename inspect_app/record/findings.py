"""Findings from opened to closed. A failed answer opens one by itself, anybody may open one by hand."""

from inspect_app.record.authority import objection
from inspect_app.record.finding_history import in_order
from inspect_app.record.finding_opened import by_hand, from_answers
from inspect_app.record.finding_said import KINDS, said
from inspect_app.record.finding_state import settle
from inspect_app.record.moment import moment
from inspect_app.record.panel_result import SEVERITIES

INSIDE = ("rule", "severities", "versions", "withdrawn", "before", "failing", "heads")  # of a finding, while it is made
WITHIN = ("kind", "gone", "authors", "names", "shown")  # of a statement
LISTS = (("correction", "corrections"), ("recheck", "rechecks"), ("reopening", "reopenings"))


def fold_findings(record: dict, grouped: dict, people: dict, flags: list) -> dict:
    """``{finding id: finding}`` in order of id; the shape stands in DEVELOPERS.md, "Findings". ``record``: with its
    stations, answers, walks and lots."""
    found = from_answers(record, grouped)
    found.update(by_hand(record, grouped, people))
    told = said(grouped, people, flags)
    assigned = {body["finding"]: body for body in _assigned(grouped, people)}
    findings = {}
    for name in sorted(found):
        about = {kind: told[kind].pop(name, []) for kind in KINDS}
        findings[name] = _finding(record, found[name], about, assigned.pop(name, None), grouped, people, flags)
    for kind in KINDS:
        for name in told[kind]:
            for one in told[kind][name]:
                _flag(flags, one["digest"], "finding_unknown", str(name))
    for name in assigned:
        for digest in assigned[name]["heads"]:
            _flag(flags, digest, "finding_unknown", str(name))
    _flag_orphans(record, grouped, flags)
    return findings


def _finding(record: dict, finding: dict, about: dict, assignment: "dict | None", grouped: dict, people: dict,
             flags: list) -> dict:  # fmt: skip
    _look_back(finding, people)
    settled = settle(finding, about)
    for kind in about:
        for one in about[kind]:
            for code in one["problems"]:
                if code not in ("no_authority", "unknown_person", "wrong_key") and not one["gone"]:
                    _flag(flags, one["digest"], code, finding["id"])
    if "withdrawn_critical" in settled["problems"]:
        _flag(flags, settled["closed_by"]["digest"], "withdrawn_critical", finding["id"])
    _milder(finding, settled, flags)
    if finding["source"] == "hand":
        settled["problems"] += [code for code in {objection(one, people) for one in finding["versions"]} if code]
        settled["problems"] += ["unresolved"] if finding["heads"] > 1 else []
    order = in_order(_versions(finding, about, grouped))
    places = {one["digest"]: at for at, one in enumerate(order)}
    walk = record["walks"].get(finding["walk"]) or {}
    if assignment and assignment["problems"]:
        settled["problems"] += assignment["problems"]
    ordered = assignment if assignment and not assignment["problems"] else {}
    told = {name: finding[name] for name in finding if name not in INSIDE}
    told.update({
        "state": settled["state"], "assignment": assignment, "closed_by": settled["closed_by"], "history": order,
        "problems": sorted(set(settled["problems"])), "firm": ordered.get("firm") or None,
        "crew": ordered.get("crew") or walk.get("crew") or None,
    })  # fmt: skip
    for kind, name in LISTS:
        told[name] = [_plain(one) for one in _standing(about[kind], places)]
    conceded = _standing(about["concession"], places)
    counting = [one for one in conceded if one["counts"] and not one["spent"]]
    told["concession"] = _plain((counting or conceded)[0]) if conceded else None
    return told


def _look_back(finding: dict, people: dict) -> None:
    """What whoever may said of it before and since: ``before``, the photos of every version, since dropping one from
    the newest makes it no new one; ``failing``, when it was said again, after the first time, that the place fails."""
    finding["before"], finding["failing"] = list(finding["photos"]), []
    for entry in finding["versions"]:
        body = entry["payload"]["body"]
        if not objection(entry, people):
            finding["before"] += body.get("photos") or []
            fails = finding["source"] == "hand" or (body.get("verdict") or {}).get("result") == "fail"
            if fails and entry["digest"] != finding["opened"]["digest"]:
                finding["failing"].append(entry["payload"]["at"])


def _milder(finding: dict, settled: dict, flags: list) -> None:
    """A finding that was once told as more severe than it stands now."""
    told = [SEVERITIES.index(one) for one in finding["severities"] if one in SEVERITIES]
    own = SEVERITIES.index(finding["severity"]) if finding["severity"] in SEVERITIES else len(SEVERITIES)
    if told and min(told) < own:
        settled["problems"].append("severity_lowered")
        _flag(flags, finding["opened"]["digest"], "severity_lowered", finding["id"])


def _assigned(grouped: dict, people: dict) -> list:
    """The assignment that stands for each finding: of several heads one by somebody who may, the last of those."""
    found = []
    for subject in sorted(grouped.get("assignment", {})):
        heads = grouped["assignment"][subject]["heads"]
        ranked = [
            (not objection(entry, people), moment(entry["payload"]["at"]), entry["digest"], entry) for entry in heads
        ]  # fmt: skip
        may, _, digest, entry = max(ranked)
        body = dict(entry["payload"]["body"])
        body.update({
            "digest": digest, "by": entry["payload"]["by"], "at": entry["payload"]["at"],
            "heads": [one["digest"] for one in heads], "problems": [] if may else [objection(entry, people)],
        })  # fmt: skip
        found.append(body)
    return found


def _versions(finding: dict, about: dict, grouped: dict) -> list:
    kind = "answer" if finding["source"] == "answer" else "finding"
    entries = [(kind, entry) for entry in finding["versions"]]
    for entry in grouped.get("assignment", {}).get(finding["id"], {"all": []})["all"]:
        entries.append(("assignment", entry))
    told = [
        {"kind": name, "digest": entry["digest"], "by": entry["payload"]["by"], "at": entry["payload"]["at"],
         "names": entry["payload"]["replaces"]}
        for name, entry in entries
    ]  # fmt: skip
    opened = [finding["opened"]["digest"]]
    for name in about:
        for one in about[name]:
            told.append(dict(one, names=one["names"] + opened))
    return told


def _standing(said_of: list, places: dict) -> list:
    return sorted([one for one in said_of if not one["gone"]], key=lambda one: places[one["digest"]])


def _plain(statement: dict) -> dict:
    told = {name: statement[name] for name in statement if name not in WITHIN}
    told["problems"] = sorted(set(told["problems"]))
    return told


def _flag_orphans(record: dict, grouped: dict, flags: list) -> None:
    """What names a walk or an area that is not here; it may still come."""
    for kind in ("finding", "correction", "recheck"):
        for group in grouped.get(kind, {}).values():
            for entry in group["all"]:
                for name, things in (("walk", "walks"), ("area", "areas")):
                    other = entry["payload"]["body"].get(name)
                    if other is not None and other not in record[things]:
                        _flag(flags, entry["digest"], "orphan", other)


def _flag(flags: list, digest: str, code: str, other: str) -> None:
    flags.append({"digest": digest, "code": code, "facts": {"other": other}})
