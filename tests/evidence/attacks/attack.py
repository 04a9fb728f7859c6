"""One attack as a value, and the changes that many are made of."""

from collections.abc import Callable, Sequence
from typing import NamedTuple

from tests.evidence.packed import Files, bagged, fitted, lines

NOBODY, PERSON, SERVER, SEALER, ALL = "none", "a person's", "the server's", "the seal's", "all"


class Attack(NamedTuple):
    """``what`` is done; ``key``: whose is needed; ``files(sound)``: what is left; ``later``: a report or receipts that
    the reader has from elsewhere, as bytes; ``unseen``: why nothing in the package can show it."""

    what: str
    key: str
    files: Callable[[Files], Files]
    later: Callable[[], bytes] | None = None
    unseen: str = ""


def put(files: Files, name: str, tokens: Sequence[str]) -> Files:
    """Other tokens in ``data/NAME.txt``; everything else made to fit."""
    return bagged(fitted(files | {f"data/{name}.txt": "".join(f"{one}\n" for one in tokens).encode("ascii")}))


def edit(name: str, change: Callable[[list[str]], Sequence[str]]) -> Callable[[Files], Files]:
    """An attack on the tokens of one file."""
    return lambda files: put(files, name, change(lines(files, name)))


def with_bytes(name: str, change: Callable[[bytes], bytes]) -> Callable[[Files], Files]:
    """An attack on the bytes of the file whose name begins so, under its old name."""

    def done(files: Files) -> Files:
        whole = next(one for one in sorted(files) if one.startswith(name))
        return bagged(fitted(files | {whole: change(files[whole])}))

    return done
