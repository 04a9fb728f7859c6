"""Run a call in a thread of its own.

pyHanko starts an event loop for each signature and each check, which Python refuses where a loop already runs: in a
notebook, in an asynchronous server, in a test worker that also drives a browser.
"""

from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from typing import TypeVar

Result = TypeVar("Result")


def apart(call: Callable[[], Result]) -> Result:
    """What the call gives; what it raises is raised here."""
    with ThreadPoolExecutor(1) as own:
        return own.submit(call).result()
