"""Attacks on photos and checklists by somebody who has no key."""

import hashlib

from tests.evidence.attacks.attack import NOBODY, Attack, with_bytes
from tests.evidence.packed import DEFINITION, NAMED, Files, bagged, fitted


def photos(files: Files) -> list[str]:
    return [name for name in sorted(files) if name.startswith("data/photos/")]


def exchanged(files: Files) -> Files:
    one, other = photos(files)
    return bagged(fitted(files | {one: files[other], other: files[one]}))


def without(name: str, files: Files) -> Files:
    return bagged(fitted({one: data for one, data in files.items() if one != name}))


def another(files: Files) -> Files:
    """The good screw, under its own hash, in the place of the one that was taken."""
    good = b"\xff\xd8 a better photo (invented)"
    left = {name: data for name, data in files.items() if name != photos(files)[0]}
    return bagged(fitted(left | {f"data/photos/{hashlib.sha256(good).hexdigest()}.jpg": good}))


def more(files: Files) -> Files:
    """One more photo, that no server received."""
    good = b"\xff\xd8 one photo more (invented)"
    return bagged(fitted(files | {f"data/photos/{hashlib.sha256(good).hexdigest()}.jpg": good}))


def otherwise(files: Files) -> Files:
    """A program that goes by the ending would take it for something else."""
    name = photos(files)[0]
    other = name.rpartition(".")[0] + ".heic"
    return bagged(fitted({one if one != name else other: data for one, data in files.items()}))


ATTACKS = [
    Attack("a photo is changed under its name", NOBODY, with_bytes("data/photos/", lambda data: data + b"!")),
    Attack("two photos are exchanged", NOBODY, exchanged),
    Attack("a photo is taken out, and said to be missing", NOBODY, lambda files: without(photos(files)[0], files)),
    Attack("a photo is replaced by another under its own hash", NOBODY, another),
    Attack("a photo that nobody received is put in", NOBODY, more),
    Attack("a photo gets another ending", NOBODY, otherwise),
    Attack("a checklist is altered under its name", NOBODY,
           with_bytes("data/definitions/", lambda data: data.replace(b"Invented", b"Inverted"))),
    Attack("a checklist is put under another digest", NOBODY, lambda files: bagged(fitted(
        {name: data for name, data in files.items() if NAMED not in name}
        | {f"data/definitions/{'A' * 43}.json": DEFINITION}))),
    Attack("a checklist is taken out", NOBODY, lambda files: without(f"data/definitions/{NAMED}.json", files)),
]  # fmt: skip
