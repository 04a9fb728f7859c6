"""Bring in a saved copy: everything in it goes the ordinary way of its kind, one by one, as if its phone had sent it.

Entries stand by their own signatures. A photo stands by an entry of its job that names it: one in the log, or one kept
apart, and then the photo is kept apart too; so nobody's word is needed for whose it is, and a copy brings nothing that
its entries do not. What came is durable when it is told of; bringing the same copy again changes nothing.
"""

from collections.abc import Callable
from itertools import chain

from inspect_app.entry.copy_seal import list_digest, parse_seal
from inspect_app.entry.format import TYPE, parse
from inspect_app.entry.jws import parse_jws, verify
from inspect_app.entry.picture_type import type_of
from inspect_app.entry.pictures import pictures
from inspect_app.entry.refusal import Refused
from inspect_app.intake.batch import MOST, Answer, Batches, digest_of
from inspect_app.intake.completion import Completion
from inspect_app.intake.copy_list import read_list
from inspect_app.intake.copy_outcome import Brought, Came, Seal, accounted
from inspect_app.intake.copy_tar import Damage, Member, Stream, members
from inspect_app.intake.photo_door import PhotoDoor
from inspect_app.intake.uploads_metadata import UNTYPED
from inspect_app.intake.uploads_refused import UploadRefused
from inspect_app.people.devices import Devices
from inspect_app.store.log_reading import LogReading
from inspect_app.store.quarantine import Quarantine
from inspect_app.store.vault import Vault, WrongHash, hash_of

AT_ONCE = 1024 * 1024  # bytes of entries in one transaction
May = Callable[[str], bool]


class CopyIntake:
    """``most``: bytes of one photo, as for any other way of sending it."""

    def __init__(
        self, batches: Batches, completion: Completion, door: PhotoDoor, vault: Vault, reading: LogReading,
        quarantine: Quarantine, devices: Devices, most: int,
    ) -> None:  # fmt: skip
        self.batches, self.completion, self.door, self.vault = batches, completion, door, vault
        self.reading, self.quarantine, self.devices, self.most = reading, quarantine, devices, most

    def bring(self, stream: Stream, may: May = lambda job: True, brought: Brought | None = None) -> Brought:
        """Read to the end and take what may be taken. ``may(job)``: whether whoever brings it may bring anything into
        that job; what they may not is refused, and nothing is told of it. Raises what the disk and the database raise:
        what was taken until then stays, stands in ``brought`` too if one is given, and the same copy brought again goes
        on."""
        return _Bringing(self, may, brought or Brought()).all(stream)

    def signers(self, job: str) -> dict[str, str]:
        """``{sha256: kid}``: the photos that entries of the job name, and a key that signed one of these entries. An
        entry in the log goes before one kept apart."""
        apart = {photo: one.kid for one in self.quarantine.of(job) for photo in one.photos}
        entries = (parse(one.token) for one in self.reading.job_entries(job))
        return apart | {photo: entry.kid for entry in entries for photo in pictures(entry.payload)}

    def holds(self, job: str, sha256: str) -> bool:
        """Whether the photo has its receipt and the disk still gives it: where it does not, good bytes are welcome."""
        had = self.door.log.photo_receipt(job, sha256) is not None and self.vault.holds(sha256)
        return had and self.vault.found(sha256) == sha256

    def seal(self, kid: str, token: bytes, manifest: bytes) -> Seal:
        """Who vouches for the list."""
        device = self.devices.find(kid)
        person = device.person if device else ""
        try:
            seal = parse_seal(token)
        except Refused:
            return Seal(kid, person, "unreadable")
        if device is None:
            return Seal(kid, person, "unknown_key")
        try:
            verify(seal, device.jwk)
        except Refused:
            return Seal(kid, person, "bad_signature")
        if seal.payload["manifest"] != list_digest(manifest):
            return Seal(kid, person, "other_list")
        return Seal(kid, person, "key_revoked" if device.revoked else "good")


class _Bringing:
    """One copy on its way in. Entries wait until there are enough for a transaction, or a photo asks for them."""

    def __init__(self, intake: CopyIntake, may: May, brought: Brought) -> None:
        self.intake, self.may, self.brought = intake, may, brought
        self.entries: list[tuple[str, str]] = []
        self.signers: dict[str, dict[str, str]] = {}

    def all(self, stream: Stream) -> Brought:
        manifest, seals = b"", list[tuple[str, bytes]]()
        for found in members(stream):
            if isinstance(found, Damage):
                self.brought.damage.append(found)
            elif found.what == "manifest":
                manifest = found.whole()
            elif found.what == "seal":
                seals.append((found.name, found.whole()))
            elif found.what == "entry":
                self.entries.append((found.name, found.whole().decode("latin-1")))
                if len(self.entries) == MOST or sum(len(token) for _, token in self.entries) >= AT_ONCE:
                    self._take_entries()
            else:
                self._take_entries()
                self.brought.came.append(self._photo(found))
        self._take_entries()
        self.brought.seals = [self.intake.seal(kid, token, manifest) for kid, token in seals]
        if manifest:
            self._read(manifest)
        self.brought.came = accounted(self.brought.listing, self.brought.came)
        return self.brought

    def _read(self, manifest: bytes) -> None:
        try:
            self.brought.listing = read_list(manifest)
        except Refused as why:
            self.brought.damage.append(Damage("list", 0, why.field))

    def _take_entries(self) -> None:
        if not self.entries:
            return  # and who names which photo stays known: a walk's photos come one after the other
        waiting, self.entries = self.entries, []
        refused = [self._turned_down(name, token) for name, token in waiting]
        tokens = [token for (_, token), why in zip(waiting, refused, strict=True) if why is None]
        answers = self.intake.batches.receive(tokens) if tokens else []
        self.intake.completion.entries_arrived(answers)
        self.signers = {}  # what came now may name photos
        each = iter(answers)
        for (name, token), why in zip(waiting, refused, strict=True):
            self.brought.came.append(why or _answered(name, _job(token), next(each)))

    def _turned_down(self, name: str, token: str) -> Came | None:
        """Before it reaches the ordinary intake; None for what goes there."""
        job = _job(token)
        if digest_of(token) != name:
            return Came("entry", name, "", "damaged", Refused("copy_damaged", "entry", name))
        if job and not self.may(job):
            return Came("entry", name, job, "refused", Refused("copy_job_not_yours", "job", job))
        return None

    def _photo(self, photo: Member) -> Came:
        sha256, job = photo.name, photo.job
        if not self.may(job):
            return Came("photo", sha256, job, "refused", Refused("copy_job_not_yours", "job", job))
        if job not in self.signers:
            self.signers[job] = self.intake.signers(job)
        kid = self.signers[job].get(sha256)
        if kid is None:
            return Came("photo", sha256, job, "refused", Refused("copy_photo_not_named", "photo", sha256))
        if photo.size > self.intake.most:
            return Came("photo", sha256, job, "refused", Refused("copy_photo_too_large", "photo", photo.size))
        if self.intake.holds(job, sha256):
            if hash_of(photo.blocks()) != sha256:
                self.brought.damage.append(Damage("spoiled", 0, sha256))
            return Came("photo", sha256, job, "duplicate")
        try:
            kind = self._put(photo)
            receipt = self.intake.door.take(kid, job, sha256, photo.size, kind)
        except WrongHash:
            return Came("photo", sha256, job, "damaged", Refused("copy_damaged", "photo", sha256))
        except UploadRefused as full:
            return Came("photo", sha256, job, "refused", Refused(full.code, full.field, full.value))
        if receipt is None:
            return Came("photo", sha256, job, "quarantined", Refused("key_revoked", "key", kid))
        return Came("photo", sha256, job, "accepted")

    def _put(self, photo: Member) -> str:
        """Into the vault, durably; its type by its first bytes. Raises ``WrongHash``."""
        blocks = photo.blocks()
        first = next(blocks, b"")
        self.intake.vault.put(chain([first], blocks), photo.name)
        return type_of(first) or UNTYPED


def _answered(name: str, job: str, answer: Answer) -> Came:
    return Came("entry", name, job, answer.status, answer.why)


def _job(token: str) -> str:
    """The job that a readable token speaks of; of any other the ordinary intake says what is wrong."""
    try:
        job = parse_jws(token, TYPE).payload.get("job")
    except Refused:
        return ""
    return job if isinstance(job, str) else ""
