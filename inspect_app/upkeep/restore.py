"""Set a store back to a backup, in an empty place, checked before and after.

Everything is laid out beside the data folder first, and gets its name at the end: a restore that is cut off leaves
nothing that a server could start on. Into a server's database (PostgreSQL) it all goes in one transaction; one that is
cut off after it is gone on with by the same command, as ``restore.json`` among what is laid out tells. What the server
says from then on is told apart from what it said before (``store/statements.py``): it cannot know what it received, and
confirmed, after the backup.
"""

import json
import os
import shutil
import tarfile
from collections.abc import Callable, Iterable
from functools import partial
from pathlib import Path
from typing import NamedTuple

from sqlalchemy import select
from sqlalchemy.exc import DatabaseError

from inspect_app.entry.thumbprint import thumbprint
from inspect_app.errors import BadInput, Conflict
from inspect_app.store.tables import StatementRow
from inspect_app.store.vault import BLOCK, blocks
from inspect_app.upkeep.backup_form import FILE, LARGEST_PAGE, PAGE, PHOTO, Page, check_files, photo_name, read_page
from inspect_app.upkeep.check import check
from inspect_app.upkeep.database_copy import copy_from_file
from inspect_app.upkeep.fault import Fault
from inspect_app.upkeep.files import server_jwk
from inspect_app.upkeep.snapshot import snapshot

DATABASE, BEGUN = "seamwalk.sqlite3", "restore.json"
Say = Callable[[Path], tuple[int, int]]


class Restored(NamedTuple):
    """``seq``: the number of the restoration; ``invitations``: open ones that were withdrawn; ``faults``: those of the
    backup (with ``done`` False: nothing was restored for them)."""

    page: Page
    done: bool
    seq: int
    invitations: int
    faults: list[Fault]


def restore(source: Path, data: Path, url: str, say: Say, despite: bool = False) -> Restored:
    """``source``: what ``back_up`` made; ``data``: a folder that is empty or not there, whose database is ``url``.
    ``say(folder)`` opens the laid out store, brings its tables up to date, says in it that it was set back, and gives
    the restoration's number and how many invitations it withdrew. A backup with faults is restored only ``despite``
    them, without its key never. Raises ``BadInput``, ``Conflict`` (``restore_not_empty``,
    ``restore_database_full``)."""
    embedded = url.startswith("sqlite")
    if data.exists() and (not data.is_dir() or any(data.iterdir())):
        raise Conflict("restore_not_empty", "SEAMWALK_DATA", str(data))
    final = Path(url.removeprefix("sqlite:///")) if embedded else None
    if final is not None and not final.is_absolute():  # a server looks for it elsewhere than this command would
        raise BadInput("bad_database_url", "SEAMWALK_DATABASE_URL", url)
    if final is not None and final.exists():
        raise Conflict("restore_not_empty", "SEAMWALK_DATABASE_URL", str(final))
    staging = data.with_name(f"{data.name}.restoring")
    gone_on = None if embedded else _committed(source, staging, url)
    if gone_on is not None:
        return _named(staging, data, gone_on, url)
    shutil.rmtree(staging, ignore_errors=True)
    staging.mkdir(mode=0o700, parents=True)
    committed = False
    try:
        page, faults = _laid_out(source, staging)
        kept = f"sqlite:///{(staging / DATABASE).as_posix()}"
        faults += [one for one in check(staging, kept).faults if one.code != "schema_old"]
        if faults and not despite:
            return Restored(page, False, 0, 0, faults)
        jwk = server_jwk(staging)
        if jwk is None or thumbprint(jwk) != page.kid:  # a server would make a new one, and orphan every receipt
            raise BadInput("backup_no_key", "server.key", str(source))
        seq, invitations = say(staging)
        after = [one for one in check(staging, kept).faults if one not in faults]
        if after and not despite:
            return Restored(page, False, 0, 0, faults + after)
        made = Restored(page, True, seq, invitations, faults + after)
        if not embedded:
            _put(staging / BEGUN, [json.dumps({"seq": seq, "invitations": invitations}).encode()])
            copy_from_file(staging / DATABASE, url)
            committed = True
            return _named(staging, data, made, url)
        if final is not None:
            # Under whatever name the server looks for it: one that finds none begins again at number one.
            place = staging / final.relative_to(data) if data in final.parents else final
            place.parent.mkdir(parents=True, exist_ok=True)
            shutil.move(staging / DATABASE, place)
        return _named(staging, data, made)
    finally:
        if not committed:
            shutil.rmtree(staging, ignore_errors=True)


def _named(staging: Path, data: Path, made: Restored, url: str = "") -> Restored:
    """Give what is laid out its name: from here on it is a server's. ``url``: of a database that is already full."""
    faults = [one for one in check(staging, url).faults if one not in made.faults] if url else []
    if url:
        (staging / DATABASE).unlink(missing_ok=True)
    if data.exists():
        data.rmdir()
    staging.rename(data)
    (data / BEGUN).unlink(missing_ok=True)
    return made._replace(faults=made.faults + faults)


def _committed(source: Path, staging: Path, url: str) -> Restored | None:
    """A restoration of this very backup that was cut off when its database was full and its folder had no name yet."""
    try:
        said = json.loads((staging / BEGUN).read_bytes())
        page = _page(source)
        with snapshot(url) as moment:
            asked = select(StatementRow.seq, StatementRow.kind).order_by(StatementRow.seq.desc())
            newest = moment.session.execute(asked.limit(1)).first()
    except (OSError, ValueError, DatabaseError):
        return None
    same = newest is not None and tuple(newest) == (said["seq"], "restoration")
    if not same or check_files(page, staging, but=page.database):
        return None
    return Restored(page, True, said["seq"], said["invitations"], [])


def _page(source: Path) -> Page:
    if source.is_dir():
        return read_page((source / PAGE).read_bytes(), str(source))
    with tarfile.open(source, "r|") as tar:
        for member in tar:
            file = tar.extractfile(member) if member.name == PAGE and member.isreg() else None
            if file is not None:
                return read_page(file.read(LARGEST_PAGE), str(source))
    raise BadInput("not_a_backup", "backup", str(source))


def _laid_out(source: Path, staging: Path) -> tuple[Page, list[Fault]]:
    """Copy all that the page names, and compare it with what the page says of it."""
    try:
        if source.is_dir():
            page = _page(source)
            for name in [*page.files, *map(photo_name, page.photos)]:
                if (source / name).is_file():
                    _put(staging / name, blocks(source / name))
        else:
            page = _unpacked(source, staging)
    except (OSError, tarfile.TarError) as error:
        raise BadInput("not_a_backup", "backup", f"{source}: {error}") from None
    faults = check_files(page, staging)
    if (staging / page.database).is_file():
        (staging / page.database).rename(staging / DATABASE)
    return page, faults


def _unpacked(source: Path, staging: Path) -> Page:
    """Only names that a backup has are taken, and only plain files."""
    page = None
    with tarfile.open(source, "r|") as tar:
        for member in tar:
            file = tar.extractfile(member) if member.isreg() else None
            if file is None:
                continue
            if member.name == PAGE:
                page = read_page(file.read(LARGEST_PAGE), str(source))
            elif FILE.fullmatch(member.name) or PHOTO.fullmatch(member.name):
                _put(staging / member.name, iter(partial(file.read, BLOCK), b""))
    if page is None:
        raise BadInput("not_a_backup", "backup", str(source))
    return page


def _put(target: Path, chunks: Iterable[bytes]) -> None:
    target.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    mode = 0o444 if target.parts[-3] == "photos" else 0o600
    with open(os.open(target, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, mode), "wb") as file:
        for chunk in chunks:
            file.write(chunk)
        file.flush()
        os.fsync(file.fileno())
