"""The sign-off of a walk, and whether it still speaks of everything in the walk."""


def fold_signoff(walk: dict, group: dict, grouped: dict, flags: list) -> "dict | None":
    """The sign-off made by whoever opened the walk, as its body plus ``digest, kid, by, at, clock, heads`` and
    ``uncovered``: digests of the walk's entries it does not name (recorded or arrived after signing).

    Another person's sign-off is flagged ``not_their_walk`` and closes nothing. None when no head counts.
    """
    own = []
    for entry in group["heads"]:
        if entry["payload"]["by"] == walk["by"]:
            own.append(entry)
        else:
            flags.append({"digest": entry["digest"], "code": "not_their_walk", "facts": {"other": walk["id"]}})
    if not own:
        return None
    payload = own[-1]["payload"]
    signoff = dict(payload["body"])
    covered = signoff.get("covers") or []
    signoff.update({
        "digest": own[-1]["digest"], "kid": own[-1]["kid"],
        "by": payload["by"], "at": payload["at"], "clock": payload["clock"],
        "heads": [entry["digest"] for entry in own],
        "uncovered": sorted(digest for digest in _digests(walk, grouped) if digest not in covered),
    })
    return signoff


def _digests(walk: dict, grouped: dict) -> list:
    found = [entry["digest"] for entry in grouped.get("walk", {}).get(walk["id"], {}).get("all", [])]
    for kind in ("station", "answer", "photo"):
        for group in grouped.get(kind, {}).values():
            found += [entry["digest"] for entry in group["all"] if entry["payload"]["body"].get("walk") == walk["id"]]
    return found
