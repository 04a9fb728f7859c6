"""Where something was first said: a correction neither makes a late saying early nor an early one late."""


def first_said(versions: list, thing: dict, names: tuple) -> list:
    """``[(kid, seq)]`` of the versions that say the same of ``names`` as ``thing`` and correct none that does."""
    same = [
        entry for entry in versions
        if all(entry["payload"]["body"].get(name) == thing.get(name) for name in names)
    ]
    digests = [entry["digest"] for entry in same]
    return sorted([
        (entry["kid"], entry["payload"]["seq"]) for entry in same
        if not any(old in digests for old in entry["payload"]["replaces"])
    ])
