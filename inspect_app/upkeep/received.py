"""Hold what was received against the receipts given for it: every receipt has its thing, every thing its receipt."""

import json
from collections.abc import Mapping
from typing import Any

from sqlalchemy import select
from sqlalchemy.orm import Session

from inspect_app.entry.base64url import names_sha256
from inspect_app.entry.format import Entry, parse
from inspect_app.entry.jws import verify
from inspect_app.entry.refusal import Refused
from inspect_app.store.tables import EntryRow, PersonRow, PhotoRow, QuarantinePhotoRow, QuarantineRow
from inspect_app.upkeep.fault import Fault
from inspect_app.upkeep.said import Said

Photos = dict[str, int]


def check_entries(session: Session, said: Said) -> tuple[int, dict[str, str], list[Fault]]:
    """How many entries there are, ``{digest: job}`` of the definitions that administrators pin, and what is wrong:
    bytes that do not read, a signature that its author's enrolled key did not make, a missing receipt, an entry gone
    though it has one, index columns that say something else."""
    faults, count, definitions = list[Fault](), 0, dict[str, str]()
    administrators = set(session.scalars(select(PersonRow.id).where(PersonRow.role == "administrator")))
    left = {seq: told for seq, told in said.receipts.items() if told.get("entry") is not None}
    for row in session.execute(select(EntryRow).order_by(EntryRow.seq)).yield_per(500).scalars():
        where, count = f"entry {row.digest}", count + 1
        receipt = left.pop(row.seq, None)
        try:
            entry = parse(row.token)
            _signed(entry, said)
        except Refused as refused:
            faults.append(Fault("entry_forged", where, {"job": row.job, "why": refused.code, "field": refused.field}))
            continue
        if entry.by in administrators:
            definitions |= dict.fromkeys(_pinned(entry), entry.job)
        if receipt is None or (receipt["entry"], receipt["job"]) != (entry.digest, entry.job):
            faults.append(Fault("entry_without_receipt", where, {"job": row.job, "seq": row.seq}))
        told = (entry.digest, entry.job, entry.kind, str(entry.payload["subject"]), entry.kid)
        if told != (row.digest, row.job, row.kind, row.subject, row.kid):
            faults.append(Fault("entry_columns", where, {"job": entry.job}))
    faults += [Fault("entry_gone", f"entry {told['entry']}", {"job": told["job"], "seq": seq})
               for seq, told in sorted(left.items())]  # fmt: skip
    return count, definitions, faults


def check_photo_rows(session: Session, said: Said) -> tuple[Photos, list[Fault]]:
    """The photos that the vault has to hold, with their sizes, and what is wrong with their rows."""
    faults, photos = list[Fault](), Photos()
    left = {seq: told for seq, told in said.receipts.items() if told.get("photo") is not None}
    for row in session.execute(select(PhotoRow).order_by(PhotoRow.seq)).scalars():
        photos[row.sha256] = row.size
        receipt = left.pop(row.seq, None)
        told = receipt and (receipt["job"], receipt["photo"], receipt["size"])
        if told != (row.job, row.sha256, row.size):
            faults.append(Fault("photo_without_receipt", f"photo {row.sha256}", {"job": row.job}))
    for seq, told in sorted(left.items()):
        photos[told["photo"]] = told["size"]
        faults.append(Fault("photo_row_gone", f"photo {told['photo']}", {"job": told["job"], "seq": seq}))
    for kept in session.execute(select(QuarantinePhotoRow)).scalars():
        photos.setdefault(kept.sha256, kept.size)
    return photos, faults


def check_kept_apart(session: Session) -> list[Fault]:
    """Entries kept apart are whole too, and not in the log beside."""
    faults = list[Fault]()
    logged = select(EntryRow.digest)
    for row in session.execute(select(QuarantineRow).order_by(QuarantineRow.digest)).scalars():
        try:
            same = parse(row.token).digest == row.digest
        except Refused:
            same = False
        if not same:
            faults.append(Fault("kept_apart_damaged", f"entry {row.digest}", {"job": row.job}))
        elif session.scalar(logged.where(EntryRow.digest == row.digest)):
            faults.append(Fault("kept_apart_twice", f"entry {row.digest}", {"job": row.job}))
    return faults


def _pinned(entry: Entry) -> list[str]:
    """Those that a job is to be read by; what else an entry names may be anybody's word."""
    body = entry.payload["body"]
    pinned = body.get("definitions") if entry.kind == "job" and isinstance(body, Mapping) else None
    named = pinned.values() if isinstance(pinned, Mapping) else ()
    return [one for one in named if isinstance(one, str) and names_sha256(one)]


def _signed(entry: Entry, said: Said) -> None:
    device = said.devices.get(entry.kid)
    if device is None:
        raise Refused("unknown_key", "header.kid", entry.kid)
    jwk: Mapping[str, Any] = json.loads(device["jwk"])
    verify(entry, jwk)
    if device["person"] != entry.by:
        raise Refused("wrong_person", "by", entry.by)
