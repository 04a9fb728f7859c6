"""What shows that a place was put right: a new photo, or a reading that passes by the rule that had failed it."""


def shows(statement: dict, old: set, beside: set, rule: "str | None") -> bool:
    """Whether a correction or a recheck carries evidence. ``old`` and ``beside``: photos that were named before it and
    show nothing new; ``rule``: the one that failed the place, None where none did."""
    return bool(fresh(statement, old, beside)) or passes(statement, rule)


def fresh(statement: dict, old: set, beside: set) -> list:
    return [photo for photo in statement.get("photos") or [] if photo not in old and photo not in beside]


def passes(statement: dict, rule: "str | None") -> bool:
    """Any version of the same rule: a newer release may have judged the second look. Where a person's eye failed the
    place, no reading shows that it is good now: a passing one of another thing is soon had."""
    verdict = statement.get("verdict") or {}
    if statement.get("reading") is None or verdict.get("result") != "pass" or not verdict.get("rule"):
        return False
    return rule is not None and str(rule).split("@")[0] == str(verdict["rule"]).split("@")[0]


def failed(statement: dict) -> bool:
    """Whether its own reading says that the place is still bad."""
    return (statement.get("verdict") or {}).get("result") == "fail"
