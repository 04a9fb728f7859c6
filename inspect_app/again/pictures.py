"""What a report says of its picture files, held to the original files.

Fact ``pictures_follow``: of every photo whose original is here, size in pixels and own time are those that the file
says, and the printed copy is the one that is made of it. A copy that another library encoded differs in its bytes and
not in what it shows (``copies.alike``): then it is not determinable that nobody touched it.
"""

import hashlib
from collections.abc import Callable, Mapping
from typing import Any

from inspect_app.again.copies import alike
from inspect_app.again.stated import pictures_stated
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN, Fact
from inspect_app.evidence.verify import Looked
from inspect_app.report.basis import SEEN, seen

NAME = "pictures_follow"
COPY = 1600  # pixels of the longer side of a printed copy: ``report.source.SIZE``
Original = Callable[[str], bytes | None]
Read = Callable[[bytes], Mapping[str, Any]]
Shrink = Callable[[bytes, tuple[int, ...]], Any]  # {size: JPEG}, or something with a ``reason``


def pictures_fact(looked: Looked, copies: Mapping[str, bytes], original: Original | None, read: Read, shrink: Shrink,
                  ) -> Fact:  # fmt: skip
    """The fact above. ``copies``: those that stand in the report, by SHA-256; ``original(sha256)``: a photo's own
    bytes, None where they are not here; None instead of it where there is nothing beside the report."""
    if looked.told is None:
        return Fact(NAME, UNKNOWN, "no_record")
    try:
        stated = {sha256: facts for sha256, facts in pictures_stated(looked.told).items()
                  if facts["held"] or facts["lost"]}  # fmt: skip
    except Exception:  # contents of any other shape
        return Fact(NAME, UNKNOWN, "no_record")
    if stated and original is None:
        return Fact(NAME, UNKNOWN, "no_originals", {"count": len(stated)})
    found: dict[str, list[str]] = {}
    for sha256, facts in stated.items():
        data = original(sha256) if original else None
        if data is not None and hashlib.sha256(data).hexdigest() != sha256:
            data = None
        if not facts["held"]:
            code = "said_lost" if data else None  # found again since, or never lost: nobody can tell
        else:
            code = "original_gone" if data is None else _other(data, facts, copies, read, shrink)
        found.setdefault(code or "", []).append(sha256)
    about = {"count": len(stated)}
    for status, codes in ((FAILS, ("other_facts", "other_picture")), (UNKNOWN, ("said_lost", "copy_alike",
                          "copy_not_made", "original_gone"))):  # fmt: skip
        for code in codes:
            if code in found:
                return Fact(NAME, status, code, about | {"faults": len(found[code]), "file": found[code][0],
                                                         "files": found[code][:20]})  # fmt: skip
    return Fact(NAME, HOLDS, None, about)


def _other(data: bytes, stated: Mapping[str, Any], copies: Mapping[str, bytes], read: Read, shrink: Shrink,
           ) -> str | None:  # fmt: skip
    own = seen(read(data))
    if any(stated[name] != own[name] for name in SEEN if name in stated):
        return "other_facts"
    made = shrink(data, (COPY,))
    if not isinstance(made, dict):
        return None if stated.get("undecodable") == made.reason and not stated.get("copy") else "copy_not_made"
    if hashlib.sha256(made[COPY]).hexdigest() == stated.get("copy"):
        return None
    printed = copies.get(str(stated.get("copy")))
    if printed is None:
        return "copy_not_made"
    try:
        return "copy_alike" if alike(printed, made[COPY]) else "other_picture"
    except Exception:  # what is printed is no picture that anybody can look at
        return "other_picture"
