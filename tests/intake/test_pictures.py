"""Facts and small copies of pictures, whatever the bytes are."""

import io
import random

import pytest
from PIL import Image

from inspect_app.intake.pictures import Undecodable, facts, shrink
from tests.intake.hostile_pictures import COMMENT, HOSTILE, drawing, encoded, phone_jpeg, zip_behind

KINDS = {"JPEG": "image/jpeg", "PNG": "image/png", "WEBP": "image/webp", "HEIF": "image/heic"}


def test_the_facts_of_a_phone_photo_are_what_its_header_says():
    assert facts(phone_jpeg(orientation=6)) == {
        "type": "image/jpeg", "width": 2400, "height": 1800, "orientation": 6,
        "times": {"DateTime": "2026:11:25 16:40:05", "DateTimeOriginal": "2026:11:25 16:40:05",
                  "OffsetTimeOriginal": "-05:00", "SubSecTimeOriginal": "120"},
        "place": "present", "after_end": 0, "undecodable": None,
    }  # fmt: skip


def test_a_photo_without_place_or_offset_gets_none_invented(tmp_path):
    path = tmp_path / "photo.jpg"
    path.write_bytes(encoded(image=drawing(64, 64)))
    known = facts(path)
    assert known["place"] == "absent" and known["times"] == {} and known["orientation"] is None


@pytest.mark.parametrize("kind", KINDS)
def test_each_format_a_phone_hands_over_is_read_and_its_end_is_found(kind):
    data = encoded(kind, drawing(640, 480))
    known = facts(data)
    assert (known["type"], known["width"], known["height"]) == (KINDS[kind], 640, 480)
    assert known["after_end"] == 0 and known["undecodable"] is None


@pytest.mark.parametrize("kind", KINDS)
def test_a_zip_behind_the_picture_is_counted_to_the_byte_and_the_picture_still_drawn(kind):
    data = encoded(kind, drawing(640, 480))
    assert facts(zip_behind(data))["after_end"] == len(zip_behind(data)) - len(data)
    assert isinstance(shrink(zip_behind(data)), dict)


@pytest.mark.parametrize(("name", "make", "reason"), HOSTILE, ids=[name for name, _, _ in HOSTILE])
def test_hostile_pictures_become_a_value_with_a_reason(name, make, reason):
    data = make()
    copies = shrink(data)
    if reason is None:
        assert isinstance(copies, dict)
    else:
        assert copies == Undecodable(reason)
    if name != "a PNG with a broken stream":  # only decoding finds that
        assert facts(data)["undecodable"] == reason


def test_a_jpeg_cut_anywhere_is_never_drawn_as_if_it_were_whole():
    data = encoded(image=drawing(120, 90))
    for length in range(len(data)):
        assert isinstance(shrink(data[:length]), Undecodable), length
        assert facts(data[:length])["undecodable"] is not None, length


def test_a_picture_with_any_byte_changed_never_raises():
    luck = random.Random(5)
    for kind in KINDS:
        data = encoded(kind, drawing(120, 90), **({"exif": b""} if kind == "PNG" else {}))
        for _ in range(150):
            at = luck.randrange(len(data))
            changed = data[:at] + bytes([data[at] ^ luck.randrange(1, 256)]) + data[at + 1 :]
            assert isinstance(shrink(changed), dict | Undecodable)
            assert facts(changed).keys() == facts(data).keys()


def test_copies_have_the_asked_sizes_and_a_small_picture_is_not_enlarged():
    sizes = {size: _image(data).size for size, data in shrink(phone_jpeg()).items()}
    assert sizes == {1600: (1600, 1200), 320: (320, 240)}
    sizes = {size: _image(data).size for size, data in shrink(encoded(image=drawing(400, 300))).items()}
    assert sizes == {1600: (400, 300), 320: (320, 240)}


@pytest.mark.parametrize("orientation", range(1, 9))
def test_copies_stand_upright_whatever_way_the_phone_was_held(orientation):
    turned = {
        1: [], 2: ["FLIP_LEFT_RIGHT"], 3: ["ROTATE_180"], 4: ["FLIP_TOP_BOTTOM"], 5: ["TRANSPOSE"],
        6: ["ROTATE_90"], 7: ["TRANSVERSE"], 8: ["ROTATE_270"],
    }[orientation]  # fmt: skip
    stored = drawing(1200, 900)
    for step in turned:
        stored = stored.transpose(Image.Transpose[step])
    copy = _image(shrink(phone_jpeg(orientation, image=stored))[320])
    assert copy.size == (320, 240)
    red, green, blue = copy.getpixel((20, 15))
    assert red > 230 and green < 40 and blue < 40


def test_a_copy_carries_nothing_of_the_original_but_its_picture():
    photo = phone_jpeg(orientation=6)
    for data in shrink(photo).values():
        copy = _image(data)
        assert dict(copy.getexif()) == {} and "comment" not in copy.info and "xmp" not in copy.info
        assert b"Exif" not in data and COMMENT not in data and b"Invented" not in data


def test_a_wide_photo_keeps_its_shape():
    assert _image(shrink(encoded(image=drawing(6400, 1600)))[1600]).size == (1600, 400)


def test_transparent_parts_become_white_and_grey_and_ink_colours_become_rgb():
    clear = Image.new("RGBA", (64, 64), (0, 0, 0, 0))
    assert _image(shrink(encoded("PNG", clear))[320]).getpixel((5, 5)) == (255, 255, 255)
    for mode in ("L", "LA", "P", "1"):
        assert _image(shrink(encoded("PNG", drawing(64, 64).convert("L").convert(mode)))[320]).mode == "RGB"
    assert _image(shrink(encoded(image=drawing(64, 64).convert("CMYK")))[320]).mode == "RGB"


def _image(data):
    image = Image.open(io.BytesIO(data))
    image.load()
    return image
