"""What a report encloses: the signed tokens that it was read from, so that a stranger can check them without us.

The formats are open ones: a compact JWS (RFC 7515) on each line, a JWK (RFC 7517), JSON. They travel as embedded
files of the PDF (ISO 32000-1, 7.11.4), under the seal like every other byte. Original photos are too large for it.
"""

import json
import zlib
from collections.abc import Mapping
from typing import Any, NamedTuple

from pyhanko.pdf_utils.reader import PdfFileReader

CONTENTS, ENTRIES, RECEIPTS = "contents.json", "entries.txt", "receipts.txt"
ENROLMENTS, SERVER_KEY, DEFINITIONS = "enrolments.txt", "server-key.json", "definitions.txt"
NAMES = (CONTENTS, DEFINITIONS, ENROLMENTS, ENTRIES, RECEIPTS, SERVER_KEY)
LARGEST = 256 * 1024 * 1024  # bytes of one file, unpacked: a file that says more is not read


class Signed(NamedTuple):
    """A job's tokens as they were received and given: ``entries`` in the server's order, ``receipts`` in the
    order of the job's chain, ``enrolments`` and revocations of every key that signed an entry, and the
    server's public key as a JWK."""

    entries: list[str]
    receipts: list[str]
    enrolments: list[str]
    server_key: dict[str, str]


class Enclosure(NamedTuple):
    """One embedded file."""

    name: str
    type: str
    data: bytes


def enclosures(contents: bytes, signed: Signed, definitions: Mapping[str, bytes] | None = None) -> list[Enclosure]:
    """The files to embed; ``contents``: the bytes of ``contents.json``; ``definitions``: ``{digest: compiled}`` of the
    checklists that it speaks of, without which nobody can make it again."""
    key = json.dumps(signed.server_key, sort_keys=True, indent=1) + "\n"
    listed = None if definitions is None else b"".join(definitions[one] + b"\n" for one in sorted(definitions))
    return [
        Enclosure(CONTENTS, "application/json", contents),
        *([] if listed is None else [Enclosure(DEFINITIONS, "text/plain", listed)]),
        Enclosure(ENROLMENTS, "text/plain", _lines(signed.enrolments)),
        Enclosure(ENTRIES, "text/plain", _lines(signed.entries)),
        Enclosure(RECEIPTS, "text/plain", _lines(signed.receipts)),
        Enclosure(SERVER_KEY, "application/json", key.encode("ascii")),
    ]


def _lines(tokens: list[str]) -> bytes:
    return "".join(f"{token}\n" for token in tokens).encode("ascii")


def enclosed(reader: PdfFileReader) -> dict[str, bytes] | None:
    """The files of a PDF that bear our names, unpacked; None when there is none of them.

    ``ValueError`` for a name that stands twice, a filter we do not write, or more than ``LARGEST`` bytes. A
    damaged file raises whatever the reader does.
    """
    try:
        pairs = reader.root["/Names"]["/EmbeddedFiles"]["/Names"]
    except KeyError:
        return None
    found: dict[str, bytes] = {}
    for at in range(0, len(pairs), 2):
        name = str(pairs[at])
        if name in NAMES:
            if name in found:
                raise ValueError("doubled")
            found[name] = _unpacked(pairs[at + 1]["/EF"]["/F"])
    return found or None


def _unpacked(stream: Any) -> bytes:
    if stream.get("/Filter") != "/FlateDecode" or "/DecodeParms" in stream:
        raise ValueError("filter")
    # Not the reader's own unpacking: it has no bound, and a few kilobytes can unpack to many gigabytes.
    unpacker = zlib.decompressobj()
    data = unpacker.decompress(stream.encoded_data, LARGEST)
    if not unpacker.eof or unpacker.unused_data:
        raise ValueError("too_large" if unpacker.unconsumed_tail else "filter")
    return data
