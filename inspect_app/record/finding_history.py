"""Everything said of one finding, in an order that does not depend on how it arrived."""

from inspect_app.record.moment import moment


def in_order(said: list) -> list:
    """``said``: ``[{"kind", "digest", "by", "at", "names" [digests]}]``; the same without ``names``, sorted by their
    devices' time, then by digest. What an entry names came before it, whatever the clocks say: such an entry stands at
    the latest time of what it names."""
    by_digest = {one["digest"]: one for one in said}
    waiting: dict = {}
    after: dict = {}
    for one in said:
        named = {digest for digest in one["names"] if digest in by_digest and digest != one["digest"]}
        waiting[one["digest"]] = len(named)
        for digest in named:
            after.setdefault(digest, []).append(one["digest"])
    place = {one["digest"]: [moment(one["at"]), 0] for one in said}
    ready = [digest for digest in waiting if waiting[digest] == 0]
    while ready:
        digest = ready.pop()
        for later in after.get(digest, []):
            place[later] = max(place[later], [place[digest][0], place[digest][1] + 1])
            waiting[later] -= 1
            if waiting[later] == 0:
                ready.append(later)
    order = sorted([(place[digest][0], place[digest][1], digest) for digest in by_digest])
    return [{name: by_digest[digest][name] for name in ("kind", "digest", "by", "at")} for _, _, digest in order]
