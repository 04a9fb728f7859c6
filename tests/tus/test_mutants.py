"""Photos gone wrong, and uploads whose headers did: what is whole is stored to the byte with its receipt, what cannot
be drawn says why, and the server never falls."""

import hashlib
import io
from collections import Counter
from functools import cache
from random import Random

import pytest
from PIL import Image

from inspect_app.entry.jws import verify
from inspect_app.entry.statement import parse_statement
from tests.intake.hostile_pictures import drawing, encoded, exif
from tests.intake.receiving import JOB
from tests.seed import chance
from tests.tus.plain_client import BYTES, checksum, metadata
from tests.tus.real_app import real_app

HEADER = 400  # bytes at the front that are changed most: sizes, tables, tags
EXTREMES = [b"\0", b"\xff", b"\xff\xff\xff\xff", b"\x7f\xff\xff\xff", b"\x80\0\0\0", b"\0\0\0\1"]
pytestmark = pytest.mark.filterwarnings("ignore::UserWarning:PIL", "ignore::PIL.Image.DecompressionBombWarning")
TYPES = {"image/jpeg", "image/png", "image/webp", "image/heic", "application/octet-stream"}


@cache
def pictures() -> list[bytes]:
    small = drawing(160, 120)
    return [
        encoded("JPEG", small, exif=exif(6)), encoded("JPEG", small, progressive=True), encoded("PNG", small),
        encoded("PNG", small.convert("P"), exif=exif(3)), encoded("HEIF", small, exif=exif(8).tobytes()),
        encoded("WEBP", small, exif=exif(5)),
    ]  # fmt: skip


def mutant(source: Random) -> bytes:
    """A picture of a phone with one to four things wrong, most of them in its header."""
    picture, other = source.sample(pictures(), 2)
    for _ in range(source.randrange(1, 5)):
        picture = _changed(picture, other, source) or b"\0"
    return picture


def _changed(picture: bytes, other: bytes, source: Random) -> bytes:
    at = source.randrange(min(HEADER, len(picture)) if source.random() < 0.8 else len(picture))
    extreme = source.choice(EXTREMES)
    return source.choice([
        lambda: picture[:at] + bytes([picture[at] ^ 1 << source.randrange(8)]) + picture[at + 1 :],
        lambda: picture[:at] + extreme + picture[at + len(extreme) :],
        lambda: picture[:at] + extreme + picture[at:],
        lambda: picture[:at] + picture[at + source.randrange(1, 40) :],
        lambda: picture[: source.randrange(1, len(picture) + 1)],
        lambda: picture[:at] + other[at:],
        lambda: picture + other[: source.randrange(len(other))],
    ])()  # fmt: skip


class Desk:
    """The real app without a socket, and the foreman's phone."""

    def __init__(self, folder, tokens, source: Random) -> None:
        self.app = real_app(folder)
        self.client, self.chance, self.seen = self.app.test_client(), source, Counter()
        self.bearer = {"Authorization": f"Bearer {tokens['foreman']}"}
        self.server = self.client.get("/api/server").json["jwk"]

    def call(self, method, path, data=b"", **headers):
        sent = self.bearer | {"Tus-Resumable": "1.0.0"} | {name.replace("_", "-"): one for name, one in headers.items()}
        reply = self.client.open(path, method=method, data=data, headers=sent)
        assert reply.status_code < 500, (reply.status_code, reply.text, method, path, sent)
        if reply.status_code >= 400 and method != "HEAD":
            error = reply.json["error"]
            assert error["code"] and error["field"] and error["message"] and error["way_out"], error
        return reply

    def photo(self, picture: bytes) -> None:
        """Send it whole, fetch it back, and ask for its small copy."""
        name = hashlib.sha256(picture).hexdigest()
        sent = self.call("POST", "/api/photos", picture, Content_Type=BYTES, Upload_Length=str(len(picture)),
                         Upload_Metadata=metadata(picture), Upload_Checksum=checksum(picture))  # fmt: skip
        assert sent.status_code == 201, sent.text
        self.receipted(sent, name, len(picture))
        back = self.call("GET", f"/photos/{name}?job={JOB}")
        assert back.data == picture and back.mimetype in TYPES and back.headers["X-Content-Type-Options"] == "nosniff"
        copy = self.call("GET", f"/photos/{name}?job={JOB}&size=320")
        if copy.status_code == 200:
            drawn = Image.open(io.BytesIO(copy.data))
            drawn.load()
            assert drawn.format == "JPEG" and max(drawn.size) <= 320 and not drawn.getexif()
        self.seen["drawn" if copy.status_code == 200 else copy.json["error"]["code"]] += 1

    def receipted(self, reply, name: str, size: int) -> None:
        """The receipt in ``reply`` is the server's word for what lies in its vault now."""
        receipt = parse_statement(reply.headers["Seamwalk-Receipt"])
        verify(receipt, self.server)
        assert (receipt.payload["photo"], receipt.payload["size"], receipt.payload["job"]) == (name, size, JOB)
        assert hashlib.sha256(self.app.extensions["photos"].vault.path(name).read_bytes()).hexdigest() == name

    def headers(self) -> None:
        """An upload with one header wrong, then the right one: whatever the first did, the second gets through."""
        picture = self.chance.randbytes(self.chance.randrange(1, 3000))
        name = hashlib.sha256(picture).hexdigest()
        right = {"Content_Type": BYTES, "Upload_Length": str(len(picture)), "Upload_Metadata": metadata(picture),
                 "Upload_Checksum": checksum(picture), "Tus_Resumable": "1.0.0", "Upload_Offset": "0"}  # fmt: skip
        which = self.chance.choice(sorted(right))
        first = self.call("POST", "/api/photos", picture, **right | {which: self._spoiled(right[which])})
        self.seen[f"{which} {first.status_code}"] += 1
        if "Seamwalk-Receipt" in first.headers:
            self.receipted(first, name, len(picture))
        again = self.call("POST", "/api/photos", picture, **right)
        if "Seamwalk-Receipt" not in again.headers:  # what was begun without its bytes goes on where it stands
            offset = int(again.headers["Upload-Offset"])
            rest = right | {"Upload_Offset": str(offset), "Upload_Checksum": checksum(picture[offset:])}
            again = self.call("PATCH", again.headers["Location"], picture[offset:], **rest)
        self.receipted(again, name, len(picture))

    def _spoiled(self, value: str) -> str:
        at = self.chance.randrange(len(value))
        return self.chance.choice([
            lambda: value[:at] + chr(self.chance.randrange(32, 256)) + value[at + 1 :],
            lambda: value[:at], lambda: value + value, lambda: "", lambda: "-1", lambda: "9" * 40, lambda: "1e3",
            lambda: value[:at] + "," + value[at:], lambda: " ".join(value), lambda: "\xff" * 50,
        ])()  # fmt: skip


def test_photos_gone_wrong_are_stored_as_they_came_and_say_why_they_cannot_be_drawn(folder, tokens):
    desk = Desk(folder, tokens, chance("photos"))
    for _ in range(40):
        desk.photo(mutant(desk.chance))
    assert desk.seen["drawn"] > 3 and len(desk.seen) > 2, desk.seen


def test_an_upload_with_a_wrong_header_is_refused_in_words_and_never_bars_the_right_one(folder, tokens):
    desk = Desk(folder, tokens, chance("headers"))
    for _ in range(40):
        desk.headers()
    assert len({line.split()[1] for line in desk.seen}) > 2, desk.seen


@pytest.mark.soak
def test_six_thousand_photos_gone_wrong(folder, tokens):
    desk = Desk(folder, tokens, chance("many photos"))
    for _ in range(6000):
        desk.photo(mutant(desk.chance))
    print(f"photos gone wrong: {desk.seen.total()}, {dict(desk.seen.most_common())}")


@pytest.mark.soak
def test_five_thousand_uploads_with_a_wrong_header(folder, tokens):
    desk = Desk(folder, tokens, chance("many headers"))
    for _ in range(5000):
        desk.headers()
    print(f"uploads with a wrong header: {desk.seen.total()}, {dict(desk.seen.most_common())}")
