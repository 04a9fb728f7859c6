"""The contents of a report with as many photos as there are files."""

import hashlib
import json
from pathlib import Path
from typing import Any

from tests.bench.told import TOLD
from tests.report.laid_out import sample_contents
from tests.report.sample import photos, record
from tests.report.sample_pictures import WHAT


def contents_of(pictures: list[Path]) -> tuple[dict[str, Any], dict[str, Path]]:
    """``(contents, {sha256: file})``. The photos hang on no answer, so that every one of them is drawn."""
    rec, held = record(), photos()
    files = {hashlib.sha256(one.name.encode()).hexdigest(): one for one in pictures}
    for name in files:
        rec["photos"][name] = rec["photos"][WHAT] | {"id": name, "sha256": name, "answer": None}
        held[name] = held[WHAT] | {"copy": name}
    return sample_contents(rec, held), files


def write_contents(pictures: list[Path]) -> None:
    """Beside the pictures, so that the process which draws them holds no more than a report's."""
    contents, files = contents_of(pictures)
    names = {sha256: file.name for sha256, file in files.items()}
    (pictures[0].parent / TOLD).write_text(json.dumps([contents, names]), "utf-8")
