"""Whether every countersignature that the server states is still in its report.

A file whose last signature was cut off is, to the byte, the file from before it: only what was stated elsewhere, in a
package or in a later report, can miss it. Fact ``countersignatures_there``.
"""

from collections.abc import Iterable, Mapping
from typing import Any

from inspect_app.entry.jwk import Jwk
from inspect_app.evidence import once
from inspect_app.evidence.fact import FAILS, HOLDS, Fact

NAME = "countersignatures_there"
KIND = "countersignature"
Said = Mapping[str, Any]


def statements_in(lines: Iterable[bytes], server_key: Jwk) -> list[Said]:
    """Payloads of those among the lines of an ``enrolments.txt`` that this server signed; what does not read is no
    statement."""
    found: list[Said] = []
    for line in lines:
        try:
            statement = once.statement(line)
            once.signed(statement, server_key)
            found.append(statement.payload)
        except Exception:  # counted by keys_enrolled, where it stands among the record's own
            continue
    return found


def countersigned(statements: Iterable[Said], job: str | None) -> dict[int, list[Said]]:
    """``{number of the report: payloads of its countersignatures}`` in this job; ``statements``: payloads, of which
    those of other kinds and other jobs change nothing."""
    every: dict[int, list[Said]] = {}
    for one in statements:
        if one["kind"] == KIND and one["job"] == job:
            every.setdefault(one["number"], []).append(one)
    return every


def countersigned_fact(statements: Iterable[Said], job: str | None, prints: Mapping[int, str]) -> Fact:
    """``statements``: as ``countersigned`` takes them, perhaps said twice; ``prints``: SHA-256 of each report that is
    here, by its number. Of a report that is not here nothing is said."""
    every = {number: told for number, told in countersigned(statements, job).items() if number in prints}
    for number, told in sorted(every.items()):
        last = max(told, key=lambda one: (one["n"], one["seq"]))
        if prints[number] != last["after"]:
            gone = prints[number] in {one["before"] for one in told}
            about = {"number": number, "name": last["name"], "certificate": last["certificate"]}
            return Fact(NAME, FAILS, "countersignature_gone" if gone else "countersigned_otherwise", about)
    return Fact(NAME, HOLDS, None, {"count": len(every)})
