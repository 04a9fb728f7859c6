"""A TCP proxy that breaks connections where a test says, counting the bytes of a whole conversation."""

import contextlib
import socket
import struct
import threading
from collections.abc import Callable

REQUESTS, RESPONSES = 0, 1


class CuttingProxy:
    """Forwards to a port. ``cut_after(direction, n)`` resets, once, the connection on which the n-th byte of
    that direction since then has just been passed on. ``on_cut`` is called at that moment."""

    def __init__(self, port: int) -> None:
        self.upstream = port
        self.on_cut: Callable[[], None] = lambda: None
        self._lock = threading.Lock()
        self._left: list[int | None] = [None, None]
        self.passed = [0, 0]
        self.cuts = 0
        self._listener = socket.create_server(("127.0.0.1", 0))
        self.port = self._listener.getsockname()[1]
        threading.Thread(target=self._accept, daemon=True).start()

    def cut_after(self, direction: int, count: int) -> None:
        with self._lock:
            self._left = [None, None]
            self._left[direction] = count
            self.passed = [0, 0]

    def close(self) -> None:
        self._listener.close()

    def _accept(self) -> None:
        while True:
            try:
                client, _ = self._listener.accept()
            except OSError:
                return
            try:
                server = socket.create_connection(("127.0.0.1", self.upstream), 5)
            except OSError:
                _reset(client)
                continue
            for direction, (source, target) in enumerate(((client, server), (server, client))):
                threading.Thread(target=self._pump, args=(direction, source, target), daemon=True).start()

    def _pump(self, direction: int, source: socket.socket, target: socket.socket) -> None:
        with contextlib.suppress(OSError):
            while data := source.recv(65536):
                with self._lock:
                    left = self._left[direction]
                    cut = left is not None and len(data) >= left
                    if cut:
                        data, self._left[direction] = data[:left], None
                    elif left is not None:
                        self._left[direction] = left - len(data)
                    self.passed[direction] += len(data)
                target.sendall(data)
                if cut:
                    self.cuts += 1
                    self.on_cut()
                    _reset(source)
                    _reset(target)
                    return
        with contextlib.suppress(OSError):
            target.shutdown(socket.SHUT_WR)


def _reset(connection: socket.socket) -> None:
    with contextlib.suppress(OSError):
        # Linger of zero: the other side sees a reset, as from a network that went away.
        connection.setsockopt(socket.SOL_SOCKET, socket.SO_LINGER, struct.pack("ii", 1, 0))
        connection.shutdown(socket.SHUT_RDWR)
    connection.close()
