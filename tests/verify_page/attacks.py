"""What somebody may do to a package, with every private key at hand or none. Each takes a fresh ``Small`` and gives the
files; whoever attacks writes the bag's lists anew, where the list itself is not what is attacked."""

import base64
import hashlib
import re
from collections.abc import Callable
from typing import Any

from cryptography.hazmat.primitives.asymmetric import ec

from inspect_app.entry.base64url import decode, encode
from inspect_app.entry.format import parse
from inspect_app.entry.jwk import public_jwk
from inspect_app.entry.statement import countersignature, format_statement, parse_statement, restoration, revocation
from tests.evidence.record import AT, author, enrol, sign
from tests.verify_page.bag import NAMED, TAGS, Files, Small, chain, drawn, listed, manifest

Attack = Callable[[Small], Files]
PDF = b"%PDF-1.7 invented"
COUNTERSIGNED = PDF + b", signed once more"
ORDER = 0xFFFFFFFF00000000FFFFFFFFFFFFFFFFBCE6FAADA7179E84F3B9CAC2FC632551


def _with(small: Small, **lists: list[str]) -> Files:
    for name, tokens in lists.items():
        setattr(small, name, tokens)
    return small.files()


def _changed(token: str) -> str:
    """The same token with another word in its payload."""
    head, payload, signature = token.split(".")
    data = base64.urlsafe_b64decode(payload + "==").replace(b'"build":"test"', b'"build":"tesT"')
    return ".".join((head, encode(data), signature))


def _high(token: str) -> str:
    """The same signature with its other, equally valid s."""
    rest, _, signature = token.rpartition(".")
    raw = decode(signature, "signature")
    other = ORDER - int.from_bytes(raw[32:], "big")
    return f"{rest}.{encode(raw[:32] + other.to_bytes(32, 'big'))}"


def _again(small: Small) -> Files:
    """Receipts written anew over what is left, as only the server could."""
    return _with(small, chain=chain(small.server, small.site.job, small.entries, small.photos))


def _entries(change: Callable[[list[str]], list[str]]) -> Attack:
    return lambda small: _with(small, entries=change(small.entries))


def _enrolments(change: Callable[[list[str]], list[str]]) -> Attack:
    return lambda small: _with(small, enrolments=change(small.enrolments))


def _receipts(change: Callable[[list[str]], list[str]]) -> Attack:
    return lambda small: _with(small, chain=change(small.chain))


def _files(change: Callable[[Files, Small], Files | None], anew: bool = True) -> Attack:
    def attack(small: Small) -> Files:
        files = small.files()
        files = change(files, small) or files
        return listed(files) if anew else files

    return attack


def _resigned(small: Small) -> Files:
    """An entry of the foreman's, signed by a key of somebody who was never enrolled."""
    old = parse(small.entries[-1])
    stranger = author("fay", "foreman")
    body: Any = old.payload["body"]
    new = sign(stranger, small.site.job, "photo", str(old.payload["subject"]), 0, None, body)
    small.entries[-1] = new
    return _again(small)


def _another_name(small: Small) -> Files:
    """Signed by an enrolled key, in somebody else's name."""
    chief = small.site.chief
    last = [one for one in map(parse, small.entries) if one.kid == chief.kid][-1]
    seq = int(str(last.payload["seq"])) + 1
    forged = chief._replace(person="fay")
    small.entries.append(
        sign(forged, small.site.job, "photo", small.names[0], seq, last.digest, {"sha256": small.names[0]})
    )
    return _again(small)


def _other_server(small: Small) -> Files:
    """Everything of the server made anew by another one: it fits together, and only its fingerprint differs."""
    small.server = ec.generate_private_key(ec.SECP256R1())
    small.enrolments = [enrol(small.server, at, one) for at, one in enumerate(small.site.authors, 1)]
    return _again(small)


def _ended(let_in: bool) -> Attack:
    """The foreman's key was ended before the last photo came; an administrator let that in, or nobody did."""

    def attack(small: Small) -> Files:
        came = parse_statement(small.chain[len(small.entries) - 1]).payload["seq"]
        end = format_statement(revocation(int(str(came)) - 1, AT, small.foreman.kid, "cleo"), small.server)
        small.enrolments.append(end)
        if let_in:
            digest = parse(small.entries[-1]).digest
            small.site.say(small.site.chief, "admission", digest, {"entry": digest})
            small.entries.append(small.site.entries[-1])
        return _again(small)

    return attack


def _set_back(hidden: bool) -> Attack:
    def attack(small: Small) -> Files:
        # After all receipts that were given, which need not name it; or before them, and they hide it.
        seq = 5 if hidden else 9999
        small.enrolments.append(format_statement(restoration(seq, AT, 4 if hidden else 9998, NAMED), small.server))
        return small.files()

    return attack


def _countersigned(found: bytes) -> Attack:
    """The server states that report 1 became ``COUNTERSIGNED``; in the package it is ``found``."""

    def attack(small: Small) -> Files:
        before, after = (hashlib.sha256(one).hexdigest() for one in (PDF, COUNTERSIGNED))
        said = countersignature(9000, AT, small.site.job, 1, 1, before, after, "0f" * 32, "invented", "server")
        small.enrolments.append(format_statement(said, small.server))
        return listed(small.files() | {"data/reports/1-closeout.pdf": found})

    return attack


def _loose(small: Small) -> Files:
    """The foreman's last entry names another one before it than there is, signed so; everything after fits."""
    last = parse(small.entries[-1])
    body: Any = last.payload["body"]
    seq = int(str(last.payload["seq"]))
    small.entries[-1] = sign(small.foreman, small.site.job, "photo", str(last.payload["subject"]), seq, NAMED, body)
    return _again(small)


def _unchained(small: Small) -> Files:
    """The server gave a receipt that names another before it than it had given."""
    told: Any = parse_statement(small.chain[-1]).payload
    return _with(small, chain=[*small.chain[:-1], format_statement(told | {"prev": NAMED}, small.server)])


def _grown(small: Small) -> Files:
    """A photo's receipt tells another size."""
    small.photos[0] = (small.photos[0][0], small.photos[0][1] + b"x")
    made = _again(small)
    name = f"data/photos/{small.names[0]}.jpg"
    return listed(made | {name: made[name][:-1]})


def _undone(small: Small) -> Files:
    """Receipts whose numbers can only have been given in the time that a restoration undid."""
    small.enrolments.append(format_statement(restoration(2000, AT, 1005, NAMED), small.server))
    return small.files()


def _tags(name: str, change: Callable[[bytes], bytes]) -> Attack:
    """A file of the bag itself changed, and the list of those written anew over it."""

    def attack(small: Small) -> Files:
        files = small.files()
        files[name] = change(files[name])
        tags = {one: data for one, data in files.items() if not one.startswith("data/") and one != TAGS}
        return files | {TAGS: manifest(tags)}

    return attack


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
    from inspect_app.record.population import digest_of, rows_of

    body["population"][0]["to"] += 20
    rows = rows_of(body["population"])
    body |= {"size": body["size"] + 20, "population_digest": digest_of(rows or [])}


def _exchange(files: Files, small: Small) -> Files:
    one, other = (f"data/photos/{name}.jpg" for name in small.names)
    return files | {one: files[other], other: files[one]}


def _touched(files: Files, small: Small) -> Files:
    name = f"data/photos/{small.names[0]}.jpg"
    return files | {name: files[name][:-3] + bytes([files[name][-3] ^ 1]) + files[name][-2:]}


def _stray(files: Files, small: Small) -> Files:
    return files | {f"data/photos/{hashlib.sha256(b'other').hexdigest()}.png": b"other"}


def _without(name: str) -> Callable[[Files, Small], Files]:
    return lambda files, small: {one: data for one, data in files.items() if one != name.format(*small.names)}


def _more(name: str, data: bytes) -> Callable[[Files, Small], Files]:
    return lambda files, small: files | {name: data}


DEFINED = f"data/definitions/{NAMED}.json"
KEY, ENTRIES = "data/server-key.json", "data/entries.txt"
ATTACKS: dict[str, Attack] = {
    "nothing": lambda small: small.files(),
    "a word of an entry": _entries(lambda all_: [*all_[:4], _changed(all_[4]), *all_[5:]]),
    "a signature's other s": _entries(lambda all_: [*all_[:4], _high(all_[4]), *all_[5:]]),
    "padding on an entry": _entries(lambda all_: [*all_[:-1], all_[-1] + "="]),
    "no line feed at the end": _files(lambda files, _: files | {ENTRIES: files[ENTRIES][:-1]}),
    "an empty line": _files(lambda files, _: files | {ENTRIES: files[ENTRIES] + b"\n"}),
    "letters of no alphabet": _files(lambda files, _: files | {ENTRIES: b"\xff\xfe" + files[ENTRIES]}),
    "an entry removed": _entries(lambda all_: [*all_[:4], *all_[5:]]),
    "an entry removed, receipts anew": lambda small: _again(_removed(small)),
    "an entry repeated": _entries(lambda all_: [*all_, all_[-1]]),
    "two entries swapped": _entries(lambda all_: [*all_[:4], all_[5], all_[4], *all_[6:]]),
    "the last entries cut off": _entries(lambda all_: all_[:-2]),
    "signed by a stranger": _resigned,
    "in another's name": _another_name,
    "a receipt removed": _receipts(lambda all_: [*all_[:3], *all_[4:]]),
    "two receipts swapped": _receipts(lambda all_: [*all_[:3], all_[4], all_[3], *all_[5:]]),
    "a receipt changed": _receipts(lambda all_: [*all_[:3], all_[3][:-8] + "AAAAAAAA", *all_[4:]]),
    "a photo's receipt unreadable": _receipts(lambda all_: [*all_[:-1], "x"]),
    "all receipts gone": _receipts(lambda all_: []),
    "the first enrolment gone": _enrolments(lambda all_: all_[1:]),
    "an enrolment changed": _enrolments(lambda all_: [all_[0][:-8] + "AAAAAAAA", *all_[1:]]),
    "a receipt among the enrolments": lambda small: _with(small, enrolments=[*small.enrolments, small.chain[0]]),
    "another server throughout": _other_server,
    "another server's key alone": _files(lambda files, _: files | {KEY: _key()}),
    "the server's key is none": _files(_more(KEY, b"[]")),
    "the server's key is gone": _files(_without(KEY)),
    "the entries are gone": _files(_without("data/entries.txt")),
    "a key ended, its entry late": _ended(False),
    "a key ended, its entry let in": _ended(True),
    "set back to a backup": _set_back(False),
    "a restoration hidden": _set_back(True),
    "two photos exchanged": _files(_exchange),
    "a photo touched up": _files(_touched),
    "a photo missing": _files(_without("data/photos/{0}.jpg")),
    "a photo that nobody received": _files(_stray),
    "a photo that never arrived": lambda small: _never(small),
    "a checklist altered": _files(_more(DEFINED, b'{"id":"invented","items":[],"version":2}')),
    "a checklist missing": _files(_without(DEFINED)),
    "a file more": _files(_more("data/note.txt", b"x")),
    "a file more, lists as they were": _files(_more("data/note.txt", b"x"), anew=False),
    "a file less, lists as they were": _files(_without("data/keys.json"), anew=False),
    "a byte of a photo, lists as they were": _files(_touched, anew=False),
    "the page replaced, lists as they were": _files(_more("verify.html", b"<p>all is well"), anew=False),
    "the declaration altered": _files(lambda files, _: files | {"bagit.txt": b"BagIt-Version: 0.97\n"}, anew=False),
    "the list is gone": _files(_without("manifest-sha256.txt"), anew=False),
    "the payload counted otherwise": _files(_more("bag-info.txt", b"Payload-Oxum: 1.1\n"), anew=False),
    "what a system leaves behind": _files(_more("data/.DS_Store", b"x"), anew=False),
    "a countersigned report": _countersigned(COUNTERSIGNED),
    "a countersignature cut off": _countersigned(PDF),
    "another report countersigned": _countersigned(b"%PDF-1.7 other"),
    "an entry that hangs in the air": _loose,
    "a receipt that hangs in the air": _unchained,
    "a photo's receipt of another size": _grown,
    "a number of the time undone": _undone,
    "the payload counted otherwise, listed anew": _tags("bag-info.txt", lambda data: re.sub(rb"\d+\.", b"1.", data)),
    "a name listed twice": _tags("manifest-sha256.txt", lambda data: data + data.split(b"\n")[0] + b"\n"),
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


def _removed(small: Small) -> Small:
    del small.entries[4]
    return small


def _never(small: Small) -> Files:
    """A photo that an entry names, and that the server never had."""
    small.photos = small.photos[:1]
    return _again(small)


def _key() -> bytes:
    import json

    return json.dumps(public_jwk(ec.generate_private_key(ec.SECP256R1()))).encode()
