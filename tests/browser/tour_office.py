"""The tour's way past the office's screens, as a foreman sees them while there is signal."""

from collections.abc import Iterator
from typing import Any


def the_office(tour: Any) -> Iterator[str]:
    """What an administrator does there is walked by ``test_office.py``."""
    for name, sign in (("people", '[data-name="rights"]'), ("devices", '[data-here="true"]'), ("package", '[data-name="fetch-package"]')):
        tour.at(name)
        tour.walker.sees(sign)
        yield f"{name} of the job"
