"""What somebody may do to the signed record of a package, with every private key at hand or none."""

import base64
import json
from collections.abc import Callable
from typing import Any

from cryptography.hazmat.primitives.asymmetric import ec

from inspect_app.entry.base64url import decode, encode
from inspect_app.entry.format import parse
from inspect_app.entry.jwk import public_jwk
from inspect_app.entry.statement import format_statement, parse_statement, restoration, revocation
from tests.evidence.record import AT, author, enrol, sign
from tests.phone import new_uuid
from tests.verify_page.attack import Attack, changed_files, receipts_anew, with_file, with_tokens, without
from tests.verify_page.bag import NAMED, Files, Small

ORDER = 0xFFFFFFFF00000000FFFFFFFFFFFFFFFFBCE6FAADA7179E84F3B9CAC2FC632551  # of P-256
KEY, ENTRIES = "data/server-key.json", "data/entries.txt"


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


def _entries(change: Callable[[list[str]], list[str]]) -> Attack:
    return lambda small: with_tokens(small, entries=change(small.entries))


def _enrolments(change: Callable[[list[str]], list[str]]) -> Attack:
    return lambda small: with_tokens(small, enrolments=change(small.enrolments))


def _receipts(change: Callable[[list[str]], list[str]]) -> Attack:
    return lambda small: with_tokens(small, chain=change(small.chain))


def _resigned(small: Small) -> Files:
    """An entry of the foreman's, signed by a key of somebody who was never enrolled."""
    old = parse(small.entries[-1])
    stranger = author("fay", "foreman")
    body: Any = old.payload["body"]
    new = sign(stranger, small.site.job, "photo", str(old.payload["subject"]), 0, None, body)
    small.entries[-1] = new
    return receipts_anew(small)


def _another_name(small: Small) -> Files:
    """Signed by an enrolled key, in somebody else's name."""
    chief = small.site.chief
    last = [one for one in map(parse, small.entries) if one.kid == chief.kid][-1]
    seq = int(str(last.payload["seq"])) + 1
    forged = chief._replace(person="fay")
    small.entries.append(
        sign(forged, small.site.job, "photo", small.names[0], seq, last.digest, {"sha256": small.names[0]})
    )
    return receipts_anew(small)


def _other_server(small: Small) -> Files:
    """Everything of the server made anew by another one: it fits together, and only its fingerprint differs."""
    small.server = ec.generate_private_key(ec.SECP256R1())
    small.enrolments = [enrol(small.server, at, one) for at, one in enumerate(small.site.authors, 1)]
    return receipts_anew(small)


def _of_another_job(small: Small) -> Files:
    """All that somebody did in another job is given receipts of this one."""
    other = author("ivan", "inspector")
    small.enrolments.append(enrol(small.server, 3, other))
    small.entries.append(sign(other, new_uuid(), "walk", new_uuid(), 0, None, {"definition": NAMED}))
    return receipts_anew(small)


def _ended_again(small: Small) -> Files:
    """The foreman's key was ended before the last photo came; the server says once more, and later, that it is."""
    files = _ended(False)(small)
    small.enrolments.append(format_statement(revocation(9000, AT, small.foreman.kid, "cleo"), small.server))
    return files | small.files()


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
        return receipts_anew(small)

    return attack


def _set_back(hidden: bool) -> Attack:
    def attack(small: Small) -> Files:
        # After all receipts that were given, which need not name it; or before them, and they hide it.
        seq = 5 if hidden else 9999
        small.enrolments.append(format_statement(restoration(seq, AT, 4 if hidden else 9998, NAMED), small.server))
        return small.files()

    return attack


def _loose(small: Small) -> Files:
    """The foreman's last entry names another one before it than there is, signed so; everything after fits."""
    last = parse(small.entries[-1])
    body: Any = last.payload["body"]
    seq = int(str(last.payload["seq"]))
    small.entries[-1] = sign(small.foreman, small.site.job, "photo", str(last.payload["subject"]), seq, NAMED, body)
    return receipts_anew(small)


def _unchained(small: Small) -> Files:
    """The server gave a receipt that names another before it than it had given."""
    told: Any = parse_statement(small.chain[-1]).payload
    return with_tokens(small, chain=[*small.chain[:-1], format_statement(told | {"prev": NAMED}, small.server)])


def _undone(small: Small) -> Files:
    """Receipts whose numbers can only have been given in the time that a restoration undid."""
    small.enrolments.append(format_statement(restoration(2000, AT, 1005, NAMED), small.server))
    return small.files()


def _removed(small: Small) -> Small:
    del small.entries[4]
    return small


def _key() -> bytes:
    return json.dumps(public_jwk(ec.generate_private_key(ec.SECP256R1()))).encode()


RECORD: dict[str, Attack] = {
    "nothing": lambda small: small.files(),
    "a word of an entry": _entries(lambda all_: [*all_[:4], _changed(all_[4]), *all_[5:]]),
    "a signature's other s": _entries(lambda all_: [*all_[:4], _high(all_[4]), *all_[5:]]),
    "padding on an entry": _entries(lambda all_: [*all_[:-1], all_[-1] + "="]),
    "no line feed at the end": changed_files(lambda files, _: files | {ENTRIES: files[ENTRIES][:-1]}),
    "an empty line": changed_files(lambda files, _: files | {ENTRIES: files[ENTRIES] + b"\n"}),
    "letters of no alphabet": changed_files(lambda files, _: files | {ENTRIES: b"\xff\xfe" + files[ENTRIES]}),
    "an entry removed": _entries(lambda all_: [*all_[:4], *all_[5:]]),
    "an entry removed, receipts anew": lambda small: receipts_anew(_removed(small)),
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
    "a receipt among the enrolments": lambda small: with_tokens(small, enrolments=[*small.enrolments, small.chain[0]]),
    "another server throughout": _other_server,
    "another server's key alone": changed_files(lambda files, _: files | {KEY: _key()}),
    "the server's key is none": changed_files(with_file(KEY, b"[]")),
    "the server's key is gone": changed_files(without(KEY)),
    "the entries are gone": changed_files(without("data/entries.txt")),
    "a key ended, its entry late": _ended(False),
    "a key ended, its entry let in": _ended(True),
    "a key ended, and ended again later": _ended_again,
    "entries of another job": _of_another_job,
    "set back to a backup": _set_back(False),
    "a restoration hidden": _set_back(True),
    "an entry that hangs in the air": _loose,
    "a receipt that hangs in the air": _unchained,
    "a number of the time undone": _undone,
}  # fmt: skip
