"""The server's key is made once, kept secret, and never replaced."""

import stat
import threading

import pytest

from inspect_app.store.server_key import kept_secret, server_key


def test_the_key_is_made_once_and_read_ever_after(tmp_path):
    file = tmp_path / "server.key"
    assert server_key(file).kid == server_key(file).kid
    assert [path.name for path in tmp_path.iterdir()] == ["server.key"]


def test_only_its_owner_can_read_it(tmp_path):
    file = tmp_path / "server.key"
    server_key(file)
    assert stat.S_IMODE(file.stat().st_mode) == 0o600


def test_a_key_file_that_cannot_be_read_is_never_replaced(tmp_path):
    file = tmp_path / "server.key"
    file.write_bytes(b"damaged")
    with pytest.raises(ValueError):
        server_key(file)
    assert file.read_bytes() == b"damaged"


def test_of_several_starts_at_once_all_get_the_same_secret(tmp_path):
    got, ready = [], threading.Barrier(8)

    def start(number):
        ready.wait()
        got.append(kept_secret(tmp_path / "secret", lambda: bytes([number]) * 32))

    threads = [threading.Thread(target=start, args=(number,)) for number in range(8)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert len(got) == 8 and len(set(got)) == 1
