"""Back a store up while it serves.

The database first, as it is at one moment; then every photo that it knows of. A photo is on the disk before its row and
never goes again, so whatever this database gave a receipt for is in the backup. A folder is gone on with: what it holds
is not copied twice, and the backup before stays good until the page of this one is in its place.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import datetime
from pathlib import Path
from typing import NamedTuple

from inspect_app.clock import spell
from inspect_app.entry.thumbprint import thumbprint
from inspect_app.errors import BadInput, Conflict
from inspect_app.upkeep.backup_form import PAGE, Page, digest_of, photo_name, read_page
from inspect_app.upkeep.backup_place import BEGUN, FilePlace, FolderPlace, Place
from inspect_app.upkeep.database_copy import copy_to_file
from inspect_app.upkeep.fault import Fault
from inspect_app.upkeep.files import ready_reports, server_jwk
from inspect_app.upkeep.photos import check_photo
from inspect_app.upkeep.received import check_photo_rows
from inspect_app.upkeep.said import read_statements
from inspect_app.upkeep.snapshot import snapshot

SEAL = ("seal/seal-key.pem", "seal/seal-certificate.pem")


class Backed(NamedTuple):
    """``new``: photos copied now, ``bytes`` of all photos; ``faults``: what could not be copied as it should be."""

    page: Page
    new: int
    bytes: int
    reports: int
    faults: list[Fault]


def back_up(data: Path, url: str, target: Path, now: datetime) -> Backed:
    """Make or renew the backup at ``target``, a file where its name ends in ``.tar``. Raises ``BadInput``,
    ``Conflict`` (nothing of another kind is touched), ``OSError``."""
    jwk = server_jwk(data)
    if jwk is None:
        raise BadInput("backup_no_key", "server.key", str(data / "server.key"))
    kid = thumbprint(jwk)
    _require_ours(target, data, kid)
    with _place(target, kid) as place:
        database = place.work / f"database-{now:%Y%m%dT%H%M%S%f}.sqlite3"
        copy_to_file(url, database)
        with snapshot(f"sqlite:///{database.as_posix()}") as moment:
            said, faults = read_statements(moment.session, jwk)
            wanted, rows = check_photo_rows(moment.session, said)
            reports = ready_reports(moment.session)
        faults += rows
        names = {database.name: database, "server.key": data / "server.key"}
        names |= {name: data / name for name in SEAL if (data / name).exists()}
        names |= {f"definitions/{file.name}": file for file in sorted((data / "definitions").glob("*.json"))}
        for report in reports:
            names |= {f"reports/{name}": data / "reports" / name for name in (report.file, report.beside)}
        files, missing = _copied(names, place)
        photos, new, lost = _photos(data, wanted, place)
        page = Page(spell(now), kid, said.last, said.head, database.name, files, photos)
        place.finish(PAGE, page.text())
    return Backed(page, new, sum(photos.values()), len(reports), faults + missing + lost)


def _copied(names: dict[str, Path], place: Place) -> tuple[dict[str, str], list[Fault]]:
    files, missing = dict[str, str](), list[Fault]()
    for name, source in names.items():
        try:
            digest = digest_of(source)
            place.put(name, source)
        except FileNotFoundError:
            missing.append(Fault("report_gone", name))
            continue
        files[name] = digest
    return files, missing


def _photos(data: Path, wanted: dict[str, int], place: Place) -> tuple[dict[str, int], int, list[Fault]]:
    photos, new, lost = dict[str, int](), 0, list[Fault]()
    held = place.holds({photo_name(sha256): (size, sha256) for sha256, size in wanted.items()})
    for sha256, size in sorted(wanted.items()):
        name = photo_name(sha256)
        if name not in held:
            fault = check_photo(data / name, sha256, size)
            if fault:
                lost.append(fault)
                continue
            place.put(name, data / name)
            new += 1
        photos[sha256] = size
    return photos, new, lost


def _require_ours(target: Path, data: Path, kid: str) -> None:
    if target.resolve() == data.resolve() or data.resolve() in target.resolve().parents:
        raise BadInput("backup_inside", "backup", str(target))
    if not target.exists() or (target.is_dir() and all(one.suffix == ".part" for one in target.iterdir())):
        return  # at most the first bytes of a backup that was cut off
    begun, page = target / BEGUN, target / PAGE
    if not begun.is_file() and not page.is_file():
        raise Conflict("backup_not_ours", "backup", str(target))
    if (begun.read_text("ascii") if begun.is_file() else read_page(page.read_bytes(), str(target)).kid) != kid:
        raise Conflict("backup_other_server", "backup", str(target))


@contextmanager
def _place(target: Path, kid: str) -> Iterator[Place]:
    place = FilePlace(target) if target.suffix == ".tar" else FolderPlace(target, kid)
    try:
        yield place
    finally:
        place.close()
