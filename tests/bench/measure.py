"""Time two things side by side, and hold their ratio to a limit that has a name and a reason."""

from collections.abc import Callable
from time import perf_counter
from typing import NamedTuple

Work = Callable[[], object]


class Row(NamedTuple):
    """``ratio`` of ``what`` to ``peer``, both of this run; ``limit``: what it must not pass, and ``why`` there."""

    what: str
    peer: str
    ratio: float
    limit: float
    why: str

    @property
    def kept(self) -> bool:
        return self.ratio <= self.limit

    def __str__(self) -> str:
        mark = "ok    " if self.kept else "BROKEN"
        return f"{mark} {self.ratio:7.2f} (limit {self.limit:g})  {self.what} / {self.peer}: {self.why}"


def seconds(work: Work, times: int) -> float:
    """One pass of ``times`` calls, in seconds a call."""
    start = perf_counter()
    for _ in range(times):
        work()
    return (perf_counter() - start) / times


def best(work: Work, peer: Work, times: int, passes: int = 5) -> tuple[float, float]:
    """Seconds a call of both: taken in turns, so that a busy machine slows both, and the best pass of each, since
    other work only ever adds."""
    work(), peer()
    taken = [(seconds(work, times), seconds(peer, times)) for _ in range(passes)]
    return min(one for one, _ in taken), min(other for _, other in taken)


def ratio(work: Work, peer: Work, times: int, passes: int = 5) -> float:
    """The first of ``best`` to the second."""
    one, other = best(work, peer, times, passes)
    return one / other
