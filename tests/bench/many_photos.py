"""The contents of a report with as many photos as there are files."""

import hashlib
from pathlib import Path
from typing import Any

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
