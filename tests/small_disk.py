"""A real disk that is soon full: a file system in memory, of so many bytes, mounted where a test wants it."""

import contextlib
import errno
import subprocess
from collections.abc import Iterator
from pathlib import Path

import pytest


@contextlib.contextmanager
def small_disk(folder: Path, size: int) -> Iterator[Path]:
    """``folder`` with ``size`` bytes of room. Skips, saying why, where this account may mount nothing."""
    folder.mkdir(parents=True)
    words = ["mount", "-t", "tmpfs", "-o", f"size={size},mode=700", "tmpfs", str(folder)]
    try:
        done = subprocess.run(words, capture_output=True, text=True, check=False)
    except FileNotFoundError:
        pytest.skip("NOT RUN on a really full disk: there is no mount command here")
    if done.returncode:
        pytest.skip(f"NOT RUN on a really full disk: {done.stderr.strip()}")
    try:
        yield folder
    finally:
        subprocess.run(["umount", "--lazy", str(folder)], check=True)


def fill(file: Path) -> int:
    """Another program takes all the room that is left. Returns how many bytes it got."""
    taken = 0
    with file.open("ab", buffering=0) as taking:
        for step in (65536, 4096, 1):
            with contextlib.suppress(OSError):
                while taking.write(bytes(step)) == step:
                    taken += step
    with pytest.raises(OSError) as full:
        file.with_suffix(".more").write_bytes(b"1")
    assert full.value.errno == errno.ENOSPC
    return taken
