"""What a report speaks of: the job as a whole, one walk, one audit, or what was recorded around one place.

A scope is ``{"kind": "closeout"}``, ``{"kind": "walk", "walk": id}``, ``{"kind": "audit", "lot": id}`` or
``{"kind": "survey", …}``. Narrowing happens after the fold: what is decided over the whole job (a lot, a hold, a
finding's state) stays as the whole job decides it, and nothing in a part is judged anew for want of the rest.
"""

from inspect_app.record.crew import crew_of
from inspect_app.record.narrow import keep
from inspect_app.record.survey_scope import survey
from inspect_app.rules.refused import Refused

WHOLE = {"kind": "closeout"}
FIELDS = {  # what a scope names besides its kind
    "closeout": (), "walk": ("walk",), "audit": ("lot",), "survey": ("area", "panel", "from_low_end", "radius"),
}  # fmt: skip
ABOUT = (("corrections", "walk"), ("rechecks", "walk"))  # what is said of a finding on a walk
UNSETTLED = ("open", "corrected")


def narrowed(record: dict, scope: dict) -> dict:
    """The record with no more in it than the scope speaks of; the record itself is left as it is.

    ``record``: as ``fold`` gives it. ``closeout``: all of it.

    ``walk``: that walk with its places, answers, photos and releases; its crew's day, whole, with the lots of that day
    on its areas and those that its places, photos and releases name, their marks and stops; findings opened on it or
    acted on in it; the areas of all these, their assemblies and fit checks.

    ``audit``: that lot; every walk on which one of its places was looked at, whole, as above but without the crews'
    days and their lots; what the audit says against the crews' own looks.

    ``survey``: what was recorded within a radius of a place, and beside it (``survey_scope``).

    Always stays: the job, its sampling, every key's chain, doubts about keys and clocks, and each flag and doubt but
    those whose entries all belong to what was left out. Coverage, series and the figures of the job to date speak of
    the whole and are empty in a part. Raises ``Refused``: ``scope_unknown`` (``kind``, or the ``walk`` or ``lot`` that
    is not in the record; ``scope`` where it names anything else).
    """
    kind = scope.get("kind") if isinstance(scope, dict) else None
    if not isinstance(kind, str) or kind not in NARROWINGS:
        raise Refused("scope_unknown", "kind", kind)
    named = list(FIELDS[kind])
    named.append("kind")
    if sorted(scope) != sorted(named):
        raise Refused("scope_unknown", "scope", sorted(scope))
    narrow = NARROWINGS[kind]
    found: dict = narrow(record, scope)
    return found


def scope_of(kind: str, given: dict) -> dict:
    """The scope of that kind with what it names out of ``given``; None for what is not there. Raises ``Refused``
    (``scope_unknown``) for another kind."""
    if kind not in FIELDS:
        raise Refused("scope_unknown", "kind", kind)
    scope: dict = {"kind": kind}
    for name in FIELDS[kind]:
        scope[name] = given.get(name)
    return scope


def outside(record: dict, part: dict) -> dict:
    """What the record holds beyond its ``part``: ``{"walks", "stations", "findings", "unsettled", "critical", "lots"``
    counts, ``"areas"`` names}; ``unsettled``: findings that nobody has closed or conceded, ``critical`` those of them
    that are."""
    left = {name: [key for key in record[name] if key not in part[name]]
            for name in ("walks", "stations", "findings", "lots", "areas")}  # fmt: skip
    open_ones = [record["findings"][key] for key in left["findings"] if record["findings"][key]["state"] in UNSETTLED]
    told: dict = {name: len(left[name]) for name in ("walks", "stations", "findings", "lots")}
    told["unsettled"] = len(open_ones)
    told["critical"] = len([1 for one in open_ones if one["severity"] == "critical"])
    told["areas"] = sorted([str(record["areas"][key].get("name")) for key in left["areas"]])
    return told


def _closeout(record: dict, scope: dict) -> dict:
    return record


def _walk(record: dict, scope: dict) -> dict:
    walk = scope.get("walk")
    if not isinstance(walk, str) or walk not in record["walks"]:
        raise Refused("scope_unknown", "walk", walk)
    days = [day for day in record["days"] if [1 for one in day["walks"] if one["walk"] == walk]]
    there = dict.fromkeys(record["walks"][walk].get("areas") or [], True)
    there.update({one["area"]: True for one in record["stations"].values() if one.get("walk") == walk})
    lots = {}
    for day in days:
        lots.update({key: True for key in record["lots"] if _of_day(record["lots"][key], day, there)})
    kept = _with_walks(record, {walk: True}, lots)
    kept["days"] = days
    return keep(record, kept)


def _audit(record: dict, scope: dict) -> dict:
    lot = scope.get("lot")
    if not isinstance(lot, str) or (record["lots"].get(lot) or {}).get("purpose") != "audit":
        raise Refused("scope_unknown", "lot", lot)
    walks = {one["walk"]: True for one in record["stations"].values() if one.get("lot") == lot}
    kept = _with_walks(record, {key: True for key in walks if key in record["walks"]}, {lot: True})
    kept["audits"] = [lot]
    return keep(record, kept)


def _of_day(lot: dict, day: dict, there: dict) -> bool:
    if not [1 for row in lot["population"] if row["area"] in there]:
        return False
    return lot["purpose"] != "audit" and lot["day"] == day["day"] and crew_of(lot) == crew_of({"crew": day["crew"]})


def _with_walks(record: dict, walks: dict, lots: dict) -> dict:
    """What was recorded on these walks, and what it names."""
    kept: dict = {name: [key for key in record[name] if record[name][key].get("walk") in walks]
                  for name in ("stations", "answers", "photos", "releases")}  # fmt: skip
    named = dict(lots)
    for name in ("stations", "photos", "releases"):
        named.update({record[name][key].get("lot"): True for key in kept[name]})
    kept["walks"] = list(walks)
    kept["lots"] = [key for key in record["lots"] if key in named]
    kept["releases"] += [key for key in record["releases"] if record["releases"][key].get("lot") in lots]
    for name in ("marks", "stops"):
        kept[name] = [key for key in record[name] if record[name][key].get("lot") in named]
    kept["findings"] = [key for key in record["findings"] if _touched(record["findings"][key], walks)]
    return kept


def _touched(finding: dict, walks: dict) -> bool:
    if finding.get("walk") in walks:
        return True
    return any(one.get(name) in walks for about, name in ABOUT for one in finding.get(about) or [])


NARROWINGS = {"closeout": _closeout, "walk": _walk, "audit": _audit, "survey": survey}
