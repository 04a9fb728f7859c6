"""The tour's way past the office's screens, as a foreman sees them while there is signal."""

from collections.abc import Iterator
from typing import Any


def the_office(tour: Any) -> Iterator[str]:
    """What an administrator does there is walked by ``test_office.py``."""
    signs = {"people": "rights", "package": "fetch-package"}
    for name in ("people", "devices", "package"):
        sign = f'[data-name="{signs[name]}"]' if name in signs else '[data-here="true"]'
        tour.at(name)
        tour.walker.sees(sign)
        yield f"{name} of the job"
