"""What each key's chain of entries shows: what is missing, what stands twice, what hangs in the air.

Every entry counts up from 0 within its key and job (``seq``) and names the digest of the one before
(``prev``). A gap, a fork or a swapped entry is a fact about the log, never a reason to drop anything.
"""


def chains(entries: list) -> dict:
    """The chains of one job: ``{kid: {"count", "head", "gaps", "forks", "orphans"}}``.

    ``entries``: list of ``{"digest", "kid", "payload": {"seq", "prev", ...}}``, in any order, repeats
    allowed. ``count``: entries with different digests. ``head``: digest of the entry with the highest ``seq``
    (of several, the smallest). ``gaps``: missing runs ``[from, to]`` below the head; what is missing after
    the head cannot be seen. ``forks``: ``{"seq", "digests"}`` where one ``seq`` was used more than once, as a
    copied key or a restored backup does. ``orphans``: digests of the entries whose ``prev`` is not an entry
    of the same key with the ``seq`` before theirs, in order of ``seq`` and digest.
    """
    by_key: dict = {}
    for entry in entries:
        by_key.setdefault(entry["kid"], {})[entry["digest"]] = entry["payload"]
    return {kid: _chain(by_key[kid]) for kid in sorted(by_key)}


def _chain(payloads: dict) -> dict:
    places: dict = {}
    for digest in sorted(payloads):
        places.setdefault(payloads[digest]["seq"], []).append(digest)
    order = sorted(places)
    return {
        "count": len(payloads),
        "head": places[order[-1]][0],
        "gaps": _gaps(order),
        "forks": [{"seq": seq, "digests": places[seq]} for seq in order if len(places[seq]) > 1],
        "orphans": [
            digest for seq in order for digest in places[seq] if not _linked(payloads, payloads[digest])
        ],
    }


def _gaps(order: list) -> list:
    gaps = []
    wanted = 0
    for seq in order:
        if seq > wanted:
            gaps.append([wanted, seq - 1])
        wanted = seq + 1
    return gaps


def _linked(payloads: dict, payload: dict) -> bool:
    if payload["prev"] is None:
        return bool(payload["seq"] == 0)
    before = payloads.get(payload["prev"])
    return before is not None and bool(before["seq"] == payload["seq"] - 1)
