"""The numbers by which a report speaks of things: walks, places, findings and photos, each from 1."""

from typing import Any

RESULTS = ("fail", "too_close", "not_determinable", "pass", "not_applicable")


def numbering(record: dict[str, Any], definitions: dict[str, Any]) -> dict[str, Any]:
    """``{"walks": {id: n}, "stations": {id: n}, "findings": {subject: n}, "photos": {sha256: n},
    "answers": [subjects in reading order]}``: by time of the walk, then along the roof, then as the checklist
    asks. It depends on the record alone, never on the order of arrival."""
    walks = _count(sorted(record["walks"], key=lambda key: (moment(record["walks"][key]), key)))
    areas = _count(sorted(record["areas"], key=lambda key: (str(record["areas"][key].get("name")), key)))
    stations = _count(sorted(record["stations"], key=lambda key: _place(record["stations"][key], areas, walks)))
    items = {
        (digest, item["id"]): at
        for digest, definition in definitions.items()
        for at, item in enumerate(definition.get("items", []))
    }
    answers = sorted(record["answers"], key=lambda key: _asked(record["answers"][key], walks, stations, items))
    own = {key: _asked(record["answers"][key], walks, stations, items) for key in answers}
    found = {key: own[key] if key in own else _by_hand(record["findings"][key], walks, stations)
             for key in record["findings"]}  # fmt: skip
    findings = _count(sorted(found, key=lambda key: found[key]))
    photos = _count(sorted(record["photos"], key=lambda key: _taken(record["photos"][key], walks, stations)))
    return {"walks": walks, "areas": areas, "stations": stations, "findings": findings, "photos": photos,
            "answers": answers}  # fmt: skip


def moment(thing: dict[str, Any]) -> str:
    """The device's wall time, as text; sorts days, and within one zone also minutes."""
    return str(thing.get("at") or "")


def worst(results: list[str | None]) -> str | None:
    """The worst of some results, None of none; what is not known counts as not determinable."""
    ranks = [RESULTS.index(result if result in RESULTS else "not_determinable") for result in results]
    return RESULTS[min(ranks)] if ranks else None


def distance(quantity: Any) -> float:
    """Only to put places in order: the number as written, what cannot be read last."""
    try:
        return float(quantity["value"])
    except (TypeError, KeyError, ValueError):
        return float("inf")


def _count(keys: list[str]) -> dict[str, int]:
    return {key: at + 1 for at, key in enumerate(keys)}


def _place(station: dict[str, Any], areas: dict[str, int], walks: dict[str, int]) -> tuple[Any, ...]:
    panel = station.get("panel")
    return (
        areas.get(str(station.get("area")), 10**9), panel if isinstance(panel, int) else 10**9,
        distance(station.get("from_low_end")), walks.get(station["walk"], 10**9), station["id"],
    )  # fmt: skip


def _asked(answer: dict[str, Any], walks: dict[str, int], stations: dict[str, int], items: Any) -> tuple[Any, ...]:
    return (
        walks.get(answer["walk"], 10**9),
        stations.get(answer.get("station") or "", 0),
        str(answer.get("definition")),
        items.get((answer.get("definition"), answer.get("item")), 10**9),
        answer["id"],
    )


def _by_hand(finding: dict[str, Any], walks: dict[str, int], stations: dict[str, int]) -> tuple[Any, ...]:
    """Beside what was asked at its place, else after its walk's."""
    at = str((finding.get("opened") or {}).get("at") or "")
    return (
        walks.get(finding.get("walk") or "", 10**9), stations.get(finding.get("station") or "", 10**9), "~", 0,
        at + finding["id"],
    )  # fmt: skip


def _taken(photo: dict[str, Any], walks: dict[str, int], stations: dict[str, int]) -> tuple[Any, ...]:
    return (
        walks.get(photo["walk"], 10**9),
        stations.get(photo.get("station") or "", 10**9),
        moment(photo),
        photo["id"],
    )
