"""The printed copies of photos: those that stand in a report, and whether two pictures show the same."""

import hashlib
import io
from typing import Any

from PIL import Image, ImageChops
from pyhanko.pdf_utils.reader import PdfFileReader

BLOCKS = 64  # the longer side of both pictures, made small enough that an encoder's own choices average out
ALIKE = 12  # levels of 255 that a block may differ by: ours; other encoders of one picture stay within 3


def copies_in(reader: PdfFileReader) -> dict[str, bytes]:
    """``{SHA-256: bytes}`` of every JPEG that stands in a PDF as it was (ISO 32000-1, 7.4.8)."""
    found = {}
    for at in range(reader.xrefs.total_revisions):
        for reference in reader.xrefs.explicit_refs_in_revision(at):
            one: Any = reader.get_object(reference)
            if hasattr(one, "encoded_data") and one.get("/Subtype") == "/Image" and _plain(one.get("/Filter")):
                found[hashlib.sha256(one.encoded_data).hexdigest()] = one.encoded_data
    return found


def alike(one: bytes, other: bytes) -> bool:
    """Whether two pictures of one size differ by no more than encoders do. Whatever a decoder raises is raised."""
    opened = [Image.open(io.BytesIO(data)) for data in (one, other)]
    width, height = opened[0].size
    if opened[1].size != (width, height):  # before a pixel is decoded: one of them is anybody's
        return False
    scale = BLOCKS / max(width, height)
    size = max(1, round(width * scale)), max(1, round(height * scale))
    small = [picture.convert("RGB").resize(size, Image.Resampling.BOX) for picture in opened]
    return max(ImageChops.difference(*small).tobytes()) <= ALIKE


def _plain(filters: Any) -> bool:
    return filters == "/DCTDecode" or (isinstance(filters, list) and [*filters] == ["/DCTDecode"])
