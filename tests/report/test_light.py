"""What laying a report out brings into memory."""

import subprocess
import sys

HEAVY = ("pyhanko", "cryptography", "aiohttp", "flask", "sqlalchemy")


def test_laying_pages_out_brings_in_nothing_that_signs_serves_or_stores():
    """Those are 30 MB, half of what a report of five hundred photos takes."""
    told = f"import sys, inspect_app.report.pages; print([one for one in {HEAVY} if one in sys.modules])"
    assert subprocess.run([sys.executable, "-c", told], capture_output=True, text=True, check=True).stdout == "[]\n"
