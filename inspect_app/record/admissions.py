"""Entries that were kept apart, as a revoked key's are, and that a named person let into the record."""

from inspect_app.record.authority import objection


def flag_admissions(grouped: dict, people: dict, flags: list) -> None:
    """Flag ``admitted`` each entry that an admission names, with ``by`` (who let it in) and ``other`` (the admission's
    digest); ``orphan`` an admission whose entry is not here: it may still come. An admission by somebody who may not
    lets nothing in, and is flagged for that alone."""
    here = {
        entry["digest"]: True
        for subjects in grouped.values() for group in subjects.values() for entry in group["all"]
    }
    for group in grouped.get("admission", {}).values():
        for entry in group["all"]:
            named = entry["payload"]["body"]["entry"]
            if named not in here:
                flags.append({"digest": entry["digest"], "code": "orphan", "facts": {"other": named}})
            elif not objection(entry, people):
                facts = {"by": entry["payload"]["by"], "other": entry["digest"]}
                flags.append({"digest": named, "code": "admitted", "facts": facts})
