"""Hold the vault's bytes against their names, and its files against the rows that need them."""

import time
from pathlib import Path

from inspect_app.store.vault import NAME, blocks, hash_of
from inspect_app.upkeep.fault import Fault

LEFT = 3600.0  # seconds after which bytes in `incoming` are nobody's any more


def check_vault(data: Path, wanted: dict[str, int]) -> tuple[int, list[Fault]]:
    """``wanted``: the photos that must be there, with their sizes, as told before the files are looked at: a photo
    comes before its row. Returns the bytes read, and what is wrong."""
    faults, read = list[Fault](), 0
    for sha256, size in sorted(wanted.items()):
        fault = check_photo(data / "photos" / sha256[:2] / sha256, sha256, size)
        faults += [fault] if fault else []
        read += size
    return read, faults + _others(data, wanted)


def check_photo(path: Path, sha256: str, size: int) -> Fault | None:
    """What is wrong with one photo's file; None when it is what its name says."""
    where, facts = f"photos/{sha256[:2]}/{sha256}", {"size": size}
    try:
        if path.stat().st_size != size or hash_of(blocks(path)) != sha256:
            return Fault("photo_damaged", where, facts)
    except FileNotFoundError:
        return Fault("photo_gone", where, facts)
    except OSError as error:
        return Fault("photo_unreadable", where, facts | {"why": error.strerror})
    return None


def _others(data: Path, wanted: dict[str, int]) -> list[Fault]:
    """Files that no row needs: a kill between the photo and its row leaves one, and the phone sends it again."""
    vault, notes = data / "photos", list[Fault]()
    for file in sorted(file for file in vault.glob("*/*") if file.is_file()):
        where = file.relative_to(data).as_posix()
        if file.parent.name == "incoming":
            try:
                if file.stat().st_ctime < time.time() - LEFT:
                    notes.append(Fault("photo_half", where, note=True))
            except FileNotFoundError:  # it went to its place in this moment
                continue
        elif file.parent.name == "damaged":
            notes.append(Fault("photo_set_aside", where, note=True))
        elif not NAME.fullmatch(file.name) or file.parent.name != file.name[:2]:
            notes.append(Fault("vault_stranger", where, note=True))
        elif file.name not in wanted:
            notes.append(Fault("photo_unclaimed", where, note=True))
    return notes
