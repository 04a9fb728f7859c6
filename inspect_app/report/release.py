"""Which release made a report: digests of what decides its words and of what draws its pages.

A version alone would call two builds of one version the same; then an honest report, made before a change, would be
held to differ from itself. These digests are of the files that do the work, and of the libraries below them.
"""

import hashlib
import sys
import zlib
from collections.abc import Iterable
from functools import cache
from importlib.metadata import version
from pathlib import Path

HERE = Path(__file__).resolve().parent
FONTS = ("DejaVuSans.ttf", "DejaVuSans-Bold.ttf")


@cache
def release(words: Path, fonts: Path) -> dict[str, str]:
    """``{"version", "contents", "pages"}``: SHA-256 in hexadecimal of the code of ``report_contents`` and all below it,
    and of the pages', with the texts in ``words``, the ``fonts``, ReportLab and the library that packs streams (another
    one packs the same page into other bytes)."""
    inside = HERE.parent
    below = [file for name in ("rules", "record", "evidence") for file in sorted((inside / name).rglob("*.py"))]
    contents = _digest([*below, *sorted(HERE.glob("*.py"))])
    drawn = [*sorted((HERE / "pages").glob("*.py")), *sorted(words.glob("*.json")), *(fonts / name for name in FONTS)]
    with_what = f"{version('reportlab')} {zlib.ZLIB_RUNTIME_VERSION} {sys.version_info[:2]}"
    return {"version": version("seamwalk"), "contents": contents, "pages": _digest(drawn, with_what + contents)}


def _digest(files: Iterable[Path], more: str = "") -> str:
    hasher = hashlib.sha256(more.encode())
    for file in files:
        data = file.read_bytes()
        hasher.update(f"{file.name} {len(data)}\n".encode() + data)
    return hasher.hexdigest()
