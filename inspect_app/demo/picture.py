"""Draw the demonstration's photographs: invented, said so on each, with EXIF as a phone writes it."""

import io
from datetime import datetime

from PIL import Image, ImageDraw, ImageFont

SIZE = (2016, 1512)
SMALL = (1008, 756)
PER_INCH = 600  # pixels to the inch on the close-ups
STEEL, SHADE, DARK, CARD, INK = "#9fb0b8", "#8798a1", "#39454c", "#e9e2c9", "#1d2327"


def flange(offset: float, head: float, tag: str, taken: datetime) -> bytes:
    """A nail flange square on, ridge at the left, with its slot (1 in), a screw ``offset`` inches toward the
    ridge from the slot's middle under a head of ``head`` inches, and a rule lying in the flange's plane."""
    image, draw = _canvas(SHADE)
    draw.rectangle((0, 420, SIZE[0], 1120), fill=STEEL)
    middle, line = SIZE[0] // 2, 760
    half = PER_INCH // 2
    draw.rounded_rectangle((middle - half, line - 60, middle + half, line + 60), 60, fill=DARK)
    x = middle - round(offset * PER_INCH)
    radius = round(head * PER_INCH / 2)
    draw.ellipse((x - radius, line - radius, x + radius, line + radius), fill="#c9d2d6", outline=INK, width=6)
    draw.line((x - 50, line, x + 50, line), fill=INK, width=14)
    draw.line((x, line - 50, x, line + 50), fill=INK, width=14)
    _rule(draw, 1180)
    return _jpeg(image, draw, tag, taken)


def clip(offset: float, tag: str, taken: datetime) -> bytes:
    """A two-piece clip from the side, ridge at the left, its tab ``offset`` inches toward the ridge."""
    image, draw = _canvas(STEEL)
    middle = SIZE[0] // 2
    draw.rectangle((middle - 700, 980, middle + 700, 1100), fill=DARK)
    draw.rectangle((middle - 600, 900, middle + 600, 980), fill=SHADE, outline=INK, width=6)
    x = middle - round(offset * PER_INCH / 2)
    draw.rectangle((x - 90, 460, x + 90, 960), fill="#c9d2d6", outline=INK, width=6)
    for screw in (-420, 420):
        draw.ellipse((middle + screw - 60, 910, middle + screw + 60, 1030), fill="#c9d2d6", outline=INK, width=6)
    _rule(draw, 1180)
    return _jpeg(image, draw, tag, taken)


def panel(tag: str, taken: datetime) -> bytes:
    """Where it is: ribs running to the ridge, the open leg, a tag, and an arrow to the ridge."""
    image, draw = _canvas("#c4d0d6")
    for x in range(0, SIZE[0], 260):
        draw.rectangle((x, 0, x + 26, SIZE[1]), fill=SHADE)
        draw.line((x + 26, 0, x + 26, SIZE[1]), fill=INK, width=4)
    draw.polygon(((1700, 160), (1640, 300), (1760, 300)), fill=INK)
    draw.rectangle((1685, 300, 1715, 620), fill=INK)
    draw.text((1560, 640), "TO THE RIDGE", fill=INK, font=ImageFont.load_default(52))
    draw.rectangle((180, 560, 1240, 900), fill=CARD, outline=INK, width=6)
    _write(draw, (220, 590, 1200, 870), tag, 80)
    return _jpeg(image, draw, tag, taken)


def label(lines: list[str], tag: str, taken: datetime) -> bytes:
    """A paper label on a coil's wrapping, one text a line."""
    image, draw = _canvas(SHADE)
    draw.rectangle((220, 260, SIZE[0] - 220, SIZE[1] - 160), fill=CARD, outline=INK, width=8)
    for at, text in enumerate(lines):
        top = 300 + at * 260
        _write(draw, (280, top, SIZE[0] - 280, top + 220), text, 120)
    return _jpeg(image, draw, tag, taken)


def smaller(data: bytes) -> bytes:
    """The same picture at half its width, its EXIF with it."""
    with Image.open(io.BytesIO(data)) as image:
        exif = image.getexif()
        out = io.BytesIO()
        image.resize(SMALL, Image.Resampling.BILINEAR, reducing_gap=2.0).save(out, "JPEG", quality=70, exif=exif)
    return out.getvalue()


def _canvas(ground: str) -> tuple[Image.Image, ImageDraw.ImageDraw]:
    image = Image.new("RGB", SIZE, ground)
    return image, ImageDraw.Draw(image)


def _rule(draw: ImageDraw.ImageDraw, top: int) -> None:
    draw.rectangle((120, top, SIZE[0] - 120, top + 200), fill=CARD, outline=INK, width=4)
    for sixteenth in range(47):
        x = 160 + round(sixteenth * PER_INCH / 16)
        long = 110 if sixteenth % 16 == 0 else 70 if sixteenth % 4 == 0 else 40
        draw.line((x, top, x, top + long), fill=INK, width=4)


def _write(draw: ImageDraw.ImageDraw, box: tuple[int, int, int, int], text: str, size: int) -> None:
    """The text inside the box, broken between words, as large as fits and no larger than ``size``."""
    left, top, right, bottom = box
    for points in range(size, 7, -4):
        font = ImageFont.load_default(points)
        lines = [""]
        for word in text.split():
            longer = f"{lines[-1]} {word}".strip()
            lines = [*lines[:-1], longer] if draw.textlength(longer, font) <= right - left else [*lines, word]
        shown = "\n".join(line for line in lines if line)
        extent = draw.textbbox((left, top), shown, font)
        if extent[2] <= right and extent[3] <= bottom:
            break
    draw.text((left, top), shown, fill=INK, font=font)


def _jpeg(image: Image.Image, draw: ImageDraw.ImageDraw, tag: str, taken: datetime) -> bytes:
    _write(draw, (60, 40, SIZE[0] - 60, 130), f"INVENTED PICTURE, {tag}", 64)
    exif = Image.Exif()
    exif[0x010F], exif[0x0110], exif[0x0112] = "Invented", "Demonstration phone", 1
    details = exif.get_ifd(0x8769)
    details[0x9003] = taken.strftime("%Y:%m:%d %H:%M:%S")
    offset = taken.strftime("%z")
    details[0x9011] = f"{offset[:3]}:{offset[3:]}"
    place = exif.get_ifd(0x8825)
    place[1], place[2] = "S", (35.0, 0.0, 0.0)  # open ocean: nobody's roof
    place[3], place[4] = "W", (125.0, 0.0, 0.0)
    out = io.BytesIO()
    image.save(out, "JPEG", quality=88, exif=exif)
    return out.getvalue()
