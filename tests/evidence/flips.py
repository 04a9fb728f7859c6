"""A package in a folder whose bytes are changed one at a time, each time verified and put back."""

from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path

from inspect_app.commands.opened import open_folder
from tests.evidence.attacks.found import Turned, check, of, trust
from tests.evidence.packed import Files, bagged, sound, written

BAG = ("bagit.txt", "bag-info.txt", "manifest-sha256.txt", "tagmanifest-sha256.txt")
HELP = "verify.html"
LISTS = ("bag_complete", "bag_matches")
# Of package.json what nobody signed and nothing in the package tells: it is said to be its own word.
ITS_OWN_WORD = (b'"made"', b'"build"', b'"seal_fingerprint"', b'"kept_apart"', b'"missing_reports"')


class Flipped:
    """``fitting``: whether the lists are written anew after each change, as somebody does who knows of them."""

    def __init__(self, folder: Path, fitting: bool, files: Mapping[str, bytes] | None = None) -> None:
        self.folder, self.fitting = folder, fitting
        self.files: Files = dict(files or sound())
        written(self.files, folder)

    def found(self, name: str, at: int, bit: int) -> tuple[Turned, set[str]]:
        """What turns when this bit of that byte is another, and the files that are named for it."""
        data = self.files[name]
        changed = self.files | {name: data[:at] + bytes([data[at] ^ (1 << bit)]) + data[at + 1 :]}
        with self._written(bagged(changed) if self.fitting else changed):
            found = check(open_folder(self.folder), trust())
        named = [one["file"] for fact in found.facts if fact.name in LISTS for one in fact.about.get("files", [])]
        return of(found), set(named)

    def untouched(self) -> Turned:
        """What is false of it before any byte is changed: nothing, or no change could be told."""
        return of(check(open_folder(self.folder), trust()))

    @contextmanager
    def _written(self, files: Files) -> Iterator[None]:
        other = {name: data for name, data in files.items() if self.files[name] != data}
        written(other, self.folder)
        yield
        written({name: self.files[name] for name in other}, self.folder)


def places(names: list[str]) -> list[tuple[str, int]]:
    """Every byte of these files of the sound package but what is its own word."""
    return [(name, at) for name in names for at in range(len(sound()[name])) if not _own_word(name, at)]


def _own_word(name: str, at: int) -> bool:
    """Whether the byte is on a line of ``package.json`` that nothing else in the package tells."""
    if name != "data/package.json":
        return False
    data = sound()[name]
    line = data[data.rfind(b"\n", 0, at) + 1 : data.find(b"\n", at)]
    return any(word in line for word in ITS_OWN_WORD)
