"""Write a package as one zip file."""

from contextlib import suppress
from pathlib import Path
from uuid import uuid4

from inspect_app.errors import Conflict
from inspect_app.package.bag import Bag
from inspect_app.package.stored_zip import StoredZip


def write_zip(bag: Bag, target: Path) -> None:
    """The zip file, under its own name only once it is whole. Raises ``Conflict`` ``package_exists`` where there is
    something already, ``OSError``."""
    if target.exists():
        raise Conflict("package_exists", "to", str(target))
    temporary = target.with_name(f"{target.name}.{uuid4().hex}.part")
    try:
        with open(temporary, "xb") as out:
            for block in StoredZip(bag).blocks():
                out.write(block)
        temporary.rename(target)
    finally:
        with suppress(OSError):  # whatever kept it from being written has been told already
            temporary.unlink(missing_ok=True)
