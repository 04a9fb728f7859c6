"""The zone map of an area, read: widths of the strips, the assembly's names of the zones, and what was drawn over."""

from inspect_app.rules.inputs import plain
from inspect_app.rules.outline import read_ring
from inspect_app.rules.quantity import convert
from inspect_app.rules.refused import Refused
from inspect_app.rules.unit import change_unit

EDGES = ("eave", "ridge", "rake", "hip", "valley", "wall", "penetration")
ZONES = ("field", "edge", "corner")
MOST_DRAWN = 100  # zones of one area: every panel is held against each
LEAST_SPACING = 1.0  # mm: nothing is fastened closer, and places without number are a slip of the hand


def spacings_of(assembly: object, unit: str, faults: list) -> dict:
    """``{zone: spacing in unit}`` of the approved assembly: those that can be stepped off."""
    if not isinstance(assembly, dict):
        faults.append(Refused("assembly_unknown", "assembly", None))
        return {}
    zones = assembly.get("zones")
    if not isinstance(zones, list) or len(zones) == 0:
        faults.append(Refused("zones_missing", "assembly.zones", None))
        return {}
    found: dict = {}
    for place in range(len(zones)):
        zone, field = zones[place], "assembly.zones[" + str(place) + "]"
        if not isinstance(zone, dict) or not isinstance(zone.get("name"), str):
            faults.append(Refused("zone_unknown", field, None))
            continue
        try:
            spacing = convert(zone.get("spacing"), unit, field + ".spacing")
            if not spacing > 0.0:
                raise Refused("not_above_zero", field + ".spacing", zone["spacing"])
            if spacing < change_unit(LEAST_SPACING, "mm", unit):
                raise Refused("out_of_range", field + ".spacing", zone["spacing"])
            found[zone["name"]] = spacing
        except Refused as refused:
            faults.append(Refused(refused.code, refused.field, plain(refused.value)))
    return found


def names_of(area: dict, faults: list) -> dict:
    """``{"field", "edge", "corner"}`` → the assembly's names. Without a zone map all three are the area's only zone;
    None where it has several, since nobody told where they lie."""
    told = area.get("zone_map")
    if not isinstance(told, dict):
        own = _list(area.get("zones"))
        only = own[0] if len(own) == 1 and isinstance(own[0], str) else None
        if only is None:
            faults.append(Refused("zones_unknown", "zone_map", None))
        return dict.fromkeys(ZONES, only)
    names, found = told.get("names"), {}
    for zone in ZONES:
        name = names.get(zone) if isinstance(names, dict) else None
        if name and not isinstance(name, str):
            faults.append(Refused("zone_unknown", "zone_map.names." + zone, plain(name)))
        found[zone] = name if name and isinstance(name, str) else zone
    return found


def widths_of(area: dict, unit: str, faults: list) -> dict:
    """``{edge kind: width in unit}`` of the strips."""
    told = _map(area).get("widths")
    found: dict = {}
    if not isinstance(told, dict):
        return found
    for kind in sorted(told):
        field = "zone_map.widths." + kind
        if kind not in EDGES:
            faults.append(Refused("edge_unknown", field, kind))
            continue
        try:
            width = convert(told[kind], unit, field)
            if width < 0.0:
                raise Refused("negative", field, told[kind])
            found[kind] = width
        except Refused as refused:
            faults.append(Refused(refused.code, field, plain(refused.value)))
    return found


def drawn_of(area: dict, unit: str, faults: list) -> list:
    """``[(zone, ring)]`` as drawn over the strips, the first drawn first; one that is no outline is left out."""
    told = _list(_map(area).get("drawn"))
    found: list = []
    if len(told) > MOST_DRAWN:
        faults.append(Refused("too_many", "zone_map.drawn", len(told)))
        return found
    for place in range(len(told)):
        field, one = "zone_map.drawn[" + str(place) + "]", told[place]
        known = len(faults)
        ring = read_ring(one.get("outline") if isinstance(one, dict) else None, unit, field + ".outline", faults)
        if isinstance(one, dict) and not isinstance(one.get("zone"), str):
            faults.append(Refused("zone_unknown", field + ".zone", plain(one.get("zone"))))
        if len(faults) == known:
            found.append((one.get("zone"), ring))
    return found


def unknown_zones(area: dict, names: dict, strips: list, drawn: list, spacings: dict) -> list:
    """A fault for each zone that is used and that the approved assembly has no spacing for."""
    used = [("zone_map.names." + zone, names[zone]) for zone in ("field", "edge", "corner")
            if zone == "field" or any(len(strip) > 0 for strip in strips)]  # fmt: skip
    used.extend([("zone_map.drawn[" + str(place) + "].zone", drawn[place][0]) for place in range(len(drawn))])
    own = _list(area.get("zones"))
    used.extend([("zones[" + str(place) + "]", own[place]) for place in range(len(own))])
    if not spacings:
        return []
    return [Refused("zone_unknown", field, plain(zone)) for field, zone in used
            if zone is not None and (not isinstance(zone, str) or zone not in spacings)]  # fmt: skip


def _map(area: dict) -> dict:
    told = area.get("zone_map")
    return told if isinstance(told, dict) else {}


def _list(told: object) -> list:
    return told if isinstance(told, list) else []
