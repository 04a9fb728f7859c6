"""Take photos by the open resumable upload protocol tus 1.0.0, with nothing between the offset and the disk.

Specification: https://tus.io/protocols/resumable-upload (1.0.0), extensions creation, creation-with-upload,
checksum (sha1, sha256) and termination. What this server adds to it:

1. Metadata must name ``job``, ``sha256`` and ``type``. Creating again with the same device, job and hash
   gives the same address, so a lost answer costs nothing. An upload belongs to the device that made it.
2. The offset is the size of a file after fsync. ``HEAD`` reads it there and waits for nobody's network.
3. The newest appender wins: it takes the turn, and an older request, however long it hangs, is refused at its
   next block (409). The lock is held only for the writing of one block.
4. The last byte is answered after the whole file has its declared hash, lies in the vault, and the receipt is
   in the log: ``Seamwalk-Receipt`` carries it. Wrong hash: 460, the bytes are dropped, creation starts again
   from nothing. Anything else that goes wrong there is made good by the next ``HEAD`` or empty ``PATCH``.
5. A photo the job holds already is complete from its creation: ``HEAD`` says so and no byte is sent.
6. A full or failing disk is 507, and the offset stays true.

Nothing here knows HTTP; ``web/photos.py`` gives these refusals their status.
"""

import secrets
from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple, Protocol

from inspect_app.intake.uploads_append import Stream, append
from inspect_app.intake.uploads_caps import DEFAULT_CAPS, Caps, check_room, sweep
from inspect_app.intake.uploads_lock import Locks
from inspect_app.intake.uploads_metadata import Checksum, Declared
from inspect_app.intake.uploads_place import Place, Upload, upload_id
from inspect_app.intake.uploads_refused import UploadRefused
from inspect_app.store.vault import Vault, WrongHash
from inspect_app.store.vault_disk import Disk


class Receipts(Protocol):
    """The receipts (each a JWS), as far as a device may know of them. ``told``: that of a photo held, to who may know
    that it is. ``holds``: whether it is, with a receipt or without. ``take`` is called when the vault holds the photo
    durably; called again it must give the same receipt, or None again where the photo is kept apart."""

    def told(self, device: str, job: str, sha256: str) -> str | None: ...

    def holds(self, job: str, sha256: str) -> bool: ...

    def take(self, device: str, job: str, sha256: str, size: int, type: str, /) -> str | None: ...


class Progress(NamedTuple):
    """Where an upload stands: ``id``, ``offset`` and ``length`` in bytes, and the ``receipt`` once held."""

    id: str
    offset: int
    length: int
    receipt: str | None


class Uploads:
    """All uploads of one server, in one folder. ``now`` gives seconds since 1970."""

    def __init__(
        self, folder: Path, vault: Vault, receipts: Receipts, now: Callable[[], float],
        caps: Caps = DEFAULT_CAPS, disk: Disk | None = None,
    ) -> None:  # fmt: skip
        folder.mkdir(parents=True, exist_ok=True)
        self.folder, self.vault, self.receipts, self.now, self.caps = folder, vault, receipts, now, caps
        self.disk = disk or Disk()
        self.locks = Locks(folder)
        self._next_sweep = 0.0

    def create(self, device: str, length: int, declared: Declared) -> Progress:
        """Begin, or find again, the upload of that photo. ``UploadRefused``: ``upload_too_large``,
        ``upload_too_many``, ``upload_too_many_bytes``; ``upload_hash_wrong`` for an empty photo of another hash."""
        if length > self.caps.photo:
            raise UploadRefused("upload_too_large", "Upload-Length", length, most=self.caps.photo)
        self.sweep()
        name = upload_id(device, declared.job, declared.sha256)
        place = self._place(device, name)
        wanted = Upload(name, device, declared.job, declared.sha256, length, declared.type, declared.name)
        held = self.receipts.told(device, declared.job, declared.sha256)
        with place.lock():
            if held:
                place.make(wanted, part=False)
                place.remove(declaration=False)
            else:
                known = place.load()
                if known is not None and known.length == length and self._whole(place, known):
                    return Progress(name, length, length, self._take(known))
                # Another length for the same hash can never have been right: start from nothing.
                if known is None or known.length != length or place.size() is None:
                    if known is None or place.size() is None:
                        check_room(place.folder, length, self.caps)
                    place.make(wanted, part=True)
        return self.head(device, name)

    def head(self, device: str, name: str) -> Progress:
        """Where it stands. One whose last answer was never given is finished first, if the disk and the log
        let it. ``UploadRefused``: ``upload_unknown``, ``upload_gone``, ``upload_hash_wrong``."""
        place, upload = self._known(device, name)
        receipt = self.receipts.told(device, upload.job, upload.sha256)
        with place.lock():
            if receipt is None and self._whole(place, upload):
                return Progress(name, upload.length, upload.length, self._take(upload))
            if receipt:  # perhaps by way of another phone: what is left here would only take up room
                place.remove(declaration=False)
                return Progress(name, upload.length, upload.length, receipt)
            offset = place.size()
        if offset is None:
            raise UploadRefused("upload_gone", "upload", name)
        if offset == upload.length:
            receipt = self._finish(place, upload)
        return Progress(name, offset, upload.length, receipt)

    def patch(
        self, device: str, name: str, offset: int, stream: Stream, checksum: Checksum | None = None,
        size: int | None = None,
    ) -> Progress:  # fmt: skip
        """Append a body (of ``size`` bytes if that is known) at ``offset``. ``UploadRefused``: as ``head``,
        ``upload_offset_wrong``, ``upload_overtaken``, ``upload_beyond_length``, ``upload_checksum_wrong``;
        ``OSError`` from the disk."""
        place, upload = self._known(device, name)
        receipt = self.receipts.told(device, upload.job, upload.sha256)
        if receipt or self._whole(place, upload):
            if offset != upload.length:
                raise UploadRefused("upload_offset_wrong", "Upload-Offset", offset, offset=upload.length)
            return Progress(name, offset, upload.length, receipt or self._take(upload))
        if size is not None and offset + size > upload.length:
            raise UploadRefused("upload_beyond_length", "Upload-Offset", offset + size, length=upload.length)
        token = secrets.token_hex(8)
        place.begin(token, offset)
        reached = append(place, token, offset, upload.length, stream, checksum)
        receipt = self._finish(place, upload) if reached == upload.length else None
        return Progress(name, reached, upload.length, receipt)

    def terminate(self, device: str, name: str) -> None:
        """Drop an unfinished upload. A photo that is held stays held: nothing deletes."""
        place, _ = self._known(device, name)
        with place.lock():
            place.remove(declaration=True)

    def receipt(self, device: str, job: str, sha256: str) -> str | None:
        """The receipt of a photo of that job; an upload of this device that only lacks its last answer is
        finished for it."""
        held = self.receipts.told(device, job, sha256)
        if held is None:
            try:
                return self.head(device, upload_id(device, job, sha256)).receipt
            except UploadRefused:
                return None
        return held

    def sweep(self) -> int:
        """Remove what nobody continued; at most once an hour, returns how many."""
        now = self.now()
        if now < self._next_sweep:
            return 0
        self._next_sweep = now + 3600
        return sweep(self.folder, now, self.caps)

    def _whole(self, place: Place, upload: Upload) -> bool:
        """This device brought all of it already: what was declared stands, and its bytes have moved to the vault."""
        return place.size() is None and self.receipts.holds(upload.job, upload.sha256)

    def _take(self, upload: Upload) -> str | None:
        return self.receipts.take(upload.device, upload.job, upload.sha256, upload.length, upload.type)

    def _finish(self, place: Place, upload: Upload) -> str | None:
        with place.lock():
            if place.part.exists():  # else another request did this a moment ago
                try:
                    self.vault.adopt(place.part, upload.sha256)
                except WrongHash as wrong:
                    place.remove(declaration=True)
                    raise UploadRefused(
                        "upload_hash_wrong", "Upload-Metadata sha256", wrong.found,
                        declared=wrong.declared, found=wrong.found,
                    ) from wrong  # fmt: skip
            elif not self.receipts.holds(upload.job, upload.sha256):
                raise UploadRefused("upload_gone", "upload", upload.id)
        receipt = self._take(upload)
        with place.lock():
            place.remove(declaration=False)
        return receipt

    def _known(self, device: str, name: str) -> tuple[Place, Upload]:
        place = self._place(device, name)
        upload = place.load()
        if upload is None:
            raise UploadRefused("upload_unknown", "upload", name)
        return place, upload

    def _place(self, device: str, name: str) -> Place:
        if len(name) != 32 or not set(name) <= set("0123456789abcdef"):
            raise UploadRefused("upload_unknown", "upload", name)
        return Place(self.folder, device, name, self.locks, self.disk)
