"""Tables for a spreadsheet, as CSV (RFC 4180): none of their cells is ever run as a formula.

A spreadsheet takes a text that begins with one of ``=+-@`` for a formula, and one that reads another separator than
ours begins a cell anew in the middle of a text. So each such sign in a text that stands first, or after anything that
may end a cell, gets an apostrophe before it. Numbers are written as numbers.
"""

import csv
import io
import re
from collections.abc import Iterable, Sequence

SIGNS = "=+\\-@\uff1d\uff0b\uff0d\uff20"  # the wide ones too: a spreadsheet narrows them before it looks
STARTS = re.compile(f"(^|[,;|\"'\\s])([{SIGNS}])")
Cell = str | int | float | None


def harmless(text: str) -> str:
    """The text as a cell that stays text."""
    return STARTS.sub(r"\1'\2", text)


def written(rows: Iterable[Sequence[Cell]]) -> bytes:
    """UTF-8 with its mark, without which a spreadsheet takes letters beyond ASCII for others. Nothing is an empty
    cell."""
    text = io.StringIO()
    writer = csv.writer(text, quoting=csv.QUOTE_ALL)
    for row in rows:
        writer.writerow([harmless(cell) if isinstance(cell, str) else "" if cell is None else cell for cell in row])
    return text.getvalue().encode("utf-8-sig", "replace")
