"""The server can be stopped from another thread, and then nothing of it is left."""

import socket
import threading

import pytest
from flask import Flask, request

from inspect_app.web.listening import listening, stop


@pytest.mark.filterwarnings("error::pytest.PytestUnhandledThreadExceptionWarning")
@pytest.mark.parametrize("connections", [0, 5])
def test_a_stopped_server_ends_its_thread_and_leaves_its_port_and_connections(connections: int) -> None:
    server = listening(Flask("empty"), "127.0.0.1", 0)
    port = server.effective_port
    thread = threading.Thread(target=server.run)
    thread.start()
    open_ones = [socket.create_connection(("127.0.0.1", port), 5) for _ in range(connections)]
    for one in open_ones:  # kept alive: answered, and still open
        one.sendall(b"GET / HTTP/1.1\r\nHost: here\r\n\r\n")
        assert one.recv(12) == b"HTTP/1.1 404"
    stop(server)
    thread.join(5)
    assert not thread.is_alive()
    for one in open_ones:
        while one.recv(4096):
            pass
        one.close()
    with pytest.raises(OSError, match="refused"):
        socket.create_connection(("127.0.0.1", port), 5)


@pytest.mark.parametrize(("told", "seen"), [("", b"127.0.0.1 False"), ("203.0.113.9", b"203.0.113.9 True")])
def test_a_proxy_on_the_same_machine_is_believed_who_asks_and_that_it_was_by_https(told: str, seen: bytes) -> None:
    app = Flask("empty")
    app.add_url_rule("/", "who", lambda: f"{request.remote_addr} {request.is_secure} {request.host}")
    server = listening(app, "127.0.0.1", 0)
    thread = threading.Thread(target=server.run)
    thread.start()
    headers = f"X-Forwarded-For: {told}\r\nX-Forwarded-Proto: https\r\n" if told else ""
    with socket.create_connection(("127.0.0.1", server.effective_port), 5) as one:
        one.sendall(f"GET / HTTP/1.0\r\nHost: roofs.example.com\r\n{headers}\r\n".encode())
        answer = b"".join(iter(lambda: one.recv(4096), b""))
    stop(server)
    thread.join(5)
    assert answer.endswith(seen + b" roofs.example.com")
