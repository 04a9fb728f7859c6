"""Everything ever recorded at a place, in order of time: each signed statement once, whatever stands of it today."""

from inspect_app.record.finding_history import in_order

# What a reviewer reads it as.
CLASS = {
    "job": "approved", "assembly": "approved", "area": "approved", "fit": "approved",
    "lot": "set", "mark": "set", "day": "set",
    "walk": "looked", "station": "looked", "answer": "looked", "photo": "looked", "stop": "looked", "signoff": "looked",
    "finding": "found", "reopening": "found",
    "assignment": "corrected", "correction": "corrected", "recheck": "corrected",
    "concession": "released", "disposition": "released", "release": "released", "survey": "asked",
}  # fmt: skip
CLASSES = ("approved", "set", "looked", "found", "corrected", "released", "asked")
# What stands for itself; an answer that passed is counted at its place or with its walk, and a photo named with it.
TOLD_APART = ("fail", "too_close", "not_determinable")
PARTS = (("area", "areas"), ("assembly", "assemblies"), ("fit", "fits"), ("walk", "walks"), ("station", "stations"),
         ("mark", "marks"), ("stop", "stops"), ("release", "releases"), ("lot", "lots"))  # fmt: skip
OF_PANELS = ("mark", "stop", "release", "lot")
OF_AREAS = ("areas", "assemblies", "fits")
CLOCKS = ("clock_fast", "clock_slow", "clock_back")


def events(record: dict, part: dict, kept: dict) -> list:
    """``[{"digest","kind","id","by","at","class","how","distance","area","panel","result","results","photos","stands",
    "clock"}]`` of a survey's part of the record, by the devices' clocks, but after whatever it names.

    ``how``: ``place`` ``panel`` ``area`` ``unplaced`` ``beside`` as the circle tells, ``job`` for what speaks of all;
    ``distance`` in the survey's unit, or None. ``results`` of a station, or of a whole walk: ``{result: answers}``.
    ``stands``: nothing said later takes its place. ``clock``: a doubt's code where its clock is known to be off, else
    None."""
    rows: dict = {}
    where = kept["where"]
    for key in sorted(part["findings"]):
        before: list = []
        for said in part["findings"][key]["history"]:
            kind = "finding" if said["kind"] == "answer" else said["kind"]
            _add(rows, said, said["kind"], key, where.get("finding/" + key), before, kind)
            before = [said["digest"]]
    there = {area: True for area in kept["panels"] if kept["panels"][area]}
    there.update({record["areas"][area].get("assembly"): True for area in list(there)})
    for kind, name in PARTS:
        for key in sorted(part[name]):
            if name in OF_AREAS and key not in there:  # a walk goes over other areas too
                continue
            told = where.get(kind + "/" + key) or (("panel" if kind in OF_PANELS else "area"), None)
            _add(rows, part[name][key], kind, key, told, [])
    for key in sorted(part["walks"]):
        if part["walks"][key]["signoff"]:
            _add(rows, part["walks"][key]["signoff"], "signoff", key, ("area", None), [part["walks"][key]["digest"]])
    for key in sorted(part["lots"]):
        if part["lots"][key].get("disposition"):
            _add(rows, part["lots"][key]["disposition"], "disposition", key, ("panel", None), [])
    for day in part["days"]:
        for entry in day["entries"]:
            _add(rows, entry, "day", entry["id"], ("panel", None), [])
    for key in kept["surveys"]:
        _add(rows, record["surveys"][key], "survey", key, where.get("survey/" + key), [])
    if record["job"]:
        _add(rows, record["job"], "job", record["job"]["id"], ("job", None), [])
    _answers(rows, part, where)
    _photos(rows, part, where)
    _earlier(rows, record)
    clocks = {one["digest"]: doubt["code"] for doubt in record["doubts"] if doubt["code"] in CLOCKS
              for one in doubt["entries"]}  # fmt: skip
    told = []
    for one in in_order(list(rows.values())):
        row = {name: value for name, value in rows[one["digest"]].items() if name != "names"}
        row["clock"] = clocks.get(one["digest"])
        told.append(row)
    return told


def _add(rows: dict, said: dict, kind: str, key: str, told: "tuple | None", names: list, reads: str = "") -> dict:
    how, distance = told or ("area", None)
    panel = said.get("panel", said.get("to"))
    row = {
        "digest": said["digest"], "kind": kind, "id": key, "by": said["by"], "at": said["at"],
        "class": CLASS.get(reads or kind, "looked"), "how": how, "distance": distance,
        "area": key if kind in ("area", "fit") else said.get("area"),
        "panel": panel if type(panel) is int else None, "result": None, "results": {},
        "photos": [] if kind == "walk" else list(said.get("photos") or []), "stands": True, "names": names,
    }  # fmt: skip
    found: dict = rows.setdefault(said["digest"], row)
    return found


def _answers(rows: dict, part: dict, where: dict) -> None:
    for key in sorted(part["answers"]):
        answer = part["answers"][key]
        station = part["stations"].get(answer.get("station")) or part["walks"].get(answer.get("walk"))
        row = rows.get(station["digest"]) if station else None
        if row is not None:
            row["results"][answer["result"]] = row["results"].get(answer["result"], 0) + 1
        told = where.get("station/" + str(answer.get("station")))
        if row is None or answer["result"] in TOLD_APART or answer["digest"] in rows:
            own = _add(rows, answer, "answer", key, told, [station["digest"]] if station else [])
            own["result"] = answer["result"]


def _photos(rows: dict, part: dict, where: dict) -> None:
    for key in sorted(part["photos"]):
        photo = part["photos"][key]
        station = part["stations"].get(photo.get("station"))
        if station is None and photo.get("panel") is None:
            station = part["walks"].get(photo.get("walk"))
        row = rows.get(station["digest"]) if station else None
        if row is not None:
            row["photos"] += [key] if key not in row["photos"] else []
        else:
            how = "panel" if photo.get("panel") is not None else "area"
            _add(rows, photo, "photo", key, (how, None), [])["photos"] = [key]


def _earlier(rows: dict, record: dict) -> None:
    """Versions of what is told, each beside the one that stands. A passed answer's are told with its place."""
    known: dict = {}
    for row in rows.values():
        known.setdefault(row["kind"] + "/" + row["id"], row)
    for one in record.get("earlier") or []:
        like = known.get(one["kind"] + "/" + one["subject"])
        if like is None or one["digest"] in rows:
            continue
        own = _add(rows, one, one["kind"], one["subject"], (like["how"], like["distance"]), [])
        own["stands"] = one["stands"]
        for name in ("area", "panel"):
            own[name] = (one["body"] or {}).get(name, like[name])
