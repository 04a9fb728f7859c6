"""Read pictures that strangers hand over: their facts, and small copies without EXIF.

The original bytes are evidence and are never touched here. Whatever is wrong with them becomes a value,
``Undecodable(reason)``: the photo is stored and listed all the same. Reasons are codes, worded in
``static/words/photos.json``: ``empty``, ``not_an_image``, ``too_many_pixels``, ``truncated``, ``damaged``.
"""

import io
from pathlib import Path
from typing import Any, NamedTuple

import pillow_heif
from PIL import Image, ImageOps

from inspect_app.entry.picture_type import type_of
from inspect_app.intake.picture_end import picture_end

pillow_heif.register_heif_opener()

FORMATS = ("JPEG", "PNG", "WEBP", "HEIF")
# A JPEG decodes at a fraction of its size; the others need all their pixels in memory (3 or 4 bytes each),
# and a PNG of a few kilobytes can claim any number of them.
# (MPO is what Pillow calls a JPEG with a second view behind it.)
MOST_PIXELS = {"JPEG": 120_000_000, "MPO": 120_000_000}
MOST_PIXELS_OTHERWISE = 60_000_000
MOST_PROFILE = 64 * 1024
QUALITY = 85

ORIENTATION, DETAILS, PLACE = 0x0112, 0x8769, 0x8825
TIMES = {  # Exif 2.32, 4.6.5: kept as the strings they are, no instant is computed from them
    "DateTimeOriginal": 0x9003, "OffsetTimeOriginal": 0x9011, "SubSecTimeOriginal": 0x9291,
    "DateTimeDigitized": 0x9004, "OffsetTimeDigitized": 0x9012, "OffsetTime": 0x9010,
}  # fmt: skip
DATE_TIME = 0x0132


class Undecodable(NamedTuple):
    """Why a photo cannot be drawn: a code."""

    reason: str


def facts(source: bytes | Path) -> dict[str, Any]:
    """What a picture says of itself, from its header and structure, without decoding its pixels:

    ``type`` (by content: ``image/jpeg`` ``image/png`` ``image/webp`` ``image/heic``, or None), ``width``,
    ``height`` (pixels as stored), ``orientation`` (EXIF 1 to 8 or None), ``times`` {EXIF name: raw string},
    ``place`` (``present``/``absent``: whether EXIF holds a position, never the position), ``after_end``
    (bytes after the picture's end, None where it has no end) and ``undecodable`` (a reason or None).
    """
    data = source if isinstance(source, bytes) else source.read_bytes()
    known: dict[str, Any] = {
        "type": None, "width": None, "height": None, "orientation": None, "times": {}, "place": "absent",
        "after_end": None, "undecodable": None,
    }  # fmt: skip
    kind = type_of(data)
    known["type"] = kind
    if kind is not None and (end := picture_end(data, kind)) is not None:
        known["after_end"] = len(data) - end
    image = _open(data)
    if isinstance(image, Undecodable):
        return known | {"undecodable": image.reason}
    with image:
        too_large = "too_many_pixels" if _too_large(image) else None
        return known | {"width": image.width, "height": image.height, "undecodable": too_large} | _exif(image)


def shrink(source: bytes | Path, sizes: tuple[int, ...] = (1600, 320)) -> dict[int, bytes] | Undecodable:
    """JPEG copies whose longest side is at most each of ``sizes`` pixels (largest first), upright, with no
    EXIF, from one decoding. A picture that is smaller stays as large as it is."""
    data = source if isinstance(source, bytes) else source.read_bytes()
    image = _open(data)
    if isinstance(image, Undecodable):
        return image
    with image:
        if _too_large(image):
            return Undecodable("too_many_pixels")
        try:
            return _copies(image, sizes)
        except Exception:  # a decoder fed hostile bytes may raise anything at all
            return Undecodable("damaged")


def _open(data: bytes) -> Image.Image | Undecodable:
    if not data:
        return Undecodable("empty")
    kind = type_of(data)
    if kind is None:
        return Undecodable("not_an_image")
    if picture_end(data, kind) is None:
        return Undecodable("truncated")
    try:
        return Image.open(io.BytesIO(data), formats=FORMATS)
    except Image.DecompressionBombError:
        return Undecodable("too_many_pixels")
    except Exception:  # as above: the header alone can break a parser
        return Undecodable("damaged")


def _too_large(image: Image.Image) -> bool:
    return image.width * image.height > MOST_PIXELS.get(str(image.format), MOST_PIXELS_OTHERWISE)


def _copies(image: Image.Image, sizes: tuple[int, ...]) -> dict[int, bytes]:
    # draft() takes the smaller of the two ratios, so a square box would leave a wide photo at full size.
    over = max(image.size) / max(sizes)
    if over > 1:
        image.draft("RGB", (int(image.width / over), int(image.height / over)))
    profile = image.info.get("icc_profile")
    small = image
    made: dict[int, bytes] = {}
    for size in sorted(sizes, reverse=True):
        small.thumbnail((size, size), Image.Resampling.LANCZOS, reducing_gap=None)
        if not made:
            small = _on_white(ImageOps.exif_transpose(small))
            # Whatever else came with it (EXIF, XMP, a comment) stays with the original; colours need theirs.
            small.info = {"icc_profile": profile} if profile and len(profile) <= MOST_PROFILE else {}
        out = io.BytesIO()
        small.save(out, "JPEG", quality=QUALITY)
        made[size] = out.getvalue()
    return made


def _on_white(image: Image.Image) -> Image.Image:
    if image.mode in ("RGBA", "LA", "PA") or "transparency" in image.info:
        flat = Image.new("RGBA", image.size, "white")
        flat.alpha_composite(image.convert("RGBA"))
        return flat.convert("RGB")
    return image.convert("RGB")


def _exif(image: Image.Image) -> dict[str, Any]:
    try:
        exif = image.getexif()
        details = exif.get_ifd(DETAILS)
        raw = {"DateTime": exif.get(DATE_TIME)} | {name: details.get(tag) for name, tag in TIMES.items()}
        orientation = exif.get(ORIENTATION)
        place = "present" if exif.get_ifd(PLACE) else "absent"
    except Exception:  # unreadable EXIF is no EXIF; the picture itself may be sound
        return {}
    return {
        "orientation": orientation if orientation in range(1, 9) else None,
        "times": {name: _text(value) for name, value in raw.items() if value is not None},
        "place": place,
    }


def _text(value: object) -> str:
    text = value.decode("latin-1") if isinstance(value, bytes) else str(value)
    return text.rstrip("\0")[:64]
