"""Decide a whole batch so that the order inside it does not matter."""

from collections import ChainMap
from collections.abc import Callable, Collection, Mapping, Sequence

from inspect_app.entry.accept import Accepted, Key, Outcome, Quarantined, accept
from inspect_app.entry.refusal import Refused


def accept_all(
    tokens: Sequence[bytes | str],
    keys: Mapping[str, Key],
    members: Mapping[str, Collection[str]],
    held: Callable[[str], bool],
) -> list[Outcome]:
    """One outcome for each token, in the given order; the arguments are those of ``accept``.

    A token repeated inside the batch is a Duplicate the second time. Entries of a job that this very batch
    opens are looked at again once it is open, wherever in the batch its ``job`` entry stands.
    """
    known: dict[str, Collection[str]] = {}
    now = ChainMap(known, dict(members))
    taken: set[str] = set()
    outcomes: list[Outcome | None] = [None] * len(tokens)
    waiting = list(range(len(tokens)))
    while waiting:
        opened = False
        for index in waiting:
            outcome = accept(tokens[index], keys, now, lambda name: name in taken or held(name))
            if isinstance(outcome, Accepted | Quarantined):
                taken.add(outcome.entry.digest)
            if isinstance(outcome, Accepted) and outcome.opens_job:
                known[outcome.entry.job] = [outcome.entry.by]
                opened = True
            outcomes[index] = outcome
        waiting = [index for index in waiting if opened and _not_a_member(outcomes[index])]
    return [outcome for outcome in outcomes if outcome is not None]


def _not_a_member(outcome: Outcome | None) -> bool:
    return isinstance(outcome, Refused) and outcome.code == "not_a_member"
