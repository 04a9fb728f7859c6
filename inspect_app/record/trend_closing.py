"""How long findings stay open: those closed, and those that still are, which are never left out of the sum."""

from inspect_app.record.moment import moment
from inspect_app.rules.compare import at_most

KINDS = ("walks", "stations", "answers", "photos", "marks", "stops", "releases", "lots")
HOUR = 3600000.0


def closing(record: dict, rows: list) -> dict:
    """``{"as_of", "states": {state: n}, "n", "median", "watched", "late", "unreadable", "findings"}``; times in hours.

    ``as_of``: when the newest entry of the record was said; until then a finding that is not closed has been open.
    ``median``: after so long half were closed or accepted by the engineer, None where fewer than half are so far. It
    is that of E. L. Kaplan and P. Meier (J. Am. Stat. Assoc. 53, 1958), in which an open one counts for as long as it
    could be seen; ``watched`` tells how many were seen as long as the median. ``findings``: ``[{"id", "digest",
    "closed" (digest) or None, "state", "at", "until", "hours", "by_day", "late"}]``, the longest open first; what was
    withdrawn is counted under ``states`` alone, and so is what no clock can tell (``unreadable``: ids). Where two
    phones' clocks put the end before the beginning, the time is 0.
    """
    now = newest(record)
    states: dict = {}
    told, unreadable = [], []
    for row in rows:
        states[row["state"]] = states.get(row["state"], 0) + 1
        if row["state"] == "withdrawn":
            continue
        still = not row["closed"]
        until = now if still else row["closed"]["at"]
        if not moment(row["at"]) or not moment(until):
            unreadable.append(row["id"])
            continue
        told.append({
            "id": row["id"], "digest": row["digest"], "closed": None if still else row["closed"]["digest"],
            "state": row["state"], "at": row["at"], "until": until,
            "hours": max(moment(until) - moment(row["at"]), 0) / HOUR, "by_day": row["by_day"],
            "late": bool(row["by_day"]) and until[:10] > row["by_day"],
        })  # fmt: skip
    half = median([(one["hours"], one["closed"] is not None) for one in told])
    told.sort(key=lambda one: (one["closed"] is not None, -one["hours"], one["id"]))
    return {
        "as_of": now or None, "states": states, "n": len(told),
        "median": half[0] if half else None, "watched": half[1] if half else None,
        "late": len([1 for one in told if one["late"]]), "unreadable": unreadable, "findings": told,
    }  # fmt: skip


def median(times: list) -> "tuple | None":
    """``(time, watched)``: by when half have ended, of ``[(time, ended)]``, and how many were watched so long; None
    where the share still going stays above half."""
    order = sorted(times)
    left, at = 1.0, 0
    while at < len(order):
        time, watched, ended = order[at][0], len(order) - at, 0
        while at < len(order) and order[at][0] == time:
            ended += 1 if order[at][1] else 0
            at += 1
        left *= (watched - ended) / watched
        if ended and at_most(left, 0.5):
            return float(time), watched
    return None


def newest(record: dict) -> str:
    """The wall time of the newest entry told by the record, ``""`` of an empty one."""
    said = [(moment(one["at"]), one["at"]) for kind in KINDS for one in record[kind].values()]
    for finding in record["findings"].values():
        said += [(moment(one["at"]), one["at"]) for one in finding["history"]]
    return max(said)[1] if said else ""
