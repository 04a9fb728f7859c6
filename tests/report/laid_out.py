"""Lay the sample out as a test needs it, and read it back with tools that are not ours."""

import io
import subprocess
from collections.abc import Callable
from pathlib import Path
from typing import Any

from inspect_app.report.contents import report_contents
from inspect_app.report.pages import write_pages
from inspect_app.words import Words
from tests.report.sample import DEFINITIONS, OPTIONS, PEOPLE, log, photos, record

STATIC = Path(__file__).parents[2] / "static"
FONTS = STATIC / "vendor"
WORDS = Words(STATIC / "words")


def sample_contents(rec: dict[str, Any] | None = None, held: dict[str, Any] | None = None, **options: Any) -> Any:
    return report_contents(
        record() if rec is None else rec, PEOPLE, DEFINITIONS, log(), photos() if held is None else held,
        OPTIONS | options,
    )  # fmt: skip


def lay_out(contents: Any, find: Callable[[str], Path | None] = lambda _: None) -> tuple[bytes, dict[str, Any]]:
    out = io.BytesIO()
    laid = write_pages(contents, WORDS, FONTS, find, out)
    return out.getvalue(), laid


def texts_of(pdf: bytes, folder: Path) -> list[str]:
    """The text of each page, as poppler reads it, in the order in which it is drawn: head and foot come first."""
    file = folder / "read.pdf"
    file.write_bytes(pdf)
    ran = subprocess.run(["pdftotext", "-raw", str(file), "-"], capture_output=True, check=True)
    return ran.stdout.decode("utf-8", "replace").split("\f")[:-1]
