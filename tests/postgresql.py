"""A real PostgreSQL server on a temporary folder, for the tests that need one."""

import os
import pwd
import shutil
import signal
import subprocess
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import psycopg


class NotHere(Exception):
    """Why no server could be started, in plain words."""


def programs() -> Path:
    """The folder with ``postgres`` and ``initdb``, the newest first."""
    found = [Path(name).parent for name in (shutil.which("initdb"),) if name]
    found += sorted(Path("/usr/lib/postgresql").glob("*/bin"), key=lambda p: int(p.parent.name), reverse=True)
    for folder in found:
        if (folder / "postgres").exists() and (folder / "initdb").exists():
            return folder
    raise NotHere("there is no PostgreSQL server on this machine")


@contextmanager
def running() -> Iterator[str]:
    """The folder of the socket of a server that runs until the end of the block."""
    folder = Path(tempfile.mkdtemp(prefix="seamwalk-pg-"))
    try:
        with open(folder / "log", "wb") as log:
            yield from _serve(
                programs(), folder, {"stdout": log, "stderr": log, "cwd": folder, **_unprivileged()}
            )
    finally:
        shutil.rmtree(folder, ignore_errors=True)


def _serve(bins: Path, folder: Path, options: dict) -> Iterator[str]:
    if "user" in options:
        os.chown(folder, options["user"], options["group"])
    data = str(folder / "data")
    init = [bins / "initdb", "-D", data, "-U", "app", "-A", "trust", "--no-sync", "-E", "UTF8"]
    if subprocess.run([*init, "--locale=C"], **options).returncode:
        raise NotHere(f"initdb failed: {(folder / 'log').read_text()[-300:]}")
    # fsync stays on: what is tested here is the order of commits, as production makes them.
    server = subprocess.Popen(
        [bins / "postgres", "-D", data, "-k", str(folder), "-c", "listen_addresses="], **options
    )
    try:
        _wait(folder, server)
        yield str(folder)
    finally:
        server.send_signal(signal.SIGQUIT)  # at once: what it would still write to the disk is thrown away next
        server.wait(60)


def new_database(socket: str, name: str, like: str = "template1") -> str:
    """Create a database, empty or as another is; its URL as people write it."""
    with psycopg.connect(host=socket, user="app", dbname="postgres", autocommit=True) as connection:
        connection.execute(f'CREATE DATABASE "{name}" TEMPLATE "{like}"')  # type: ignore[call-overload]
    return f"postgresql://app@/{name}?host={socket}"


def _unprivileged() -> dict:
    """``postgres`` refuses to run as root: then somebody who may do nothing runs it."""
    if os.getuid() != 0:
        return {}
    for name in ("postgres", "nobody"):
        try:
            entry = pwd.getpwnam(name)
        except KeyError:
            continue
        return {"user": entry.pw_uid, "group": entry.pw_gid, "extra_groups": []}
    raise NotHere("running as root, and there is no other user to run PostgreSQL as")


def _wait(folder: Path, server: subprocess.Popen) -> None:
    for _ in range(200):
        if server.poll() is not None:
            raise NotHere(f"postgres ended at once: {(folder / 'log').read_text()[-300:]}")
        try:
            psycopg.connect(host=str(folder), user="app", dbname="postgres").close()
            return
        except psycopg.OperationalError:
            time.sleep(0.05)
    raise NotHere("postgres did not answer within 10 s")
