"""Attacks by somebody who has no key, on the files of the bag and on those that nobody signed."""

import json

from tests.evidence.attacks.attack import NOBODY, Attack
from tests.evidence.packed import Files, bagged, spelled

TOLD = "none: the page is no evidence; its SHA-256 is told"
PAGE = b"<!doctype html><title>All is well</title>"


def flipped(files: Files) -> Files:
    name = next(one for one in sorted(files) if one.startswith("data/photos/"))
    return files | {name: files[name][:-1] + bytes([files[name][-1] ^ 1])}


def without(name: str, files: Files) -> Files:
    return {one: data for one, data in files.items() if one != name}


def says(files: Files, **other: object) -> Files:
    told = json.loads(files["data/package.json"]) | other
    return bagged(files | {"data/package.json": spelled(told)})


def renamed(files: Files) -> Files:
    rows = json.loads(files["data/keys.json"])
    rows[0]["person"]["name"] = "Somebody else (invented)"
    return bagged(files | {"data/keys.json": spelled(rows)})


def described(files: Files) -> Files:
    """The bag says of itself what nobody said; the list of its own files is written anew."""
    info = files["bag-info.txt"] + b"External-Description: Accepted by the engineer (invented)\n"
    return bagged(files, info)


ATTACKS = [
    Attack("a bit of a photo is flipped, and the lists are left", NOBODY, flipped),
    Attack("a file is taken out, and the lists are left", NOBODY, lambda files: without("data/keys.json", files)),
    Attack("a file is put in, and the lists are left", NOBODY, lambda files: files | {"data/note.txt": b"All is well"}),
    Attack("a file with a path that leads out is listed", NOBODY,
           lambda files: bagged(files | {"data/../../note.txt": b"All is well"})),
    Attack("the list of the tag files is taken out", NOBODY, lambda files: without("tagmanifest-sha256.txt", files)),
    Attack("`package.json` claims more entries than there are", NOBODY,
           lambda files: says(files, counts=json.loads(files["data/package.json"])["counts"] | {"entries": 99})),
    Attack("`package.json` hides that a photo is missing", NOBODY, lambda files: says(
        bagged(without(next(one for one in sorted(files) if one.startswith("data/photos/")), files)),
        missing_photos=[])),
    Attack("`keys.json` names somebody else", NOBODY, renamed),
    Attack("`package.json` says a thing more", NOBODY,
           lambda files: says(files, accepted="by the engineer (invented)")),
    Attack("`bag-info.txt` says that somebody accepted the work", NOBODY, described),
    Attack("`verify.html` is replaced by a page that says all is well", NOBODY,
           lambda files: bagged(files | {"verify.html": PAGE}), unseen=TOLD),
]  # fmt: skip
