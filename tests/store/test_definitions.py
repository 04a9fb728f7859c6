"""Definitions are kept under their digest, and never served as something else."""

import hashlib

from inspect_app.entry.base64url import encode
from inspect_app.store.definitions import DefinitionArchive

DATA = b'{"id":"walk"}'
DIGEST = encode(hashlib.sha256(DATA).digest())


def test_what_is_kept_is_read_back_to_the_byte_also_later(tmp_path):
    DefinitionArchive(tmp_path).keep({DIGEST: DATA})
    later = DefinitionArchive(tmp_path)
    later.keep({})
    assert later.read(DIGEST) == DATA
    assert [file.name for file in tmp_path.iterdir()] == [f"{DIGEST}.json"]


def test_what_is_not_there_or_no_name_is_nothing(tmp_path):
    archive = DefinitionArchive(tmp_path / "definitions")
    (tmp_path / "secret.json").write_bytes(b"{}")
    for digest in (DIGEST, "", "../secret", "/etc/passwd", "A" * 42, "\0"):
        assert archive.read(digest) is None


def test_a_damaged_file_is_not_served_and_is_made_good_at_the_next_start(tmp_path):
    DefinitionArchive(tmp_path).keep({DIGEST: DATA})
    (tmp_path / f"{DIGEST}.json").write_bytes(b'{"id":"wall"}')
    archive = DefinitionArchive(tmp_path)
    assert archive.read(DIGEST) is None
    archive.keep({DIGEST: DATA})
    assert archive.read(DIGEST) == DATA
