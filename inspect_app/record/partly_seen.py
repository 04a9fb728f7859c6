"""The record of somebody who sees a part of the job: what they do not see is no gap, and nobody is blamed for it."""

# What only says that something else is not here, and what is judged by lots that another firm drew.
UNSEEN = ("orphan", "replaces_unknown", "lot_unknown", "ticket_skipped", "lot_laxer", "finding_unknown")


def partly_seen(record: dict, flags: list, areas: "list | None" = None) -> list:
    """Take gaps and loose ends out of ``record["chains"]``, and give the flags without ``UNSEEN``. ``areas``: ids of
    those seen whole, or None. Of the others, seen at some places alone, nothing is said to be uncovered: each is
    ``narrow`` and has no coverage. ``record["partial"]`` is said."""
    record["partial"] = True
    for area in record["areas"]:
        if areas is not None and area not in areas:
            record["areas"][area]["narrow"] = True
            record["coverage"].pop(area, None)
    for chain in record["chains"].values():
        chain["gaps"] = []
        chain["orphans"] = []
    return [flag for flag in flags if flag["code"] not in UNSEEN]
