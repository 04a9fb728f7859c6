"""Follow a definition's input paths (``assembly.slot_length``) into the record's bodies."""

ROOTS = ("job", "assembly", "area", "walk", "station", "zone", "reading", "found")


def follow(path: object, context: dict) -> object:
    """The value at ``path``; None where any step is missing. A literal (a quantity, a number, a boolean, or a
    word whose first part is no root) stands for itself."""
    if not isinstance(path, str) or path.split(".")[0] not in ROOTS or "." not in path:
        return path
    value: object = context
    for step in path.split("."):
        if not isinstance(value, dict):
            return None
        value = value.get(step)
    return value


def zone_of(assembly: "dict | None", station: "dict | None") -> "dict | None":
    """What the approved assembly says for the station's zone, found by the zone's name."""
    name = (station or {}).get("zone")
    for zone in (assembly or {}).get("zones") or []:
        if isinstance(zone, dict) and zone.get("name") == name:
            return zone
    return None
