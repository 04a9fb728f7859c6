"""What of the record an entry speaks of, as a screen opens it."""

OF_FINDINGS = ("assignment", "correction", "recheck", "reopening", "concession")
OF_LOTS = ("mark", "stop", "release")


def spoken_of(record: dict, payload: dict) -> "list | None":
    """``[kind, id]``: ``area`` ``assembly`` ``fit`` ``walk`` ``station`` ``lot`` ``finding``; None where it is none of
    these, or is not here."""
    kind, subject, body = payload["kind"], payload["subject"], payload["body"]
    if kind in ("answer", "photo"):
        for name in ("station", "walk"):
            if body.get(name) is not None:
                kind, subject = name, body[name]
                break
    elif kind == "signoff":
        kind = "walk"
    elif kind == "disposition":
        kind = "lot"
    elif kind in OF_LOTS:
        kind, subject = "lot", body["lot"]
    elif kind in OF_FINDINGS:
        kind, subject = "finding", body["finding"]
    where = {"area": "areas", "fit": "areas", "assembly": "assemblies", "walk": "walks", "station": "stations",
             "lot": "lots", "finding": "findings"}  # fmt: skip
    return [kind, subject] if kind in where and subject in record[where[kind]] else None
