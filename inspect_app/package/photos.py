"""The original photos of a package: those held, and by name those that are not."""

from pathlib import Path
from typing import NamedTuple

from inspect_app.entry.picture_type import FIRST, ending_of
from inspect_app.package.member import Member
from inspect_app.package.named import Named
from inspect_app.store.log_reading import Holding
from inspect_app.store.vault import NAME, Vault


class Photos(NamedTuple):
    """``members``; ``missing``: the hashes of photos that an entry names or a receipt was given for, and that are not
    in the package; ``damaged``: those of them whose file is there and is not what was received."""

    members: list[Member]
    missing: list[str]
    damaged: list[str]


def photos(vault: Vault, holdings: dict[str, Holding], named: Named) -> Photos:
    """Their digests are those they were received by: a file is taken for what it was where it still has its size, and
    whoever verifies the package hashes every byte. Read are the first bytes alone, which tell the ending: what a phone
    said of a photo does not make another program open it."""
    members, missing, damaged = list[Member](), list[str](), list[str]()
    for sha256 in sorted({*holdings, *filter(NAME.fullmatch, named.photos)}):
        held = holdings.get(sha256)
        try:
            size = vault.path(sha256).stat().st_size if held else None
            ending = _ending(vault.path(sha256)) if held and size == held.size else None
        except OSError:
            size = ending = None
        if held and ending:
            members.append(Member(f"data/photos/{sha256}.{ending}", held.size, sha256, vault.path(sha256)))
            continue
        missing.append(sha256)
        damaged += [sha256] if size is not None else []
    return Photos(members, missing, damaged)


def _ending(path: Path) -> str:
    with open(path, "rb") as file:
        return ending_of(file.read(FIRST))
