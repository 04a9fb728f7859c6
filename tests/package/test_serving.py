"""Downloads through the real server: many slow readers hold up nobody, and a file that is gone never looks whole."""

import socket
import threading
from collections.abc import Iterator
from hashlib import sha256
from http.client import HTTPConnection, IncompleteRead
from typing import Any

import pytest

from inspect_app.web.listening import THREADS, listening, stop
from tests.upkeep.filled import Filled

LARGE = 24 * 1024 * 1024  # more than the server takes off a thread's hands at once


@pytest.fixture(scope="module")
def served(still: Filled) -> Iterator[Any]:
    photo = b"\xff\xd8\xff" + bytes(LARGE)
    name = sha256(photo).hexdigest()
    with still.office.app.app_context():
        still.office.parts.vault.put([photo], name)
        still.office.parts.log.receive_photo(still.job, name, len(photo), "image/jpeg")
    server = listening(still.office.app, "127.0.0.1", 0)
    thread = threading.Thread(target=server.run, daemon=True)
    thread.start()
    yield server
    stop(server)
    thread.join(10)


def address(still: Filled) -> str:
    reply = still.chief.client.get(f"/api/jobs/{still.job}/package", headers=still.chief.bearer)
    return str(reply.json["url"])


def asked(served: Any, path: str) -> HTTPConnection:
    connection = HTTPConnection("127.0.0.1", served.effective_port, timeout=8)
    connection.request("GET", path)
    return connection


def test_more_slow_readers_than_threads_hold_up_nobody_else(still, served):
    path, slow = address(still), list[socket.socket]()
    try:
        for _ in range(THREADS + 2):
            one = socket.create_connection(("127.0.0.1", served.effective_port), 8)
            slow.append(one)
            one.setsockopt(socket.SOL_SOCKET, socket.SO_RCVBUF, 4096)
            one.sendall(f"GET {path} HTTP/1.1\r\nHost: here\r\n\r\n".encode())
            assert one.recv(9) == b"HTTP/1.1 "  # it has begun, and is read no further
        assert asked(served, "/api/server").getresponse().status == 200
    finally:
        for one in slow:
            one.close()


def test_the_whole_comes_over_as_it_was_told(still, served):
    reply = asked(served, address(still)).getresponse()
    assert len(reply.read()) == int(reply.headers["Content-Length"]) > LARGE


def test_a_photo_that_goes_meanwhile_breaks_the_download_off(still, served):
    path, vault = address(still), still.office.parts.vault
    (large,) = [one for one in vault.names() if vault.path(one).stat().st_size > LARGE]
    reply = asked(served, path).getresponse()  # the server is some megabytes ahead at most
    hidden = vault.path(large).rename(vault.folder / "hidden")
    again = asked(served, path).getresponse()
    assert again.status == 200 and int(again.headers["Content-Length"]) < LARGE  # by now it is named as missing
    again.read()
    hidden.write_bytes(b"")
    with pytest.raises(IncompleteRead):
        reply.read()
