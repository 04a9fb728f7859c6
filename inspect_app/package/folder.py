"""Write a package as a folder. Below the data folder a photo gets a second name there and takes no more room; anywhere
else it is copied, so that nobody who edits their package touches the vault."""

import os
import shutil
from pathlib import Path
from uuid import uuid4

from inspect_app.errors import Conflict
from inspect_app.package.bag import Bag
from inspect_app.package.member import Member
from inspect_app.package.sheet import Span
from inspect_app.store.vault_disk import Disk


def write_folder(bag: Bag, target: Path, data: Path, disk: Disk | None = None) -> Path:
    """The bag at ``target``, there as a whole or not at all; ``data``: the data folder. Raises ``Conflict``
    ``package_exists`` where there is something already, ``OSError``."""
    disk = disk or Disk()
    if target.exists() and not (target.is_dir() and not any(target.iterdir())):
        raise Conflict("package_exists", "to", str(target))
    links = data.resolve() in target.resolve().parents
    target.parent.mkdir(parents=True, exist_ok=True)
    temporary = target.with_name(f"{target.name}.{uuid4().hex}.part")
    try:
        for folder in sorted({(temporary / one.name).parent for one in bag.members}):
            folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        for one in bag.members:
            if not (links and _linked(one, temporary / one.name, disk)):
                _copied(one, temporary / one.name, disk)
        if target.exists():
            target.rmdir()
        disk.rename(temporary, target)
        disk.sync_folder(target.parent)
    finally:
        shutil.rmtree(temporary, ignore_errors=True)
    return target


def _linked(member: Member, target: Path, disk: Disk) -> bool:
    if isinstance(member.source, Span):
        return False
    try:
        disk.link(member.source, target)
    except OSError:  # a file system without links, or one that lies on two
        return False
    return True


def _copied(member: Member, target: Path, disk: Disk) -> None:
    with open(os.open(target, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600), "wb", buffering=0) as file:
        for block in member.blocks():
            disk.write(file, block)
