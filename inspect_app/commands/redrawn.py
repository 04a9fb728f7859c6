"""The means by which pages and printed copies are made again: the very ones that the server makes them with."""

from collections.abc import Callable
from pathlib import Path
from typing import Any, BinaryIO

from inspect_app.again.verify import Means
from inspect_app.intake.pictures import facts, shrink
from inspect_app.report.pages import write_pages
from inspect_app.settings import shipped
from inspect_app.words import Words


def means() -> Means:
    """Of this release."""
    words, fonts = Words(shipped("static") / "words"), shipped("static") / "vendor"

    def draw(contents: dict[str, Any], find: Callable[[str], Path | None], out: BinaryIO) -> dict[str, Any]:
        return write_pages(contents, words, fonts, find, out)

    return Means(draw, facts, shrink)
