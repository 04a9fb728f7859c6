"""What somebody may sign of a lot, so that other panels are looked at."""

from collections.abc import Callable
from typing import Any

from cryptography.hazmat.primitives.asymmetric import ec

from inspect_app.record.population import digest_of, rows_of
from tests.verify_page.attack import Attack
from tests.verify_page.bag import NAMED, Files, Small, drawn


def _random(_: Any, body: dict[str, Any]) -> None:
    body["ticket"] = body["ticket"] | {"random": NAMED}


def _drawn(change: Callable[[Any, dict[str, Any]], None], **ticket: Any) -> Attack:
    """The foreman's third lot, changed before it was signed."""

    def attack(_: Small) -> Files:
        made = drawn()
        if ticket:
            honest = made.ticket
            made.ticket = lambda n, **other: honest(n, **(other | ticket))  # type: ignore[method-assign]
        made.plan(41, 45, 3, change)
        return Small(made).files()

    return attack


def _set(**told: Any) -> Callable[[Any, dict[str, Any]], None]:
    return lambda site, body: body.update(told)


def _plan(n: int) -> Callable[[Any, dict[str, Any]], None]:
    def change(_: Any, body: dict[str, Any]) -> None:
        body["plans"]["major"]["n"] = n
        body["n"] = max(one["n"] for one in body["plans"].values())

    return change


def _wider(_: Any, body: dict[str, Any]) -> None:
    """Panels that the roof does not have, with all that follows from them."""
    body["population"][0]["to"] += 20
    rows = rows_of(body["population"])
    body |= {"size": body["size"] + 20, "population_digest": digest_of(rows or [])}


DRAWS: dict[str, Attack] = {
    "a lot of another's ticket": lambda _: Small(drawn(by_chief=True)).files(),
    "a lot of other chance": _drawn(_random),
    "a lot of other panels": _drawn(_set(population_digest=NAMED)),
    "a lot of another ticket": _drawn(_set(), statement_n=7),
    "a lot of another server's ticket": _drawn(_set(), server=ec.generate_private_key(ec.SECP256R1())),
    "a lot of another job's ticket": _drawn(_set(), job="01a214a6-cb82-7000-8000-0000000000ff"),
    "a lot of panels that are not there": _drawn(_wider),
    "a lot's size told otherwise": _drawn(_set(size=6)),
    "a lot that draws fewer": _drawn(_set(n=1)),
    "a plan that no table gives": _drawn(_plan(1)),
    "a lot by no roof": _drawn(_set(placements=[NAMED])),
}  # fmt: skip
