"""The cover: what was inspected, when and by whom, and the result in a word and in numbers.

It carries what ISO/IEC 17020:2012 7.4.2 asks of an inspection report: a) issuing body, b) identification and
date of issue, c) dates of inspection, d) what was inspected, e) the sign of approval, f) the statement of
conformity, g) the results (the sections that follow).
"""

from typing import Any

from inspect_app.evidence.findings_told import UNSETTLED, tally
from inspect_app.report.order import RESULTS


def cover(contents: dict[str, Any]) -> dict[str, Any]:
    """``verdict`` is one of ``fails``, ``raised`` (nothing failed, but a finding opened by hand is not settled),
    ``open`` (something could not be settled, or evidence is missing), ``none_found``, ``nothing``. It speaks of the
    places looked at and of nothing else; but where no answer failed and a line of a fit check did, it is ``fit_fails``:
    the approval does not hold there, whatever was seen on that roof."""
    results = [answer["result"] for answer in contents["answers"]]
    counts = {one: results.count(one) for one in RESULTS}
    counts["not_determinable"] += sum(result not in RESULTS for result in results)
    # What was measured and written down is no "does not apply": a reader looks for the number.
    counts["recorded"] = sum(answer["recorded"] for answer in contents["answers"])
    counts["not_applicable"] -= counts["recorded"]
    days = sorted(str(day["at"])[:10] for day in contents["days"] if day["at"])
    return {
        "verdict": _word(counts, contents),
        "counts": counts,
        "answers": len(results),
        "stations": len(contents["stations"]),
        "places": places(contents["stations"]),
        "walks": len(contents["days"]),
        "photos": len(contents["photos"]),
        **tally(contents["findings"]),
        "raised": _raised(contents),
        "fit": _fit(contents),
        "areas": [area["name"] for area in contents["areas"]],
        "assemblies": [assembly["name"] for assembly in contents["assemblies"]],
        "dates": [days[0], days[-1]] if days else [],
        "inspected_by": _unique([day["by"]["name"] for day in contents["days"]]),
        "signed_by": _unique([one["name"] for one in contents["signoffs"] if one["signed"]]),
        "unsigned": sum(not one["signed"] for one in contents["signoffs"]),
    }


def _word(counts: dict[str, int], contents: dict[str, Any]) -> str:
    if counts["fail"]:
        return "fails"
    if _raised(contents):
        return "raised"
    if _fit(contents)["fail"]:
        return "fit_fails"
    if not contents["answers"]:
        return "nothing"
    if counts["not_determinable"] or counts["too_close"] or any(one["blocks"] for one in contents["missing"]):
        return "open"
    return "none_found"


def places(stations: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """``[{"chosen", "count", "yes", "unsafe", "covered", "unknown"}]``: the places by how they were chosen, and
    how many of them were reached. A drawn place that was not reached is counted here, never replaced."""
    told = []
    for chosen in ("drawn", "hand"):
        reached = [one["reached"] for one in stations if (one["chosen"] == "drawn") == (chosen == "drawn")]
        known = {word: reached.count(word) for word in ("yes", "unsafe", "covered")}
        told.append({"chosen": chosen, "count": len(reached), **known, "unknown": len(reached) - sum(known.values())})
    return told


def _fit(contents: dict[str, Any]) -> dict[str, int]:
    """``areas`` that have a fit check, its lines that ``fail``, and those that are ``open``."""
    results = [line["result"] for one in contents["fits"] for line in one["lines"]]
    closed = ("fail", "pass", "not_applicable")
    return {"areas": len(contents["fits"]), "fail": results.count("fail"),
            "open": sum(result not in closed for result in results)}  # fmt: skip


def _raised(contents: dict[str, Any]) -> int:
    """Findings that somebody opened by hand and nobody settled: no answer tells of them."""
    return sum(finding["source"] == "hand" and finding["state"] in UNSETTLED for finding in contents["findings"])


def _unique(names: list[Any]) -> list[Any]:
    return [name for at, name in enumerate(names) if name and name not in names[:at]]
