"""Everything in a job's record that a person should know of before relying on it, each thing once.

Nothing here changes the record: what is doubtful stays in it, and stands here beside it with the signed entries that
show it. The words to each code (what happened, what it means, what to do) are ``doubt.CODE.*`` in
``static/words/doubts.json``.
"""

from inspect_app.record.doubtful_clocks import clocks
from inspect_app.record.says_otherwise import says_otherwise
from inspect_app.record.seen_differently import seen_differently
from inspect_app.record.spoken_of import spoken_of

MOST = 12  # entries shown of one doubt; ``n`` counts all
ORDER = ("fork", "gap", "versions", "seen_differently", "unlinked", "several_keys",
         "clock_fast", "clock_slow", "clock_back")  # fmt: skip
# Told so that it is known; of everything else somebody has something to do.
TO_KNOW = ("unlinked", "several_keys", "clock_fast", "clock_slow", "clock_back", "admitted", "mark_taken_back",
           "severity_lowered", "photo_shown_before", "concession_without_document", "own_recheck")  # fmt: skip
ONE_EACH = ("lot", "admission")  # of a lot's ticket the first draw stands, flagged; admissions only repeat each other


def fold_doubts(record: dict, entries: list, grouped: dict, partial: bool) -> list:
    """``[{"id", "code", "tier" (``act`` ``know``), "n", "by", "facts", "entries"}]``: those to act on first.

    ``code``: one of ``ORDER``, or a flag's. ``by``: who signed them, person ids. ``facts``: ``kid`` and ``seq`` of a
    fork, ``low`` and ``high`` of a gap, ``kind`` and ``other`` (its id) of versions, ``minutes`` of a clock, ``item``
    of a place seen differently. ``entries``: the first ``MOST`` of them ``{"digest", "kid", "seq", "kind", "by", "at",
    "about", "says"}``, ``about`` what a screen opens: ``[kind, id]`` or None, ``says`` where versions differ
    (``says_otherwise``). For who sees a part (``partial``) nothing is said
    of what is not here.
    """
    known: dict = {}
    keys: dict = {}
    for entry in entries:
        known[entry["digest"]] = entry
        keys.setdefault(entry["kid"], {})[entry["digest"]] = entry["payload"]
    found = _chains(record["chains"], keys, partial) + _versions(grouped) + _several_keys(keys)
    days: dict = {}
    for kid in keys:
        for one in clocks(keys[kid], days):
            found.append((one["code"], kid, {"kid": kid, "minutes": one["minutes"]}, one["digests"]))
    for at, facts, digests in seen_differently(record):
        found.append(("seen_differently", at, facts, digests))
    found += _flags(record["flags"])
    told = [_doubt(record, one, known) for one in found]
    return sorted(told, key=lambda one: (one["tier"], _rank(one["code"]), one["code"], one["id"]))


def _rank(code: str) -> int:
    return ORDER.index(code) if code in ORDER else len(ORDER)


def _doubt(record: dict, found: tuple, known: dict) -> dict:
    code, name, facts, digests = found
    here = [known[digest] for digest in digests if digest in known]
    says = says_otherwise(here) if code == "versions" else {}
    return {
        "id": code + "/" + name if name else code, "code": code, "tier": "know" if code in TO_KNOW else "act",
        "n": len(digests), "by": sorted({entry["payload"]["by"]: True for entry in here}), "facts": facts,
        "entries": [_shown(record, entry, says.get(entry["digest"], [])) for entry in here[:MOST]],
    }  # fmt: skip


def _shown(record: dict, entry: dict, says: list) -> dict:
    payload = entry["payload"]
    return {
        "digest": entry["digest"], "kid": entry["kid"], "seq": payload["seq"], "kind": payload["kind"],
        "by": payload["by"], "at": payload["at"], "about": spoken_of(record, payload), "says": says,
    }  # fmt: skip


def _chains(chains: dict, keys: dict, partial: bool) -> list:
    """A fork is one from where two entries name the same one before, however long its branches grew."""
    found: list = []
    for kid in sorted(chains):
        forks = chains[kid]["forks"]
        if forks:
            facts = {"kid": kid, "seq": forks[0]["seq"], "both": sum([len(one["digests"]) for one in forks])}
            found.append(("fork", kid, facts, forks[0]["digests"]))
        if partial:
            continue
        numbers: dict = {}
        for digest in keys[kid]:
            numbers.setdefault(keys[kid][digest]["seq"], []).append(digest)
        for low, high in chains[kid]["gaps"]:
            facts = {"kid": kid, "low": low, "high": high, "missing": high - low + 1}
            found.append(("gap", kid + "/" + str(low), facts, sorted(numbers[high + 1])))
        loose = [digest for digest in chains[kid]["orphans"] if _alone(keys[kid][digest], numbers)]
        if loose:
            found.append(("unlinked", kid, {"kid": kid}, loose))
    return found


def _alone(payload: dict, numbers: dict) -> bool:
    """Not for want of the one before, which the gap tells already."""
    return payload["seq"] == 0 or payload["seq"] - 1 in numbers


def _versions(grouped: dict) -> list:
    found = []
    for kind in grouped:
        for subject in grouped[kind] if kind not in ONE_EACH else []:
            heads = grouped[kind][subject]["heads"]
            if len(heads) > 1:
                digests = [entry["digest"] for entry in heads]
                found.append(("versions", kind + "/" + subject, {"kind": kind, "other": subject}, digests))
    return found


def _several_keys(keys: dict) -> list:
    """A new key begins with each new phone, and with each one set up again."""
    own: dict = {}
    for kid in sorted(keys):
        first = min([(keys[kid][digest]["seq"], digest) for digest in keys[kid]])
        own.setdefault(keys[kid][first[1]]["by"], []).append(first[1])
    return [("several_keys", by, {"kids": len(own[by])}, own[by]) for by in sorted(own) if len(own[by]) > 1]


def _flags(flags: list) -> list:
    grouped: dict = {}
    for flag in flags:
        grouped.setdefault(flag["code"], {})[flag["digest"]] = True
    return [(code, "", {}, sorted(grouped[code])) for code in sorted(grouped)]
