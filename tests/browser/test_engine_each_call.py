"""Each call that can fail, fails once, in each way it can: nothing saved is lost or doubled, nothing said too early.

Count the calls of one run, then run again for each of them with that one failing. Capture alone, over a database in
memory, is tried at every point in tests/node.
"""

from typing import Any

import pytest

from tests.browser.fail_once import WAYS, Fallible
from tests.browser.office import Office
from tests.seed import chance

PER_PHONE = 60  # runs before another phone begins with an empty store
TURNS = [("storage", (how,)) for how in WAYS["storage"]]
TURNS += [(kind, WAYS[kind]) for kind in ("fetch", "crypto", "file")]


def every_point(calls: dict[str, int], kind: str, ways: tuple[str, ...]) -> list[tuple[str, int, str]]:
    return [(kind, at, how) for how in ways for at in range(1, calls[kind] + 1)]


def test_a_few_of_all_calls_fail_once_and_nothing_is_lost_doubled_or_said_too_early(
    chromium: Any, office: Office
) -> None:
    fallible = Fallible(chromium.new_context(), office)
    dice = chance("each call")
    for kind, of_them in (("storage", 4), ("fetch", 4), ("crypto", 1), ("file", 1)):
        for point in dice.sample(every_point(fallible.calls, kind, WAYS[kind]), of_them):
            fallible.fail(*point)
    assert fallible.settled() == []
    assert fallible.told.reached > 7, fallible.told


@pytest.mark.soak
@pytest.mark.parametrize(("kind", "ways"), TURNS, ids=[f"{kind} {ways[0]}" for kind, ways in TURNS])
def test_every_call_fails_once_in_every_way(chromium: Any, office: Office, kind: str, ways: tuple[str, ...]) -> None:
    points: list[tuple[str, int, str]] = []
    wrong: list[str] = []
    saved: list[str] = []
    reached = 0
    while True:
        context = chromium.new_context()
        fallible = Fallible(context, office)
        points = points or every_point(fallible.calls, kind, ways)
        part, points = points[:PER_PHONE], points[PER_PHONE:]
        for point in part:
            fallible.fail(*point)
        wrong += fallible.settled(saved)
        reached, saved = reached + fallible.told.reached, saved + fallible.told.saved
        context.close()
        if not points:
            break
    print(f"calls of one run {fallible.calls}; {kind}, {', '.join(ways)}: failed at {reached} points, "
          f"{len(saved)} saved, {len(wrong)} lost, unexpected or said too early")  # fmt: skip
    assert wrong == []
