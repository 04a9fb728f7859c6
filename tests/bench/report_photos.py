"""A report of five hundred photographs: its time beside tools that only embed or lay out the same pictures, its memory
as they grow in number. Each tool runs in a process of its own."""

import json
import subprocess
import sys
import tempfile
from pathlib import Path
from time import perf_counter
from typing import Any

from tests.bench.many_photos import write_contents
from tests.bench.measure import Row
from tests.bench.photographs import photographs, prepared

COUNTS, PASSES = (100, 300, 500), 3
MEGABYTE = 1_000_000


def rows() -> list[Row]:
    with tempfile.TemporaryDirectory() as folder:
        few, many = Path(folder) / "few", Path(folder) / "many"
        preparing = _pictures(Path(folder), many)
        memory = [_best("ours", _part(many, few, count))["peak"] for count in COUNTS]
        write_contents(sorted(many.glob("*.jpg")))
        most = {tool: _best(tool, many, PASSES) for tool in ("ours", "img2pdf", "fpdf2", "weasyprint")}
    own, plain = most["ours"], most["img2pdf"]
    count = COUNTS[-1]
    return [
        Row(f"a report of {count} photos", "the prepared pictures embedded plainly by img2pdf",
            own["seconds"] / plain["seconds"], 2, "img2pdf writes no word; ours is a whole report"),
        Row("the same with the pictures' preparing", "img2pdf with the same preparing",
            (preparing + own["seconds"]) / (preparing + plain["seconds"]), 1.2, "what a person waits for at most"),
        *(Row(f"a report of {count} photos", f"{tool}: the same pictures with two lines each",
              own["seconds"] / most[tool]["seconds"], 1, "ahead of what lays out by other means")
          for tool in ("fpdf2", "weasyprint")),
        *(Row(f"memory of a report of {one} photos, {peak / MEGABYTE:.0f} MB", "60 MB", peak / MEGABYTE / 60, 1,
              "flat: a small server makes the largest report") for one, peak in zip(COUNTS, memory, strict=True)),
        *(Row(f"memory of a report of {count} photos", tool, own["peak"] / most[tool]["peak"], 1, "ahead of each")
          for tool in ("img2pdf", "fpdf2", "weasyprint")),
    ]  # fmt: skip


def _pictures(folder: Path, many: Path) -> float:
    """``COUNTS[-1]`` prepared pictures in ``many``; how long preparing them took, in seconds."""
    originals = folder / "originals"
    originals.mkdir()
    many.mkdir()
    taken = photographs(originals, COUNTS[-1])
    start = perf_counter()
    prepared(taken, many)
    return perf_counter() - start


def _part(many: Path, few: Path, count: int) -> Path:
    few.mkdir(exist_ok=True)
    for picture in sorted(many.glob("*.jpg"))[:count]:
        (few / picture.name).unlink(missing_ok=True)
        (few / picture.name).hardlink_to(picture)
    write_contents(sorted(few.glob("*.jpg")))
    return few


def _best(tool: str, folder: Path, passes: int = 1) -> dict[str, Any]:
    """The quickest pass and the largest peak."""
    found = [_drawn(tool, folder) for _ in range(passes)]
    return {"seconds": min(one["seconds"] for one in found), "peak": max(one["peak"] for one in found)}


def _drawn(tool: str, folder: Path) -> dict[str, Any]:
    with tempfile.TemporaryDirectory() as out:
        command = [sys.executable, "-m", "tests.bench.photo_sheet", tool, str(folder), str(Path(out) / "out.pdf")]
        ran = subprocess.run(command, capture_output=True, check=True, text=True)
    found: dict[str, Any] = json.loads(ran.stdout.splitlines()[-1])
    return found
