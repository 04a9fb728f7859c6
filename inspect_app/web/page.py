"""One page of entries: as many as asked for, or as fit a mebibyte; at least one."""

from collections.abc import Collection

from inspect_app.web.parts import parts

BYTES = 1024 * 1024


def page(after: int, jobs: Collection[str], limit: int) -> dict[str, object]:
    found = parts().reading.entries_after(after, jobs, limit + 1)
    size, count = 0, 0
    for item in found[:limit]:
        size += len(item.token) + len(item.receipt)
        if count and size > BYTES:
            break
        count += 1
    entries = [{"seq": item.seq, "entry": item.token, "receipt": item.receipt} for item in found[:count]]
    return {
        "entries": entries, "next": found[count - 1].seq if count else after, "more": len(found) > count,
    }  # fmt: skip
