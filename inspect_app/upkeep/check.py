"""Check a store against itself: what it signed, what it received, what lies on its disk, what it derived.

Nothing is changed, and a server may go on serving meanwhile: the database is read as of one moment, the files after it
(a photo is on the disk before its row, and never goes).
"""

from pathlib import Path
from typing import Any, NamedTuple

from sqlalchemy.exc import DatabaseError

from inspect_app.upkeep.derived import check_derived
from inspect_app.upkeep.fault import Fault
from inspect_app.upkeep.files import check_definitions, check_keys, check_reports, ready_reports, server_jwk
from inspect_app.upkeep.photos import check_vault
from inspect_app.upkeep.received import check_entries, check_kept_apart, check_photo_rows
from inspect_app.upkeep.said import read_statements
from inspect_app.upkeep.schema import check_database
from inspect_app.upkeep.snapshot import snapshot
from inspect_app.upkeep.unfinished import check_uploads


class Checked(NamedTuple):
    """``faults``: what is wrong; ``notes``: what is only worth knowing; ``counts``: how much was looked at."""

    faults: list[Fault]
    notes: list[Fault]
    counts: dict[str, int]

    def plain(self) -> dict[str, Any]:
        """For JSON."""
        return {"faults": [one.plain() for one in self.faults], "notes": [one.plain() for one in self.notes],
                "counts": self.counts}  # fmt: skip


def check(data: Path, url: str) -> Checked:
    """Look at all of it. Raises ``BadInput`` where there is no store, what the driver raises when its database does not
    answer; a damaged one is a fault."""
    found = check_keys(data)
    counts = dict.fromkeys(("statements", "entries", "photos", "bytes", "reports", "uploads"), 0)
    photos, definitions = dict[str, int](), dict[str, str]()
    reports = []
    try:
        with snapshot(url) as moment:
            session = moment.session
            damage = check_database(moment)
            found += damage
            jwk = server_jwk(data)
            if jwk is not None and not any(one.code.startswith("schema") for one in damage):
                said, faults = read_statements(session, jwk)
                counts["statements"] = said.count
                counts["entries"], definitions, more = check_entries(session, said)
                photos, rows = check_photo_rows(session, said)
                reports = ready_reports(session)
                found += faults + more + rows + check_kept_apart(session) + check_derived(moment, said)
    except DatabaseError as error:
        found.append(Fault("database_damaged", "database", {"why": str(error.orig)}))
    counts["bytes"], vault = check_vault(data, photos)
    counts["photos"], counts["reports"] = len(photos), len(reports)
    counts["uploads"], uploads = check_uploads(data)
    found += vault + uploads + check_reports(data, reports) + check_definitions(data, definitions)
    return Checked([one for one in found if not one.note], [one for one in found if one.note], counts)
