"""Whole runs by seed: the app's own modules on simulated phones against the real server. What a phone has told to be
saved is never lost by us, what it holds a receipt for is never lost by anyone, and nothing is there that nobody tried.
"""

import json
import logging
from collections.abc import Iterator

import pytest

from tests.seed import SEED
from tests.simulation.run import KEPT, Outcome, run

SHORT = 8
SHARDS, OF_A_SHARD = 10, 200  # about a second of one core each


@pytest.fixture(autouse=True)
def quiet() -> Iterator[None]:
    """A server that is struck down says so in its log, every time."""
    log = logging.getLogger("seamwalk")
    before = log.level
    log.setLevel(logging.CRITICAL + 1)
    yield
    log.setLevel(before)


def told(outcome: Outcome) -> None:
    totals = outcome.totals
    counted = {name: count for name, count in sorted(totals.items()) if not name.startswith("rule: ")}
    rules = {name[6:]: count for name, count in sorted(totals.items()) if name.startswith("rule: ")}
    print(f"{totals['seeds']} seeds, {len(outcome.failures)} failures: {counted}\nsteps by rule: {rules}")
    assert not outcome.failures, "\n".join(map(str, outcome.failures))


def test_a_few_seeds_and_what_went_wrong_once_lose_nothing_and_bring_nothing_unexpected() -> None:
    outcome = run(1, SHORT, stories=[json.loads(file.read_text("utf-8")) for file in KEPT])
    told(outcome)
    assert KEPT and outcome.totals["seeds"] == SHORT + len(KEPT)
    assert outcome.totals["arrived"] > 20 and outcome.totals["requests"] > 300


MENDED = {
    "revoked_with_a_token": ("static/people/token.js", "reply.status === 403 &&", "false &&"),
    "signed_out_and_set_back": (
        "static/sync/round.js", "const { scope } =", "if (person.hidden) return; const { scope } =",
    ),
    "two_sign_in_at_once": ("static/people/session.js", "if (person && person.id !== id)", "if (false)"),
}  # fmt: skip


def test_each_kept_story_fails_where_what_mended_it_is_taken_back() -> None:
    assert MENDED.keys() == {file.stem for file in KEPT}
    for file in KEPT:
        assert run(1, 0, [MENDED[file.stem]], stories=[json.loads(file.read_text("utf-8"))]).failures, file.stem


def test_whose_key_is_another_s_at_the_server_since_an_older_release_signs_in_with_a_new_one() -> None:
    older = [MENDED["two_sign_in_at_once"]]
    stories = [
        {"locks": False, "anew": False, "steps": [sign_in(4, ms), sign_in(0, 3000)]} for ms in range(110, 200, 10)
    ]
    assert _without_sign_in(older, stories) == {False}
    older.append(("static/people/device.js", "=== 'key_taken' &&", "=== 'no code' &&"))
    assert _without_sign_in(older, stories) == {True}


def sign_in(dice: int, ms: int) -> dict[str, object]:
    """Of cy (4) or ann (0)."""
    return {"rule": "sign in", "on": "b", "tab": 0, "dice": dice, "run": {"ms": ms}}


def _without_sign_in(planted: list[tuple[str, str, str]], stories: list[dict[str, object]]) -> set[bool]:
    """Of the stories that fail, whether somebody could not sign in at the end."""
    return {"no sign-in" in one.why for one in run(1, 0, planted, stories=stories).failures}


def test_a_server_that_dies_over_what_its_administrator_asks_is_back_soon() -> None:
    dies_at_once = {"rule": "kill server", "on": "a", "tab": 0, "dice": 1, "run": {"tasks": 0}}
    revoke = {"rule": "revoke", "on": "a", "tab": 0, "dice": 0, "run": {"ms": 500}}
    outcome = run(1, 0, stories=[{"locks": True, "anew": False, "steps": [dies_at_once, revoke]}])
    told(outcome)
    assert outcome.totals["server kills"] == 1


def test_a_planted_bug_is_found_and_its_story_made_short() -> None:
    forgetting = ("static/outbox/keep.js", "of outboxRows(entry, payload, photos.filter(Boolean))", "of []")
    outcome = run(1, 1, [forgetting], patience=4)
    assert "forgotten" in outcome.failures[0].why
    assert len(outcome.failures[0].story["steps"]) < 5


@pytest.mark.soak
def test_the_same_seed_is_the_same_run() -> None:
    assert run(SEED, 10).totals == run(SEED, 10).totals


@pytest.mark.soak
@pytest.mark.parametrize("shard", range(SHARDS))
def test_thousands_of_seeds_lose_nothing_and_bring_nothing_unexpected(shard: int) -> None:
    told(run(SEED + shard * OF_A_SHARD, OF_A_SHARD))
