"""Keep a part of a folded record: the things that are named, and what they rest on."""

NAMED = ("walks", "stations", "answers", "photos", "marks", "stops", "releases", "lots", "findings", "audits")
UNDER = ("areas", "assemblies", "fits")
OF_THE_WHOLE = ("coverage", "series", "to_date")  # figures of the whole job, which no part of it bears
DIGEST = 43  # letters
OF_ENTRIES = ("versions", "seen_differently")  # doubts about things; the others are about keys and flags


def keep(record: dict, kept: dict) -> dict:
    """A record of the ids that ``kept`` names, by the record's own names (``NAMED``; ``areas``: further areas;
    ``days``: the very days), with the areas that any of them names, their assemblies and fit checks. Of a day no area
    is kept for its own sake: it tells of more than was looked at. With ``around`` true neither is an area that only a
    walk or a lot names: they reach over roofs that a place has nothing to do with.

    Job, sampling, layouts and chains stay as they are. Of flags and doubts those go whose entries all belong to what is
    left out: what cannot be placed stays, since nobody may be spared a doubt by a narrow question.
    """
    part = dict(record)
    for name in NAMED:
        wanted = dict.fromkeys(kept.get(name) or [], True)
        part[name] = {key: record[name][key] for key in record[name] if key in wanted}
    part["days"] = list(kept.get("days") or [])
    there = _areas(part, kept.get("areas") or [], kept.get("around"))
    part["areas"] = {key: record["areas"][key] for key in record["areas"] if key in there}
    part["fits"] = {key: record["fits"][key] for key in record["fits"] if key in there}
    under = {area.get("assembly"): True for area in part["areas"].values()}
    part["assemblies"] = {key: record["assemblies"][key] for key in record["assemblies"] if key in under}
    for name in OF_THE_WHOLE:
        part[name] = {}
    _doubts(record, part)
    return part


def _areas(part: dict, further: list, around: object) -> dict:
    there = dict.fromkeys(further, True)
    for name in ("stations", "answers", "photos", "marks", "stops", "releases", "findings"):
        there.update({thing.get("area"): True for thing in part[name].values()})
    if around:
        return there
    for walk in part["walks"].values():
        there.update(dict.fromkeys(walk.get("areas") or [], True))
        there.update({row["area"]: True for row in walk.get("placed") or []})
    for lot in part["lots"].values():
        there.update({row["area"]: True for row in lot["population"]})
    return there


def _doubts(record: dict, part: dict) -> None:
    own: dict = {}
    others: dict = {}
    for names in (NAMED, UNDER):
        for name in names:
            for key in record[name]:
                _digests(record[name][key], own if key in part[name] else others)
    days = {(day["day"], day["crew"]): True for day in part["days"]}
    for day in record["days"]:
        _digests(day, own if (day["day"], day["crew"]) in days else others)

    def left_out(digest: str) -> bool:
        return digest in others and digest not in own

    part["flags"] = [flag for flag in record["flags"] if not left_out(flag["digest"])]
    all_codes = {flag["code"]: True for flag in record["flags"]}
    told: dict = {}
    for flag in part["flags"]:
        told.setdefault(flag["code"], {})[flag["digest"]] = True
    part["doubts"] = []
    for doubt in record["doubts"]:
        if doubt["code"] in all_codes and doubt["code"] not in OF_ENTRIES:
            if doubt["code"] in told:
                entries = [one for one in doubt["entries"] if one["digest"] in told[doubt["code"]]]
                part["doubts"].append(dict(doubt, n=len(told[doubt["code"]]), entries=entries))
        elif doubt["code"] not in OF_ENTRIES or [1 for one in doubt["entries"] if not left_out(one["digest"])]:
            part["doubts"].append(doubt)


def _digests(value: object, found: dict) -> None:
    """Every text in it that is as long as a digest; what is none of one matches no entry."""
    if isinstance(value, str):
        if len(value) == DIGEST:
            found[value] = True
    elif isinstance(value, dict):
        for name in value:
            _digests(value[name], found)
    elif isinstance(value, (list, tuple)):
        for one in value:
            _digests(one, found)
