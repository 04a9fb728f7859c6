"""What of a record a warranty survey speaks of: everything within a radius of a place on a roof."""

from inspect_app.record.circle import Circle
from inspect_app.record.narrow import keep
from inspect_app.record.survey import survey_of

SIDES = 2  # panels told to each side of the place, whatever the radius (common practice, no source)
DAY_LISTS = (("findings", "findings", None), ("actions", "findings", "finding"), ("walks", "walks", "walk"))


def survey(record: dict, scope: dict) -> dict:
    """The record within ``{"kind": "survey", "area", "panel", "from_low_end" q, "radius" q}``, with ``survey`` as
    ``survey.survey_of`` tells it.

    Stays: the places within the radius, and those of the two panels each side; their answers, photos and findings, and
    findings and answers about the whole of an area that lies in it; marks, stops, releases and lots that speak of one
    of its panels, each lot whole; the walks on which any of these was recorded or that tell such a panel as set, of
    each only what is within; the days of the crews that set those panels, of whose lists only what is within; every
    survey of a place within. What names a panel that the drawing does not have stays too. Raises ``Refused`` as
    ``Circle``.
    """
    circle = Circle(record, scope)
    kept = within(record, circle)
    part = keep(record, kept)
    part["coverage"] = {area: record["coverage"][area] for area in part["areas"] if area in record["coverage"]}
    part["walks"] = {key: _own_of(part["walks"][key], part) for key in part["walks"]}
    part["days"] = [_own_of_day(day, part) for day in part["days"]]
    kept["place"] = scope
    part["survey"] = survey_of(record, part, circle, kept)
    return part


def within(record: dict, circle: Circle) -> dict:
    """``keep``'s lists of ids, with ``panels`` ``{area: [numbers]}`` within the radius or beside the place, ``days``,
    ``surveys``, and ``where`` ``{"station/ID": (how, distance)}`` of what names a place."""
    panels = {area: circle.panels(area) for area in sorted(record["areas"])}
    panels = {area: panels[area] for area in panels if panels[area] or area == circle.area}
    beside = [number for number in range(circle.panel - SIDES, circle.panel + SIDES + 1)
              if 1 <= number <= (circle.roof(circle.area).count if circle.drawn else circle.panel + SIDES)]  # fmt: skip
    panels[circle.area] = sorted(dict.fromkeys(panels[circle.area] + beside, True))
    where: dict = {}
    kept: dict = {"panels": panels, "where": where, "areas": list(panels), "around": True}
    for kind, name in (("station", "stations"), ("finding", "findings"), ("survey", "surveys")):
        things = record[name]
        kept[name] = [key for key in things if _placed(circle, things[key], kind + "/" + key, where, beside)]
    _versions_elsewhere(record, circle, kept, beside)
    stations = dict.fromkeys(kept["stations"], True)
    kept["answers"] = [key for key in record["answers"] if _answered(record["answers"][key], stations, panels)]
    answers = dict.fromkeys(kept["answers"], True)
    kept["photos"] = [
        key for key, one in sorted(record["photos"].items())
        if one.get("station") in stations or one.get("answer") in answers or _on(one, panels)
    ]  # fmt: skip
    for name in ("stops", "releases"):
        kept[name] = [key for key in record[name] if _on(record[name][key], panels)]
    kept["lots"] = [key for key in record["lots"] if _of_lot(record["lots"][key], panels)]
    kept["marks"] = _marks(record, kept["lots"], panels)
    told = {record["marks"][key].get("lot"): True for key in kept["marks"]}
    kept["lots"] = [key for key in record["lots"] if key in told or key in kept["lots"]]
    walks: dict = {}
    for name in ("stations", "answers", "photos", "releases", "findings"):
        walks.update({record[name][key].get("walk"): True for key in kept[name]})
    for key in record["walks"]:
        if [1 for row in record["walks"][key].get("placed") or [] if _runs(row, panels)]:
            walks[key] = True
    kept["walks"] = [key for key in record["walks"] if key in walks]
    kept["days"] = [day for day in record["days"] if [1 for row in day["work_done"] if _runs(row, panels)]]
    return kept


def _placed(circle: Circle, thing: dict, name: str, where: dict, beside: list) -> bool:
    told = circle.speaks_of(thing)
    if told is None and thing.get("area") == circle.area and thing.get("panel") in beside:
        told = ("beside", circle.distance(thing))
    if told is not None:
        where[name] = told
    return told is not None


def _versions_elsewhere(record: dict, circle: Circle, kept: dict, beside: list) -> None:
    """What a later version of it moved out of the radius: somebody once said that it was here."""
    for one in record.get("earlier") or []:
        name = {"station": "stations", "finding": "findings"}.get(one["kind"])
        subject = one["subject"]
        if name is None or subject in kept[name] or subject not in record[name]:
            continue
        if _placed(circle, one["body"] or {}, one["kind"] + "/" + subject, kept["where"], beside):
            kept[name].append(subject)


def _answered(answer: dict, stations: dict, panels: dict) -> bool:
    if answer.get("station") is not None:
        return answer["station"] in stations
    return answer.get("area") in panels


def _on(thing: dict, panels: dict) -> bool:
    return thing.get("panel") in panels.get(thing.get("area"), [])


def _runs(row: dict, panels: dict) -> bool:
    there = panels.get(row.get("area"), [])
    return bool([number for number in there if row["from"] <= number <= row["to"]])


def _of_lot(lot: dict, panels: dict) -> bool:
    return bool([row for row in lot["population"] if _runs(row, panels)])


def _marks(record: dict, lots: list, panels: dict) -> list:
    """The marks that told one of the panels as set: of these lots, and of those that go on with them, in each area from
    beyond the mark before to its own panel. Two that say the same both told it."""
    wanted = dict.fromkeys(lots, True)
    families: dict = {}
    for key in record["lots"]:
        family = [key]
        family += record["lots"][key].get("extensions") or []
        if [1 for lot in family if lot in wanted]:
            families.update({lot: families.get(lot, key) for lot in family})
    said: dict = {}
    for key, one in record["marks"].items():
        if one.get("lot") in families:
            told = said.setdefault((families[one["lot"]], one.get("area")), {})
            told.setdefault(one["to"], []).append(key)
    found = []
    for family, area in said:
        low = 0
        for to in sorted(said[family, area]):
            if [number for number in panels.get(area, []) if low < number <= to]:
                found += said[family, area][to]
            low = to
    return sorted(found)


def _own_of(walk: dict, part: dict) -> dict:
    own = dict(walk)
    for name in ("stations", "answers", "photos"):
        own[name] = [key for key in walk[name] if key in part[name]]
    return own


def _own_of_day(day: dict, part: dict) -> dict:
    own = dict(day)
    for name, things, member in DAY_LISTS:
        own[name] = [one for one in day[name] if (one if member is None else one[member]) in part[things]]
    own["holds"] = [one for one in day["holds"] if one["lot"] in part["lots"]]
    own["areas"] = [area for area in day["areas"] if area in part["areas"]]
    own["work_done"] = [row for row in day["work_done"] if row["area"] in part["areas"]]
    own["fits"] = [fit for fit in day["fits"] if fit["area"] in part["areas"]]
    return own
