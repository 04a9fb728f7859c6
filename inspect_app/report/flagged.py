"""What the record flags, summed up by kind: which places, lots and panels, and the entries that say so."""

from typing import Any


def flagged(record: dict[str, Any], contents: dict[str, Any]) -> list[dict[str, Any]]:
    """``[{"code": "flag", "facts": {"flag", "count", "stations", "lots", "findings", "panels", "digests"}}]``, one for
    each code: numbers of the places, lots and findings it is about, ``panels`` ``[{"area", "panel"}]`` of leg photos
    and marks, and every digest. An orphan is told among what is missing."""
    places = {one["digest"]: one["n"] for one in contents["stations"]}
    lots = {one["digest"]: one for one in contents["lots"]}
    by_name = {one["lot"]: one["n"] for one in contents["lots"]}
    findings = {one["id"]: one["n"] for one in contents.get("findings", [])}
    legs = {one["digest"]: one for one in contents["photos"] if one.get("panel") is not None}
    grouped: dict[str, list[dict[str, Any]]] = {}
    for flag in record.get("flags") or []:
        if flag.get("code") != "orphan":
            grouped.setdefault(str(flag.get("code")), []).append(flag)
    told = []
    for code, flags in grouped.items():
        facts: dict[str, Any] = {"flag": code, "count": len(flags), "stations": [], "lots": [], "findings": [],
                                 "panels": []}  # fmt: skip
        for flag in flags:
            digest, about = flag.get("digest"), flag.get("facts") or {}
            lot = lots[digest]["n"] if digest in lots else by_name.get(str(about.get("other")))
            if digest in places:
                facts["stations"].append(places[digest])
            elif digest in legs:
                facts["panels"].append({"area": legs[digest]["area"], "panel": legs[digest]["panel"]})
            if lot is not None and lot not in facts["lots"]:
                facts["lots"].append(lot)
            found = findings.get(str(about.get("other")))
            if found is not None and found not in facts["findings"]:
                facts["findings"].append(found)
        facts["stations"].sort()
        facts["lots"].sort()
        facts["findings"].sort()
        told.append({"code": "flag", "facts": facts | {"digests": [flag.get("digest") for flag in flags]}})
    return sorted(told, key=lambda one: one["facts"]["flag"])
