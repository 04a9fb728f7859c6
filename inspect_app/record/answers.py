"""Answers and the result that counts: of several unresolved versions the worse, until a person picks."""

WORST_FIRST = ("fail", "too_close", "not_determinable", "pass", "not_applicable")


def worst(results: list) -> "str | None":
    """The worst of some results; None when there is none. An unknown word counts as not determinable."""
    ranks = [_rank(result) for result in results]
    return WORST_FIRST[min(ranks)] if ranks else None


def _rank(result: str) -> int:
    known = result if result in WORST_FIRST else "not_determinable"
    return WORST_FIRST.index(known)


def fold_answers(subjects: dict) -> dict:
    """``{subject: answer}`` from grouped versions (``heads.versions``): the body of the worst head, plus
    ``id, digest, by, at, clock, heads, result`` and ``versions``: every version ever recorded, as
    ``{"digest", "by", "at", "result"}`` sorted by digest."""
    return {subject: _answer(subject, subjects[subject]) for subject in sorted(subjects)}


def _answer(subject: str, group: dict) -> dict:
    result = worst([_result(entry) for entry in group["heads"]])
    chosen = [entry for entry in group["heads"] if _rank(_result(entry)) == _rank(result or "")][-1]
    payload = chosen["payload"]
    answer = dict(payload["body"])
    answer.update({
        "id": subject, "digest": chosen["digest"], "by": payload["by"], "at": payload["at"],
        "clock": payload["clock"], "heads": [entry["digest"] for entry in group["heads"]], "result": result,
        "versions": [
            {"digest": entry["digest"], "by": entry["payload"]["by"], "at": entry["payload"]["at"],
             "result": _result(entry)}
            for entry in group["all"]
        ],
    })
    return answer


def _result(entry: dict) -> str:
    return (entry["payload"]["body"].get("verdict") or {}).get("result") or "not_determinable"
