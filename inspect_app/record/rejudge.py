"""Judge a recorded verdict again from its own inputs. The verdict shown at the time stands; this stands
beside it."""

from inspect_app.record.fit_lines import settled_by
from inspect_app.rules.refused import Refused
from inspect_app.rules.rulebook import judge
from inspect_app.rules.unit import change_unit, dimension_of

NEAR = 1e-9


def rejudge(verdict: dict, choice: "str | None" = None) -> "str | None":
    """``same``, ``different``, or ``not_determinable`` (a rule this release does not know, inputs it breaks
    on); None where no rule was used. ``choice``: what a person said instead of leaving it to the rule.

    A phone records ``not_applicable`` under a rule that only computes, and ``not_determinable`` where the rule
    refuses its inputs or lacks one. Nothing that the record says of its own reason is taken on trust.
    """
    rule = verdict.get("rule")
    if not rule:
        return None
    result = verdict.get("result")
    try:
        again = judge(rule, verdict.get("inputs") or {})
    except Refused as refused:
        if refused.code == "unknown_rule":
            return "not_determinable"
        # Refused or missing inputs: an unknown is never a pass, and never "does not apply".
        return "same" if result == "not_determinable" and not verdict.get("values") else "different"
    except Exception:  # recorded inputs are anybody's data: a rule that breaks on them has no opinion
        return "not_determinable"
    # Some rules only compute: then nothing was judged, unless a person said what follows from the number.
    expected = again["verdict"] or choice or "not_applicable"
    agree = result == expected
    return "same" if agree and _same_values(verdict.get("values") or {}, again["values"]) else "different"


def rejudge_line(line: dict) -> "str | None":
    """As ``rejudge``, of one line ``{"line", "verdict"}`` of a fit check. A line is settled by its own rule and inputs
    and by no others: the same rule the other way round, ``at_least`` for ``at_most``, lets anything pass. What a
    person says of the deck or the underlayment, or the record of the fixed line, is settled by its own inputs."""
    name, verdict = line["line"], line["verdict"]
    rule, own = verdict.get("rule"), settled_by(name)
    result, inputs = verdict.get("result"), verdict.get("inputs") or {}
    if rule is not None:
        again = rejudge(verdict)
        if own is not None and (rule.split("@")[0] != own[0] or (again == "same" and not _its_own(inputs, own[1]))):
            return "different"
        return again
    if result == "not_determinable":
        return None
    if name == "fixed_place":
        return "same" if result == "pass" and inputs.get("fixed_line") else "different"
    if name in ("deck", "underlayment"):
        says = {"as_approved": "pass", "other": "fail"}.get(str(inputs.get(name)))
        return "same" if inputs.get("approved") and says == result else "different"
    # A line of a later release may be one that a person settles; those of this one are settled by a rule.
    return "different" if own is not None or name == "zones" else "not_determinable"


def rejudge_mark(verdict: dict) -> "str | None":
    """As ``rejudge``, of a survey's wear mark: its rule judges nothing, so that all it says is its reason."""
    again = rejudge(verdict)
    if again == "same" and verdict.get("result") == "not_applicable":
        reason = judge(verdict["rule"], verdict["inputs"])["reason"] or {}
        return "same" if (verdict.get("reason") or {}).get("code") == reason.get("code") else "different"
    return again


def _its_own(inputs: dict, own: dict) -> bool:
    """Whether every input is one of the line's, and one that is the same for every roof is that."""
    return all(name in own and (isinstance(own[name], str) or inputs[name] == own[name]) for name in inputs)


def _in_text(value: object) -> object:
    """An entry may carry its whole numbers as text."""
    return [str(one) for one in value] if isinstance(value, list) else value


def _same_values(recorded: dict, again: dict) -> bool:
    """Every number recorded comes out again, within 1e-9 of itself; a word or a list as it is."""
    for name, quantity in recorded.items():
        found = again.get(name)
        try:
            if found and isinstance(found["value"], (str, list)):
                if _in_text(quantity["value"]) != _in_text(found["value"]):
                    return False
                continue
            if not found or dimension_of(quantity["unit"]) != dimension_of(found["unit"]):
                return False
            value = change_unit(float(quantity["value"]), quantity["unit"], found["unit"])
        except (TypeError, KeyError, ValueError):
            return False
        # "nan" and "inf" are within nothing: neither compares as they must to pass here.
        if not abs(value - found["value"]) <= NEAR * max(abs(found["value"]), 1.0):
            return False
    return True
