"""Pictures as phones and as attackers hand them over, all invented and drawn here."""

import io
import struct
import zipfile
import zlib
from functools import cache

from PIL import Image, ImageDraw, PngImagePlugin

COMMENT = b"a comment that names a street"


def drawing(width=2400, height=1800):
    """Lines and circles, so that the bytes of a copy depend on what was drawn; the top left corner is red."""
    image = Image.new("RGB", (width, height), "#9fb0b8")
    draw = ImageDraw.Draw(image)
    for x in range(0, width, 97):
        draw.line((x, 0, width - x, height), fill=(x % 256, 80, 120), width=9)
    draw.rectangle((0, 0, width // 4, height // 4), fill="#ff0000")
    return image


def exif(orientation=1, place=True):
    tags = Image.Exif()
    tags[0x010F], tags[0x0112] = "Invented", orientation
    tags[0x0132] = "2026:11:25 16:40:05"
    details = tags.get_ifd(0x8769)
    details[0x9003], details[0x9011], details[0x9291] = "2026:11:25 16:40:05", "-05:00", "120"
    if place:
        gps = tags.get_ifd(0x8825)
        gps[1], gps[2], gps[3], gps[4] = "S", (35.0, 0.0, 0.0), "W", (125.0, 0.0, 0.0)
    return tags


def encoded(kind="JPEG", image=None, **options):
    out = io.BytesIO()
    (image or drawing()).save(out, kind, **options)
    return out.getvalue()


def phone_jpeg(orientation=1, place=True, image=None):
    return encoded(image=image, quality=90, exif=exif(orientation, place), comment=COMMENT)


def png_bomb(width=10_000, height=10_000):
    """A few kilobytes that claim a hundred million pixels."""

    def chunk(name, data):
        return struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))

    rows = zlib.compress(b"\0" * (1 + width // 8) * height, 9)
    header = struct.pack(">IIBBBBB", width, height, 1, 0, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", header) + chunk(b"IDAT", rows) + chunk(b"IEND", b"")


def text_bomb():
    """A small PNG whose text unpacks to far more than a text should."""
    note = PngImagePlugin.PngInfo()
    note.add_text("note", "a" * 80_000_000, zip=True)
    return encoded("PNG", drawing(64, 64), pnginfo=note)


def zip_behind(picture):
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as archive:
        archive.writestr("payload.txt", "not a picture")
    return picture + out.getvalue()


@cache
def whole(kind):
    return phone_jpeg() if kind == "JPEG" else encoded(kind, drawing(640, 480))


# Name, how its bytes are made, and the reason that is given when somebody wants to see it (None: it can be drawn).
HOSTILE = [
    ("nothing at all", lambda: b"", "empty"),
    ("text named jpg", lambda: b"This is no picture.\n" * 50, "not_an_image"),
    ("a page of HTML", lambda: b"<html><script>alert(1)</script></html>", "not_an_image"),
    ("a GIF, not on the list", lambda: encoded("GIF", drawing(64, 64)), "not_an_image"),
    ("a TIFF, not on the list", lambda: encoded("TIFF", drawing(64, 64)), "not_an_image"),
    ("only the first bytes of a JPEG", lambda: whole("JPEG")[:3], "truncated"),
    ("a JPEG cut in its header", lambda: whole("JPEG")[:700], "truncated"),
    ("a JPEG cut at 60 %", lambda: whole("JPEG")[: len(whole("JPEG")) * 6 // 10], "truncated"),
    ("a JPEG without its last byte", lambda: whole("JPEG")[:-1], "truncated"),
    ("a PNG cut in half", lambda: whole("PNG")[: len(whole("PNG")) // 2], "truncated"),
    ("a WebP cut in half", lambda: whole("WEBP")[: len(whole("WEBP")) // 2], "truncated"),
    ("a HEIC cut in half", lambda: whole("HEIF")[: len(whole("HEIF")) // 2], "truncated"),
    ("a PNG bomb of 100 megapixels", png_bomb, "too_many_pixels"),
    ("a PNG bomb of 3 600 megapixels", lambda: png_bomb(60_000, 60_000), "too_many_pixels"),
    ("a PNG with a text bomb", text_bomb, "damaged"),
    ("a ZIP behind a JPEG", lambda: zip_behind(whole("JPEG")), None),
    ("a PNG with a broken stream", lambda: whole("PNG")[:100] + bytes(100) + whole("PNG")[200:], "damaged"),
]
