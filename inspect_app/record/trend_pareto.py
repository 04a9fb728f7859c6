"""Nonconformances by what they have in common, the most frequent first (a Pareto)."""

GROUPED_BY = ("item", "area", "zone", "crew", "firm", "assembly")
UNSETTLED = ("open", "corrected")


def pareto(rows: list, looks: "dict | None") -> dict:
    """``{"n", "withdrawn": [ids], "by": {name: [group]}}`` of ``trend_rows.finding_rows``.

    A group: ``{"key", "n", "open" (not closed nor accepted by the engineer), "share", "cumulative" (with all before
    it), "looks" (answers that told good from bad there, of ``trend_rows.look_counts``; None where none is told),
    "findings" [ids], "digests" [of the entries that opened them]}``, by falling number, then key. What was withdrawn is
    no nonconformance; it is named and not counted.
    """
    counted = [row for row in rows if row["state"] != "withdrawn"]
    return {
        "n": len(counted), "withdrawn": [row["id"] for row in rows if row["state"] == "withdrawn"],
        "by": {name: _groups(counted, name, (looks or {}).get(name)) for name in GROUPED_BY},
    }  # fmt: skip


def _groups(rows: list, name: str, looks: "dict | None") -> list:
    members: dict = {}
    for row in rows:
        members.setdefault(row[name], []).append(row)
    groups, before = [], 0
    for _, key in sorted([(-len(members[key]), key) for key in members]):
        own = members[key]
        before += len(own)
        groups.append({
            "key": key, "n": len(own), "open": len([1 for row in own if row["state"] in UNSETTLED]),
            "share": len(own) / len(rows), "cumulative": before / len(rows), "looks": (looks or {}).get(key),
            "findings": [row["id"] for row in own], "digests": [row["digest"] for row in own],
        })  # fmt: skip
    return groups
