"""In what several versions of one thing differ, member by member of what they say."""


def says_otherwise(versions: list) -> dict:
    """``{digest: [[member, value]]}``, members sorted: those that are not the same in all of ``versions``. ``value`` is
    the text, number, yes or no, or quantity that this one says; None where it says nothing or more than fits a line."""
    bodies = {entry["digest"]: entry["payload"]["body"] for entry in versions}
    members: dict = {}
    for body in bodies.values():
        for member in body:
            members[member] = True
    apart = [member for member in sorted(members) if _differ([body.get(member) for body in bodies.values()])]
    return {digest: [[member, _short(bodies[digest].get(member))] for member in apart] for digest in bodies}


def _differ(values: list) -> bool:
    return bool([value for value in values[1:] if value != values[0]])


def _short(value: object) -> object:
    if isinstance(value, dict):
        return value if sorted(value) == ["unit", "value"] else None
    return None if isinstance(value, list) else value
