"""What state a finding is in: from the set of what was said of it, whatever came first.

What no later word can make good again is left out of the sum: a recheck by whoever corrected the place, a good recheck
whose own reading fails, a concession that names no document, a correction that was found not good or whose recheck was
reopened. A correction or recheck of a critical finding counts towards closing only with evidence of its own.
"""

from inspect_app.record.finding_evidence import failed, fresh, passes, shows
from inspect_app.record.moment import moment

STATES = ("open", "corrected", "closed", "conceded", "withdrawn")


def settle(finding: dict, said: dict) -> dict:
    """``{"state", "closed_by", "problems"}`` of a finding (``finding_opened``). ``said``: ``{kind: [statement]}`` of it
    (``finding_said``), to which this adds: every statement its ``problems`` and ``counts``, a correction its ``state``
    ``waiting`` ``good`` ``not_good`` ``spent`` (its recheck was reopened) or ``no_effect``, a recheck and a concession
    ``spent``. ``closed_by`` is the recheck, concession or change of the answer that ended it, or None."""
    _weigh(finding, said)
    _reopen(said)
    rechecks = [one for one in said["recheck"] if one["counts"] and not one["spent"]]
    corrections = {one["digest"]: one for one in said["correction"]}
    for recheck in rechecks:  # one that says not good is stronger, in whatever order they come
        one = corrections[recheck["correction"]]
        if one["state"] == "waiting" or (one["state"] == "good" and recheck["result"] == "not_good"):
            one["state"] = recheck["result"]
    problems = _shown(finding, said, rechecks, corrections)
    closing = [
        one for one in rechecks
        if one["result"] == "good" and one["shown"] and corrections[one["correction"]]["state"] == "good"
    ]
    conceded = [one for one in said["concession"] if one["counts"] and not one["spent"]]
    state, closed_by = "open", None
    if finding["withdrawn"]:
        state, closed_by = "withdrawn", finding["withdrawn"]
        if _grave(finding):
            problems.append("withdrawn_critical")
    elif closing:
        others = [one for one in closing if not _corrected_by(one["by"], said["correction"])]
        state, closed_by = "closed", _first(others or closing)
        if _contradicted(closed_by, rechecks, finding["failing"]):
            problems.append("contradicted")
        if not others:
            problems.append("recheck_by_corrector")
    elif conceded:
        state, closed_by = "conceded", _first(conceded)
    elif [1 for one in corrections.values() if one["state"] in ("waiting", "good")]:
        state = "corrected"
    for kind in said:
        for one in said[kind]:
            problems += [] if one["gone"] else one["problems"]
    ended = {name: closed_by[name] for name in ("digest", "by", "at")} if closed_by else None
    return {"state": state, "closed_by": ended, "problems": sorted(set(problems))}


def _weigh(finding: dict, said: dict) -> None:
    """What each statement is worth by itself and beside the one it names."""
    corrections = {one["digest"]: one for one in said["correction"]}
    for one in said["correction"]:
        if failed(one):
            one["problems"].append("correction_fails")
        one["counts"] = not one["problems"] and not one["gone"]
        one["state"] = "waiting" if one["counts"] else "no_effect"
    for one in said["recheck"]:
        other = corrections.get(one["correction"])
        if other is None:
            one["problems"].append("recheck_unknown")
        elif one["by"] in other["authors"]:
            one["problems"].append("own_recheck")
        elif other["gone"]:
            one["problems"].append("recheck_of_old")
        if one["result"] == "good" and failed(one):
            one["problems"].append("recheck_fails")
        one["counts"], one["spent"] = not one["problems"] and not one["gone"], False
    for one in said["concession"]:
        if not one.get("document"):
            bare = not (one.get("reference") or "").strip()
            one["problems"].append("concession_names_nothing" if bare else "concession_without_document")
        left = [code for code in one["problems"] if code != "concession_without_document"]
        one["counts"], one["spent"] = not left and not one["gone"], False


def _reopen(said: dict) -> None:
    corrections = {one["digest"]: one for one in said["correction"]}
    named = {one["digest"]: one for kind in ("recheck", "concession") for one in said[kind]}
    for reopening in said["reopening"]:
        found = [named[digest] for digest in reopening.get("of") or [] if digest in named]
        if not found:
            reopening["problems"].append("reopening_names_nothing")
        reopening["counts"] = not reopening["problems"] and not reopening["gone"]
        for one in found if reopening["counts"] else []:
            one["spent"] = True
            # The correction goes with its recheck: else the same one, rechecked by a third, would close it again.
            if one["kind"] == "recheck" and one["correction"] in corrections:
                corrections[one["correction"]]["state"] = "spent"


def _shown(finding: dict, said: dict, rechecks: list, corrections: dict) -> list:
    """Set ``shown`` of every recheck that counts: whether it may close. The problems of the finding."""
    wanted = _grave(finding)
    old = set(finding["before"])
    beside: set = set()
    for kind in said:
        for one in said[kind]:
            # What counts for nothing takes nobody's evidence away either.
            worn = (kind == "reopening" or one.get("result") == "not_good") and one["counts"]
            worn = worn or one.get("spent") or one.get("state") in ("spent", "not_good")
            old.update((one.get("photos") or []) if worn else [])
    for one in corrections.values():  # of whoever corrects, be it elsewhere in the finding: no second look of another's
        beside.update((one.get("photos") or []) if one["counts"] or one["gone"] else [])
    problems = []
    for one in rechecks:
        correction = corrections[one["correction"]]
        both = shows(correction, old, set(), finding["rule"]) and shows(one, old, beside, finding["rule"])
        one["shown"] = bool(both or not wanted)
        if one["result"] != "good" or correction["state"] != "good":
            continue
        if not one["shown"]:
            one["problems"].append("critical_without_evidence")
        if finding["rule"] and not passes(one, finding["rule"]) and not passes(correction, finding["rule"]):
            problems.append("reading_not_taken_again")
        if len(fresh(one, old, beside)) < len(one.get("photos") or []):
            one["problems"].append("photo_shown_before")
        if len(fresh(correction, old, set())) < len(correction.get("photos") or []):
            problems.append("photo_shown_before")
    return problems


def _grave(finding: dict) -> bool:
    """Critical by any version, or of a severity that nobody told, which is no lighter one."""
    untold = [one for one in finding["severities"] if one is None] and finding["severity"] is None
    return bool("critical" in finding["severities"] or untold)


def _corrected_by(person: str, corrections: list) -> bool:
    """Whether they corrected the finding too, if not in the correction that they looked at."""
    return bool([1 for one in corrections if person == one["by"] and (one["counts"] or one["gone"])])


def _first(said: list) -> dict:
    found: dict = min([(moment(one["at"]), one["digest"], one) for one in said])[2]
    return found


def _contradicted(closing: dict, rechecks: list, failing: list) -> bool:
    """Whether somebody found another correction not good, or recorded the place as failing again, after this one had
    closed it, as the clocks tell. ``failing``: when each failing version was said."""
    later = [one["at"] for one in rechecks if one["result"] == "not_good"] + failing
    return bool([1 for at in later if moment(at) > moment(closing["at"])])
