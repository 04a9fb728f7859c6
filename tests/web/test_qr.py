"""A QR code that we draw is read back by a decoder that is not ours, nor the encoder's."""

import re

import pytest
import zxingcpp
from PIL import Image, ImageDraw

from inspect_app.web.qr import drawn

LINK = "https://roof.example.org/#/invited/vJ2mZ0n7bq4wq1S0oV6cWlq9yQkP3m5xJtHn8aB2fGc"


def painted(code: dict, scale: int = 4) -> Image.Image:
    """The path as a picture, by its own commands: ``M x y h dx v 1 h -dx z``."""
    side = code["size"] * scale
    image = Image.new("L", (side, side), 255)
    pen = ImageDraw.Draw(image)
    runs = re.findall(r"M(\d+) (\d+)h(\d+)v1h-(\d+)z", code["path"])
    assert "".join(f"M{x} {y}h{w}v1h-{back}z" for x, y, w, back in runs) == code["path"]
    for x, y, wide, back in runs:
        assert wide == back
        left, top = int(x) * scale, int(y) * scale
        pen.rectangle((left, top, left + int(wide) * scale - 1, top + scale - 1), fill=0)
    return image


@pytest.mark.parametrize("text", [LINK, "https://1.example/", LINK.replace("roof", "tejado-ñ"), LINK + "x" * 400])
def test_another_decoder_reads_what_was_written(text):
    (read,) = zxingcpp.read_barcodes(painted(drawn(text)))
    assert read.text == text and read.format == zxingcpp.BarcodeFormat.QRCode


def test_it_is_read_with_a_tenth_of_it_covered_by_a_drop():
    image = painted(drawn(LINK))
    side = image.width
    ImageDraw.Draw(image).ellipse((side * 0.5, side * 0.5, side * 0.82, side * 0.82), fill=255)
    (read,) = zxingcpp.read_barcodes(image)
    assert read.text == LINK


def test_a_code_without_its_edge_of_white_is_not_what_we_draw():
    code = drawn(LINK)
    starts = [tuple(map(int, one)) for one in re.findall(r"M(\d+) (\d+)", code["path"])]
    assert min(x for x, _ in starts) == min(y for _, y in starts) == 4


def test_who_is_signed_in_has_a_code_drawn_and_nobody_else(office):
    _, chief = office.job()
    for text in (LINK, "🏠" * 300):
        reply = chief.client.post("/api/qr", json={"text": text}, headers=chief.bearer)
        (read,) = zxingcpp.read_barcodes(painted(reply.json))
        assert (reply.status_code, read.text) == (200, text)
    assert office.client().post("/api/qr", json={"text": LINK}).status_code == 401
    assert chief.client.post("/api/qr", json={"text": "x" * 301}, headers=chief.bearer).status_code == 400


def test_what_no_code_holds_is_our_own_mistake():
    with pytest.raises(RuntimeError, match="5000 characters"):
        drawn("x" * 5000)
