"""The fit check of each area: what the newest version found, and every version there was."""

from inspect_app.record.answers import worst


def fold_fits(subjects: dict) -> dict:
    """``{area id: fit}`` from grouped versions (``heads.versions``): the body of the worst head, plus ``id, digest,
    by, at, clock, heads, result`` (the worst of its lines) and ``versions`` as answers have them."""
    return {area: _fit(area, subjects[area]) for area in sorted(subjects)}


def _fit(area: str, group: dict) -> dict:
    result = worst([_result(entry) for entry in group["heads"]])
    chosen = [entry for entry in group["heads"] if _result(entry) == result][-1]
    payload = chosen["payload"]
    fit = dict(payload["body"])
    fit.update({
        "id": area, "digest": chosen["digest"], "by": payload["by"], "at": payload["at"], "clock": payload["clock"],
        "heads": [entry["digest"] for entry in group["heads"]], "result": result,
        "versions": [
            {"digest": entry["digest"], "by": entry["payload"]["by"], "at": entry["payload"]["at"],
             "result": _result(entry)}
            for entry in group["all"]
        ],
    })
    return fit


def _result(entry: dict) -> str:
    """The worst line; one without an answer is an unknown, and so is a check without any line."""
    lines = entry["payload"]["body"].get("lines") or []
    results = [(line.get("verdict") or {}).get("result") or "not_determinable" for line in lines]
    return worst([one for one in results if one != "not_applicable"]) or "not_determinable"
