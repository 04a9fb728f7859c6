"""What was not looked at. A report that leaves this out says more than it knows."""

from typing import Any


def not_seen(record: dict[str, Any], definitions: dict[str, Any], numbers: dict[str, Any],
             stations: list[dict[str, Any]], answers: list[dict[str, Any]], areas: list[dict[str, Any]],
             whole: bool) -> list[dict[str, Any]]:  # fmt: skip
    """``[{"code", "facts"}]``: areas without a fit check, areas without a look or seen as a whole only, places not
    reached or covered, places without an answer, items not answered, and how many panels of those placed have a place
    looked at. ``whole``: the record is that of the whole job. A part does not know of all looks at a lot's panels, and
    does not count them."""
    in_lots = {row["area"] for lot in record["lots"].values() for row in lot["population"]}
    told: list[dict[str, Any]] = []
    told += [_fact("area_no_fit", area=area["name"]) for area in areas if area["id"] not in record["fits"]]
    reached = [one for one in stations if one["reached"] == "yes"]
    for area in areas:
        looked = {one["panel"] for one in reached if one["area"] == area["id"]}
        if not looked:
            own = [one for one in record["answers"].values() if one.get("area") == area["id"]]
            of_it = any(not one.get("station") for one in own)
            told.append(_fact("area_whole_only" if of_it else "area_not_looked", area=area["name"]))
        laid = _panels([*area["placed"], *_marked(record, area["id"])])
        if laid and (whole or area["id"] not in in_lots):
            told.append(_fact("panels_looked", area=area["name"], looked=len(looked & laid), placed=len(laid)))
    for code in ("unsafe", "covered"):
        told += [
            _fact(f"station_{code}", station=one["n"], area=_name(record, one), panel=one["panel"])
            for one in stations if one["reached"] == code
        ]  # fmt: skip
    told += [_fact("station_empty", station=one["n"]) for one in reached if not one["answers"]]
    return told + _unanswered(record, definitions, numbers, stations, answers)


def _unanswered(
    record: dict[str, Any],
    definitions: dict[str, Any],
    numbers: dict[str, Any],
    stations: list[dict[str, Any]],
    answers: list[dict[str, Any]],
) -> list[dict[str, Any]]:
    told = []
    for key, n in numbers["walks"].items():
        digest = record["walks"][key].get("definition")
        definition = definitions.get(digest) or {}
        if definition.get("per") in ("walk", "area"):
            given = {one["item"] for one in answers if one["walk"] == n and one["definition"]["digest"] == digest}
            told += _items(definition, _kinds(record, record["walks"][key]), given, walk=n, station=None)
    for station in stations:
        here = [one for one in answers if one["station"] == station["n"]]
        if station["reached"] != "yes" or not here:
            continue
        assembly = record["assemblies"].get((record["areas"].get(station["area"]) or {}).get("assembly"))
        said = {str(one["definition"]["digest"]) for one in here}
        drawn = _drawn(record, station)
        asked = _asked(record, definitions, station, assembly) if drawn is None else _pinned(record)
        if drawn is not None:  # of two versions of a checklist, the one that was answered
            known = {(definitions.get(digest) or {}).get("id") for digest in said}
            asked = {digest for digest in asked if (definitions.get(digest) or {}).get("id") not in known}
        for digest in sorted(asked | said):
            given = {one["item"] for one in here if one["definition"]["digest"] == digest}
            one = definitions.get(digest) or {}
            if drawn is not None:
                one = {**one, "items": [item for item in one.get("items", []) if f"{one['id']}/{item['id']}" in drawn]}
            told += _items(one, [assembly], given, walk=station["walk"], station=station["n"])
    return told


def _kinds(record: dict[str, Any], walk: dict[str, Any]) -> list[Any]:
    """The assemblies of the areas of a walk, None for one that is not here."""
    areas = [record["areas"].get(area) or {} for area in walk.get("areas") or []]
    return [record["assemblies"].get(area.get("assembly")) for area in areas]


def _asked(record: dict[str, Any], definitions: dict[str, Any], station: dict[str, Any], assembly: Any) -> set[str]:
    """The definitions asked at a place, as the phone chooses them (``static/walk/applies.js``): the walk's own
    where it is made for places and fits, else each one of the job that fits what is fastened there."""
    fitting = {
        digest for digest in _pinned(record)
        if (definitions.get(digest) or {}).get("per") == "station" and applies(definitions[digest], assembly)
    }  # fmt: skip
    walk: dict[str, Any] = record["walks"].get((record["stations"].get(station["id"]) or {}).get("walk")) or {}
    own = fitting & {str(walk.get("definition"))}
    return own or fitting


def _pinned(record: dict[str, Any]) -> set[str]:
    return {str(digest) for digest in ((record["job"] or {}).get("definitions") or {}).values()}


def _drawn(record: dict[str, Any], station: dict[str, Any]) -> set[str] | None:
    """At a place of an audit, ``definition id/item id`` of all that its draw asks; None at any other place."""
    lot = (record.get("lots") or {}).get(station["lot"]) or {}
    if lot.get("purpose") != "audit":
        return None
    return {name for names in (lot.get("asks") or {}).values() for name in names}


def applies(thing: dict[str, Any], assembly: dict[str, Any] | None) -> bool:
    """Whether a definition or an item speaks of what is fastened there (``static/checklist/items.js``)."""
    wanted = (thing.get("applies") or {}).get("attachment")
    return not wanted or (assembly or {}).get("attachment") in wanted


def _items(definition: dict[str, Any], assemblies: list[Any], given: set[Any], walk: Any, station: Any,
           ) -> list[dict[str, Any]]:  # fmt: skip
    """An item is asked where it applies to what is fastened there; of a whole walk, on any of its areas, as the phone
    asks it (``static/walk/sort_items.js``). Where nobody knows what is fastened, every item is asked."""
    left = [
        item for item in definition.get("items", [])
        if item["id"] not in given and (not assemblies or any(one is None or applies(item, one) for one in assemblies))
    ]  # fmt: skip
    if not left:
        return []
    questions = [item.get("question") or {"en": item["id"], "es": item["id"]} for item in left]
    return [_fact("items_not_answered", walk=walk, station=station, title=definition.get("title"),
                  count=len(left), questions=questions)]  # fmt: skip


def _marked(record: dict[str, Any], area: Any) -> list[dict[str, Any]]:
    """What the marks of each crew's days tell as set there."""
    return [
        {"from": row["from"], "to": lot["placed_to"]}
        for lot in record["lots"].values() if lot["purpose"] == "work"
        for row in lot["population"] if row["area"] == area
    ]  # fmt: skip


def _panels(placed: list[dict[str, Any]]) -> set[int]:
    most = 5000  # beyond any roof; a mistyped number must not fill the memory
    runs = [(one["from"], one["to"]) for one in placed if isinstance(one["from"], int) and isinstance(one["to"], int)]
    return {panel for low, high in runs for panel in range(low, min(high, low + most) + 1)}


def _name(record: dict[str, Any], station: dict[str, Any]) -> Any:
    return (record["areas"].get(station["area"]) or {}).get("name") or station["area"]


def _fact(code: str, **facts: Any) -> dict[str, Any]:
    return {"code": code, "facts": facts}
