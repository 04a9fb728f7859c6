"""The invented photographs of the sample, and what the vault would say of them."""

import hashlib
import io
from pathlib import Path
from typing import Any

from PIL import Image, ImageDraw

from tests.report.sample_ground import ZONE


def picture(tag: str, size: tuple[int, int] = (800, 600)) -> bytes:
    image = Image.new("RGB", size, "#9fb0b8")
    draw = ImageDraw.Draw(image)
    draw.rectangle((0, size[1] * 0.3, size[0], size[1] * 0.7), fill="#c4d0d6")
    draw.rounded_rectangle((size[0] * 0.3, size[1] * 0.45, size[0] * 0.7, size[1] * 0.55), 30, fill="#39454c")
    draw.text((20, 20), f"INVENTED {tag}", fill="black", font_size=40)
    out = io.BytesIO()
    image.save(out, "JPEG", quality=85)
    return out.getvalue()


PICTURES = {
    hashlib.sha256(data).hexdigest(): data
    for data in (
        picture("where 3"),
        picture("what 3"),
        picture("where 1", (600, 800)),
        picture("what 1"),
        picture("clip"),
    )
}
WHERE, WHAT, WHERE_1, WHAT_1, TAB = PICTURES
LOST = "f" * 64


def write_pictures(folder: Path) -> dict[str, Path]:
    for name, data in PICTURES.items():
        (folder / f"{name}.jpg").write_bytes(data)
    return {name: folder / f"{name}.jpg" for name in PICTURES}


def photos() -> dict[str, Any]:
    held = {
        name: {"held": True, "path": name, "copy": name, "size": len(data), "width": 800, "height": 600,
               "undecodable": None, "exif_time": "2026:11:25 16:20:05", "exif_offset": ZONE}
        for name, data in PICTURES.items()
    }  # fmt: skip
    held[WHAT] |= {"exif_time": "2026:11:25 15:02:11", "exif_offset": None}
    return held | {LOST: {"held": False, "path": None}}
