"""Put a job's package together: one snapshot of its log, its photos, definitions and reports, in a bag."""

import json
from collections.abc import Callable
from datetime import UTC, datetime
from importlib.metadata import version
from pathlib import Path
from typing import Any, NamedTuple

from inspect_app.clock import spell
from inspect_app.evidence.enclosure import CONTENTS, enclosures
from inspect_app.evidence.package.says import description
from inspect_app.package.bag import Bag, bagged, member
from inspect_app.package.keys import keys
from inspect_app.package.member import Member
from inspect_app.package.photos import photos
from inspect_app.package.reports import reports
from inspect_app.package.sheet import Sheet
from inspect_app.package.snapshot import Snapshot, snapshot
from inspect_app.package.sweep import sweep
from inspect_app.store.definitions import DefinitionArchive
from inspect_app.store.log_reading import LogReading
from inspect_app.store.server_key import ServerKey
from inspect_app.store.transactions import Transactions
from inspect_app.store.vault import Vault


class Packed(NamedTuple):
    """A package ready to be written, and ``told``: what its ``package.json`` says."""

    bag: Bag
    told: dict[str, Any]


class Packer:
    """Makes packages from any thread that has an app context. ``page()``: the bytes of ``verify.html``;
    ``fingerprint()``: of the certificate that seals reports, None where it cannot be read; ``folder``: where there is
    room for texts, and for packages that stay in the data folder."""

    def __init__(
        self, transactions: Transactions, reading: LogReading, archive: DefinitionArchive, vault: Vault,
        key: ServerKey, reports: Path, folder: Path, page: Callable[[], bytes],
        fingerprint: Callable[[], str | None], apart: Callable[[str], int],
    ) -> None:  # fmt: skip
        self.transactions, self.reading, self.archive, self.vault = transactions, reading, archive, vault
        self.key, self.reports, self.folder = key, reports, folder
        self.page, self.fingerprint, self.apart = page, fingerprint, apart
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)

    def pack(self, job: str, made: datetime) -> Packed:
        """The job as it stands; of the same state and the same ``made`` always the same bytes. What is missing is
        named in it, and keeps nothing else out. Raises ``OSError`` when there is no room for its texts, what the store
        raises."""
        sweep(self.folder, made)
        with self.transactions.reading():  # one moment of all: a report made meanwhile would tell of a later log
            moment = snapshot(self.transactions, self.reading, self.key, job)
            finished, gone = reports(self.transactions, self.reports, job, made)
            apart = self.apart(job)
        originals = photos(self.vault, moment.holdings, moment.named)
        sheet = Sheet(self.folder)
        definitions, unknown = self._definitions(moment, sheet)
        tokens = [member(sheet, f"data/{one.name}", one.data) for one in enclosures(b"", moment.signed)
                  if one.name != CONTENTS]  # fmt: skip
        rows = keys(moment.signed.enrolments)
        lacking: dict[str, list[Any]] = {
            "missing_photos": originals.missing, "damaged_photos": originals.damaged,
            "missing_definitions": unknown, "missing_reports": gone,
        }  # fmt: skip
        counts = {
            "entries": len(moment.signed.entries), "receipts": len(moment.signed.receipts), "keys": len(rows),
            "photos": len(originals.members), "photo_bytes": sum(one.size for one in originals.members),
            "definitions": len(definitions), "reports": len(finished), "kept_apart": apart,
            **{name: len(lack) for name, lack in lacking.items()},
        }  # fmt: skip
        told = self._told(job, made, moment, counts) | lacking
        payload = [member(sheet, "data/package.json", _json(told)), member(sheet, "data/keys.json", _json(rows))]
        payload += [*tokens, *definitions, *originals.members, *finished]
        said = description(job, told["name"], told["invented"])
        return Packed(bagged(_name(job, made), made, payload, said, self.page(), sheet), told)

    def _told(self, job: str, made: datetime, moment: Snapshot, counts: dict[str, int]) -> dict[str, Any]:
        head = {"seq": moment.head.payload["seq"], "receipt": moment.head.digest} if moment.head else None
        return {
            "v": 1, "kind": "package", "job": job, "name": moment.job.get("name", ""),
            "invented": bool(moment.job.get("invented")), "made": spell(made), "build": version("seamwalk"),
            "head": head, "counts": counts, "server_kid": self.key.kid, "seal_fingerprint": self.fingerprint(),
        }  # fmt: skip

    def _definitions(self, moment: Snapshot, sheet: Sheet) -> tuple[list[Member], list[str]]:
        kept = {digest: self._definition(digest) for digest in moment.named.definitions}
        members = [member(sheet, f"data/definitions/{digest}.json", data) for digest, data in kept.items()
                   if data is not None]  # fmt: skip
        return members, [digest for digest, data in kept.items() if data is None]

    def _definition(self, digest: str) -> bytes | None:
        try:
            return self.archive.read(digest)
        except OSError:  # the disk gives nothing back: named as missing
            return None


def _name(job: str, made: datetime) -> str:
    return f"seamwalk-package-{job[:8]}-{made.astimezone(UTC):%Y%m%dT%H%M%SZ}"


def _json(told: object) -> bytes:
    return (json.dumps(told, ensure_ascii=False, sort_keys=True, indent=1) + "\n").encode()
