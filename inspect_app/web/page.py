"""One page of entries: as many as asked for, or as fit a mebibyte; at least one."""

from collections.abc import Collection

from inspect_app.web.office_desk import office

BYTES = 1024 * 1024


def page(person: str, after: int, jobs: Collection[str], limit: int) -> dict[str, object]:
    found = office().scope.after(person, after, jobs, limit + 1)
    size, count = 0, 0
    for at, item in enumerate(found):
        size += len(item.received.token) + len(item.received.receipt)
        if count and (at >= limit or size > BYTES) and item.at != found[count - 1].at:
            break
        count += 1
    entries = [
        {"seq": item.seq, "entry": item.received.token, "receipt": item.received.receipt} for item in found[:count]
    ]
    return {
        "entries": entries, "next": found[count - 1].at if count else after, "more": len(found) > count,
    }  # fmt: skip
