"""The demonstration's pictures: what is written on them stays where it is written."""

import io
from datetime import UTC, datetime

import pytest
from PIL import Image, ImageChops

from inspect_app.demo import picture

TAKEN = datetime(2026, 11, 25, 17, 40, tzinfo=UTC)
BELOW_TITLE = (0, 135, *picture.SIZE)
CARD = (180, 560, 1240, 900)


def drawn(tag):
    with Image.open(io.BytesIO(picture.panel(tag, TAKEN))) as image:
        return image.convert("L")


@pytest.mark.parametrize("tag", ["Yard slope, panel 40 (fasteners_per_clip)", "Quay slope, panel 31 " * 9, "w" * 70])
def test_a_label_s_text_stays_on_its_label(tag):
    apart = ImageChops.difference(drawn(tag), drawn(" ")).point(lambda level: 255 if level > 60 else 0)
    left, top, right, bottom = apart.crop(BELOW_TITLE).getbbox()
    assert CARD[0] < left and right < CARD[2]
    assert CARD[1] < top + BELOW_TITLE[1] and bottom + BELOW_TITLE[1] < CARD[3]
    assert apart.getbbox()[2] <= picture.SIZE[0] - 60
