"""What a report's contents rest on beside its record: the same for the server that makes the report and for whoever
makes it again from what it encloses."""

from collections.abc import Mapping
from typing import Any

from inspect_app.report.daily import named_by_days
from inspect_app.report.finding_photos import named_by_findings
from inspect_app.report.survey import named_by_surveys

ISSUERS = ("issuer", "inspection", "contractor", "installer")  # whose report it is: the first party there is
SEEN = ("width", "height", "exif_time", "exif_offset")


def photos_named(part: dict[str, Any]) -> list[str]:
    """Every photo that a narrowed record names, once, in the order of its parts."""
    named = [*part["photos"], *named_by_days(part), *named_by_findings(part), *named_by_surveys(part)]
    return list(dict.fromkeys(named))


def definitions_named(record: Mapping[str, Any]) -> list[str]:
    """The digests of the checklists that walks, answers and the job name, in order."""
    named = {walk.get("definition") for walk in record["walks"].values()}
    named |= {answer.get("definition") for answer in record["answers"].values()}
    named |= set(((record["job"] or {}).get("definitions") or {}).values())
    return sorted(filter(None, named))


def log_told(record: Mapping[str, Any], people: Mapping[str, Any], head: tuple[Any, Any], server_kid: str,
             fingerprint: str | None, apart: int) -> dict[str, Any]:  # fmt: skip
    """The ``log`` of ``report_contents``. ``head``: number and digest of the newest receipt, (None, None) before the
    first; ``fingerprint``: of the certificate that seals; ``apart``: how many entries are kept apart."""
    owner = {kid: identity for identity, person in people.items() for kid in person["kids"]}
    return {
        "head_seq": head[0], "head_receipt": head[1], "server_kid": server_kid, "fingerprint": fingerprint,
        "apart": apart,
        "keys": {kid: {"count": chain["count"], "head": chain["head"], "person": owner.get(kid)}
                 for kid, chain in record["chains"].items()},
    }  # fmt: skip


def seen(facts: Mapping[str, Any]) -> dict[str, Any]:
    """What a report tells of a picture file, from what the file says of itself: its size in pixels, its own time."""
    times = facts.get("times") or {}
    return {
        "width": facts.get("width"),
        "height": facts.get("height"),
        "exif_time": times.get("DateTimeOriginal") or times.get("DateTime"),
        "exif_offset": times.get("OffsetTimeOriginal") or times.get("OffsetTime"),
    }


def issuer(record: Mapping[str, Any], sealer: str | None) -> str | None:
    """Whose report it is: the first party of the job, else whoever seals it."""
    parties = (record["job"] or {}).get("parties") or []
    for role in ISSUERS:
        for party in parties:
            if party.get("role") == role and party.get("name"):
                return str(party["name"])
    return sealer
