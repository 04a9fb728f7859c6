"""Find the versions of each subject that nothing supersedes."""

from inspect_app.record.authority import may_replace, objection


def versions(entries: list, people: dict, flags: list) -> dict:
    """Group entries by kind and subject: ``{kind: {subject: {"heads": [entry], "all": [entry]}}}``.

    A version is superseded when an entry of the same kind and subject, whose author may, names its digest in
    ``replaces``. Heads and versions are sorted by digest, the only order that does not depend on arrival.
    Appends ``{"digest", "code", "facts"}`` to ``flags`` for each replacement that does not count.
    """
    by_digest = {entry["digest"]: entry for entry in entries}
    grouped: dict = {}
    for digest in sorted(by_digest):
        entry = by_digest[digest]
        payload = entry["payload"]
        subjects = grouped.setdefault(payload["kind"], {})
        subjects.setdefault(payload["subject"], {"heads": [], "all": []})["all"].append(entry)
    for kind in grouped:
        for subject in grouped[kind]:
            group = grouped[kind][subject]
            gone = _superseded(group["all"], by_digest, people, flags)
            group["heads"] = [entry for entry in group["all"] if entry["digest"] not in gone]
    return grouped


def _superseded(group: list, by_digest: dict, people: dict, flags: list) -> dict:
    gone = {}
    for entry in group:
        payload = entry["payload"]
        for old in payload["replaces"]:
            older = by_digest.get(old)
            if older is None:
                _flag(flags, entry, "replaces_unknown", old)
            elif older["payload"]["kind"] != payload["kind"] or older["payload"]["subject"] != payload["subject"]:
                _flag(flags, entry, "replaces_other_subject", old)
            elif objection(entry, people) or not may_replace(entry, older, people):
                _flag(flags, entry, "may_not_replace", old)
            else:
                gone[old] = True
    return gone


def _flag(flags: list, entry: dict, code: str, other: str) -> None:
    flags.append({"digest": entry["digest"], "code": code, "facts": {"other": other}})
