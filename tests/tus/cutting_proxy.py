"""A TCP proxy that breaks connections where a test says, counting the bytes of a whole conversation."""

import contextlib
import socket
import struct
import threading
import time
from collections.abc import Callable

REQUESTS, RESPONSES = 0, 1
WAYS = ("reset", "close", "stall", "silence")


class CuttingProxy:
    """Forwards to a port. ``cut_after(direction, n, way)`` breaks, once, the connection on which the n-th byte of
    that direction since then has just been passed on: ``reset``, ``close`` it in order, ``stall`` for ``pause``
    seconds, or let it fall into ``silence``: nothing more passes, and nobody is told. ``cut_each(n)`` resets all
    connections after every n bytes of both directions together; ``frozen`` lets all connections fall silent, and those
    that are made meanwhile. ``on_cut`` is called at the moment of a break.
    ``buffering``: whole requests are read before a byte of them goes on, as nginx does by default."""

    def __init__(self, port: int, buffering: bool = False, pause: float = 0.2) -> None:
        self.upstream, self.buffering, self.pause = port, buffering, pause
        self.on_cut: Callable[[], None] = lambda: None
        self._lock = threading.Lock()
        self._left: list[int | None] = [None, None]
        self._way = "reset"
        self._each: int | None = None
        self._open: set[Connection] = set()
        self.frozen = False
        self.passed = [0, 0]
        self.cuts = 0
        self._listener = socket.create_server(("127.0.0.1", 0))
        self.port = self._listener.getsockname()[1]
        threading.Thread(target=self._accept, daemon=True).start()

    def cut_after(self, direction: int, count: int, way: str = "reset") -> None:
        with self._lock:
            self._left, self._way = [None, None], way
            self._left[direction] = count
            self.passed = [0, 0]

    def cut_each(self, count: int | None) -> None:
        with self._lock:
            self._each, self.passed = count, [0, 0]

    def close(self) -> None:
        self._listener.close()
        for one in list(self._open):
            one.reset()

    def _accept(self) -> None:
        while True:
            try:
                client, _ = self._listener.accept()
            except OSError:
                return
            try:
                server = socket.create_connection(("127.0.0.1", self.upstream), 5)
            except OSError:
                reset(client)
                continue
            server.settimeout(None)
            one = Connection(client, server)
            self._open.add(one)
            for direction in (REQUESTS, RESPONSES):
                threading.Thread(target=self._pump, args=(direction, one), daemon=True).start()

    def _pump(self, direction: int, one: "Connection") -> None:
        source, target = (one.client, one.server) if direction == REQUESTS else (one.server, one.client)
        whole = whole_requests if self.buffering and direction == REQUESTS else pieces
        with contextlib.suppress(OSError):
            for data in whole(source):
                passing, way = self._taken(direction, data)
                one.silent = one.silent or self.frozen
                if not one.silent:
                    target.sendall(passing)
                if way and self._broken(one, way):
                    return
                if way == "stall":
                    target.sendall(data[len(passing) :])
        with contextlib.suppress(OSError):
            # In silence the other side never learns that this one has left.
            target.shutdown(socket.SHUT_WR) if not one.silent else one.reset()
        self._open.discard(one)

    def _taken(self, direction: int, data: bytes) -> tuple[bytes, str]:
        """What of it still passes, and how the connection breaks after that, if it does."""
        with self._lock:
            left, way = self._left[direction], ""
            if left is not None and len(data) >= left:
                data, self._left[direction], way = data[:left], None, self._way
            elif left is not None:
                self._left[direction] = left - len(data)
            before = sum(self.passed)
            self.passed[direction] += len(data)
            if self._each and before // self._each < sum(self.passed) // self._each:
                way = "all"
            return data, way

    def _broken(self, one: "Connection", way: str) -> bool:
        """Whether that was the end of this direction."""
        self.cuts += 1
        self.on_cut()
        match way:
            case "stall":
                time.sleep(self.pause)
            case "silence":
                one.silent = True
            case "all":
                for each in list(self._open):
                    each.reset()
            case "close":
                one.close()
            case _:
                one.reset()
        if way not in ("stall", "silence"):
            self._open.discard(one)
        return way not in ("stall", "silence")


class Connection:
    def __init__(self, client: socket.socket, server: socket.socket) -> None:
        self.client, self.server, self.silent = client, server, False

    def reset(self) -> None:
        reset(self.client)
        reset(self.server)

    def close(self) -> None:
        for end in (self.client, self.server):
            with contextlib.suppress(OSError):
                end.shutdown(socket.SHUT_RDWR)
            end.close()


def reset(connection: socket.socket) -> None:
    with contextlib.suppress(OSError):
        # Linger of zero: the other side sees a reset, as from a network that went away.
        connection.setsockopt(socket.SOL_SOCKET, socket.SO_LINGER, struct.pack("ii", 1, 0))
        connection.shutdown(socket.SHUT_RDWR)
    connection.close()


def pieces(source: socket.socket):
    while data := source.recv(65536):
        yield data


def whole_requests(source: socket.socket):
    """Requests with a declared length, or none, each as one piece."""
    held = b""
    for data in pieces(source):
        held += data
        while b"\r\n\r\n" in held:
            head, _, _ = held.partition(b"\r\n\r\n")
            sizes = [line.split(b":")[1] for line in head.split(b"\r\n") if line.lower().startswith(b"content-length:")]
            end = len(head) + 4 + int(sizes[0] if sizes else 0)
            if len(held) < end:
                break
            yield held[:end]
            held = held[end:]
