"""The checklists of a package: fact ``definitions_match``.

Every definition is the one whose digest it is named after, and whichever an entry names is here: what was asked of whom
follows from a digest that somebody signed, not from a file beside it.
"""

from collections.abc import Iterable, Mapping, Set
from typing import Any

from inspect_app.entry.base64url import encode, names_sha256
from inspect_app.entry.format import Entry
from inspect_app.evidence.fact import FAILS, HOLDS, Fact
from inspect_app.evidence.package.names import DEFINITION

NAME = "definitions_match"
SHOWN = 20


def definitions_fact(digests: Mapping[str, str], wanted: Set[str]) -> Fact:
    """The fact above. ``digests``: ``{file: SHA-256 found, hexadecimal}`` of the package; ``wanted``: as ``used``."""
    here = {match[1]: name for name in digests if (match := DEFINITION.fullmatch(name))}
    other = [name for digest, name in here.items() if encode(bytes.fromhex(digests[name])) != digest]
    missing = wanted - here.keys()
    about: dict[str, Any] = {"count": len(here), "missing": len(missing)}
    for reason, faults in (("other_bytes", other), ("definition_missing", missing)):
        if faults:
            named = sorted(faults)
            return Fact(NAME, FAILS, reason, about | {"faults": len(named), "file": named[0], "files": named[:SHOWN]})
    return Fact(NAME, HOLDS, None, about)


def used(entries: Iterable[Entry]) -> set[str]:
    """The digests of the definitions that entries name, jobs, walks and answers, in any version."""
    found: set[object] = set()
    for entry in entries:
        body: Any = entry.payload["body"]
        found.add(body.get("definition"))
        pinned = body.get("definitions")
        found |= set(pinned.values()) if entry.kind == "job" and isinstance(pinned, dict) else set()
    return {str(one) for one in found if names_sha256(one)}
