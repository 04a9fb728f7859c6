"""Receipts kept elsewhere, against which a package's log is held: of a report, of another package, or lines of text."""

from collections.abc import Iterator, Sequence
from pathlib import Path

from inspect_app.commands.bounded import MEMORY, Bounded
from inspect_app.commands.opened import Place, is_archive, open_archive, open_folder
from inspect_app.entry.jwk import Jwk
from inspect_app.errors import BadInput
from inspect_app.evidence.enclosure import RECEIPTS
from inspect_app.evidence.package.log import Witness, receipts_in
from inspect_app.evidence.package.names import LARGEST_REPORT, LARGEST_TOKENS
from inspect_app.evidence.verify import enclosed_in

PDF = b"%PDF-"


class Later:
    """The files' lines, read once. ``OSError`` for a file that cannot be read."""

    def __init__(self, files: Sequence[Path]) -> None:
        self.lines = {str(file): list(_lines(file)) for file in files}

    def witnesses(self, server_key: Jwk) -> list[Witness]:
        """What each shows, as far as this server signed it. ``BadInput`` ``no_receipts`` where that is nothing."""
        found = [Witness(name, receipts_in(lines, server_key)) for name, lines in self.lines.items()]
        empty = next((one.source for one in found if not one.receipts), None)
        if empty is not None:
            raise BadInput("no_receipts", "--later", empty)
        return found


def _lines(file: Path) -> Iterator[bytes]:
    if file.is_dir() or is_archive(file):
        opened = open_folder(file) if file.is_dir() else open_archive(file)
        place = opened.places.get(f"data/{RECEIPTS}")
        data = place.read(LARGEST_TOKENS) if place else b""
    else:
        place = Place(str(file), 0, file.stat().st_size)
        data = place.read(LARGEST_REPORT)
        if data.startswith(PDF):
            with Bounded(MEMORY + 10 * len(data)) as bounded:
                data = (bounded.ask(enclosed_in, data) or {}).get(RECEIPTS, b"")
    yield from filter(None, data.split(b"\n"))
