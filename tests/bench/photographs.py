"""Photographs as a phone hands them over: twelve megapixels and some four megabytes each, every one of other bytes.

Noise over slopes of light, so that they are as dear to decode as a real one; not real, so only ratios mean anything.
"""

import io
from pathlib import Path

from PIL import Image

from inspect_app.intake.pictures import shrink

SIZE = (4032, 3024)
KINDS = 12  # pictures that are made; each serves again with another comment, which changes its bytes and its hash
QUALITY = 92


def photographs(folder: Path, count: int) -> list[Path]:
    """``count`` files in ``folder``."""
    kinds = [_picture(n) for n in range(min(KINDS, count))]
    made = []
    for n in range(count):
        file = folder / f"{n:04d}.jpg"
        file.write_bytes(_with_comment(kinds[n % len(kinds)], f"invented, number {n}"))
        made.append(file)
    return made


def prepared(originals: list[Path], folder: Path) -> list[Path]:
    """The upright copies of 1600 pixels that a report draws."""
    made = []
    folder.mkdir(exist_ok=True)
    for original in originals:
        found = shrink(original, (1600,))
        assert isinstance(found, dict), found
        file = folder / original.name
        file.write_bytes(found[1600])
        made.append(file)
    return made


def _picture(n: int) -> bytes:
    light = Image.linear_gradient("L").resize(SIZE).rotate(30 * n)
    grain = [Image.effect_noise((SIZE[0] // 2, SIZE[1] // 2), 22 + n).resize(SIZE) for _ in range(3)]
    picture = Image.merge("RGB", [Image.blend(light, one, 0.5) for one in grain])
    out = io.BytesIO()
    picture.save(out, "JPEG", quality=QUALITY)
    return out.getvalue()


def _with_comment(jpeg: bytes, text: str) -> bytes:
    """A comment segment behind the start of the image (ITU-T T.81, B.2.4.5)."""
    data = text.encode("ascii")
    return jpeg[:2] + b"\xff\xfe" + (len(data) + 2).to_bytes(2, "big") + data + jpeg[2:]
