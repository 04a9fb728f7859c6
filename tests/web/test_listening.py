"""The server can be stopped from another thread, and then nothing of it is left."""

import socket
import threading

import pytest
from flask import Flask

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
