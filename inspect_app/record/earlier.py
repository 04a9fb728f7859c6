"""What was said before what stands: every version of everything that is not the one its thing is told by."""

PLACED = ("station", "finding", "photo")  # kinds whose versions may each name another place
PLACE = ("area", "panel", "from_low_end")
PARTS = ("assemblies", "areas", "fits", "walks", "stations", "answers", "photos", "marks", "stops", "releases",
         "surveys", "lots")  # fmt: skip
OF_FINDINGS = ("assignment", "correction", "recheck", "reopening", "concession", "admission")  # told with their finding


def earlier(grouped: dict, record: dict) -> list:
    """``[{"digest", "kind", "subject", "by", "at", "stands", "body"}]`` in order of digest. ``stands``: nothing
    supersedes it, and it is told beside another. ``body``: of an assembly all of it (what was approved on a day long
    gone), of ``PLACED`` the place it named, else None."""
    shown = _shown(record)
    found = []
    for kind in grouped:
        if kind in OF_FINDINGS:
            continue
        for subject in grouped[kind]:
            heads = [entry["digest"] for entry in grouped[kind][subject]["heads"]]
            for entry in grouped[kind][subject]["all"]:
                if entry["digest"] not in shown:
                    found.append(_told(kind, subject, entry, heads))
    return sorted(found, key=lambda one: one["digest"])


def _shown(record: dict) -> dict:
    """Digests of the versions that the record's things are told by."""
    things = [record["job"] or {}]
    for name in PARTS:
        things += list(record[name].values())
    things += [walk["signoff"] or {} for walk in record["walks"].values()]
    things += [lot.get("disposition") or {} for lot in record["lots"].values()]
    for day in record["days"]:
        things += day["entries"]
    return {thing.get("digest"): True for thing in things}


def _told(kind: str, subject: str, entry: dict, heads: list) -> dict:
    payload = entry["payload"]
    body = payload["body"]
    kept: dict | None = body if kind == "assembly" else None
    if kind in PLACED:
        kept = {name: body[name] for name in PLACE if body.get(name) is not None}
    return {
        "digest": entry["digest"], "kind": kind, "subject": subject, "by": payload["by"], "at": payload["at"],
        "stands": entry["digest"] in heads, "body": kept,
    }  # fmt: skip


def redrawn(grouped: dict, areas: dict) -> dict:
    """``{area id: [body]}``: other versions of each area that lay its panels out in another way, in order of digest. A
    place is looked for on each of them, so that drawing a roof anew moves nothing out of a survey."""
    found: dict = {}
    for area in sorted(grouped.get("area", {})):
        seen = [_laying(areas[area])]
        for entry in grouped["area"][area]["all"]:
            body = entry["payload"]["body"]
            if _laying(body) not in seen:
                seen.append(_laying(body))
                found.setdefault(area, []).append(body)
    return found


def _laying(body: dict) -> list:
    return [body.get(name) for name in ("outline", "coverage", "start", "slope", "openings", "place", "assembly")]
