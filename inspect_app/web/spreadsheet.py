"""Tables for a spreadsheet, as CSV (RFC 4180): none of their cells is ever run as a formula.

A spreadsheet takes a text that begins with one of ``=+-@`` for a formula, and one that reads another separator than
ours begins a cell anew in the middle of a text. So each such sign in a text that stands first, or after anything that
may end a cell, gets an apostrophe before it. Numbers are written as numbers.
"""

import csv
import io
import re
from collections.abc import Iterable, Sequence

# The wide and the small ones too: a spreadsheet may narrow them before it looks.
SIGNS = "=+\\-@\uff1d\uff0b\uff0d\uff20\ufe66\ufe62\ufe63\ufe6b"
# Of no width, or no sign at all: a reader that drops them begins with what comes after.
UNSEEN = "\x00-\x1f\x7f-\x9f\xad\u200b-\u200f\u202a-\u202e\u2060-\u206f\ufeff"
STARTS = re.compile(f"(^|[,;|\"'\\s{UNSEEN}])([{SIGNS}])")
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
