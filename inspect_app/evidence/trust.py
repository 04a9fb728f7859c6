"""Whose seal, whose server and whose clock it is: by fingerprints that a reader got by another way.

Facts: ``signer_known`` (the seal's certificate is one of those expected, and of every further signature its own: the
free boxes of a report can be signed by anybody, in any name), ``server_known`` (so is the key of the
server that gave the receipts; or a report that bears an expected seal says on its pages that it is this one) and, of
every signature that bears a time stamp, ``authority_known`` (so is the certificate of whoever stamped it: a sealer can
ask an authority of their own for any time). A fingerprint is 64 hexadecimal digits: the SHA-256 of a certificate's DER,
or a key's thumbprint (RFC 7638) as bytes. One that is none of what was found was meant for the seal or the server: then
neither is known.
"""

import json
import re
from collections.abc import Collection
from typing import TYPE_CHECKING

from inspect_app.entry.base64url import decode
from inspect_app.entry.refusal import Refused
from inspect_app.entry.thumbprint import thumbprint
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN, Fact

if TYPE_CHECKING:  # what reads time stamps brings the whole of pyHanko, and a report's pages ask only for digits here
    from inspect_app.evidence.time_stamp import Stamp

FINGERPRINT = re.compile(r"[0-9a-f]{64}")
SIGNER, SERVER, AUTHORITY = "signer_known", "server_known", "authority_known"


def fingerprint_in(text: str) -> str | None:
    """The 64 digits that were meant, whatever blanks, colons and capitals they were typed with; None for no
    fingerprint."""
    digits = re.sub(r"[\s:]", "", text).lower()
    return digits if FINGERPRINT.fullmatch(digits) else None


def key_print(data: bytes) -> str | None:
    """The thumbprint of the JWK in a ``server-key.json`` as hexadecimal digits; None where there is none."""
    try:
        return key_digits(thumbprint(json.loads(data)))
    except Exception:  # no JSON, or no key: a thing that has no name
        return None


def key_digits(kid: str | None) -> str | None:
    """A key's thumbprint in hexadecimal digits, as it is read out; None where there is none."""
    try:
        return None if kid is None else decode(kid, "kid").hex()
    except Refused:
        return None


def signer_fact(seal: str | None, intact: bool, given: Collection[str], others: Collection[str | None]) -> Fact:
    """``seal``: fingerprint of the certificate found; ``given``: what was typed; ``others``: those of the server and of
    time authorities."""
    about = {"fingerprint": seal}
    if not given:
        return Fact(SIGNER, UNKNOWN, "no_fingerprint_given", about)
    wanted, wrong = _read(given)
    if wrong is not None:
        return Fact(SIGNER, FAILS, "not_a_fingerprint", {"given": wrong[:100]})
    if seal in wanted and intact:
        return Fact(SIGNER, HOLDS, None, about)
    left = sorted(wanted - set(others))
    return Fact(SIGNER, FAILS, "other_signer", about | {"given": left[0]}) if left else Fact(
        SIGNER, UNKNOWN, "only_server_given", about)  # fmt: skip


def countersigner_fact(field: str, name: str | None, found: str | None, intact: bool, given: Collection[str]) -> Fact:
    """``signer_known`` of a further signature in that ``field``; ``found``: the fingerprint of its certificate."""
    about = {"field": field, "name": name or "", "fingerprint": found}
    if found in _read(given)[0] and intact:
        return Fact(SIGNER, HOLDS, None, about)
    return Fact(SIGNER, UNKNOWN, "countersigner_not_given", about)


def authority_fact(field: str, stamp: "Stamp", given: Collection[str]) -> Fact:
    """``authority_known`` of the signature in that ``field``, which bears this ``stamp``."""
    about = {"field": field, "authority": stamp.name, "fingerprint": stamp.fingerprint}
    if stamp.fingerprint in _read(given)[0]:
        return Fact(AUTHORITY, HOLDS, None, about)
    return Fact(AUTHORITY, UNKNOWN, "authority_not_given", about)


def server_fact(server: str | None, given: Collection[str], seals: Collection[str | None], vouched: bool) -> Fact:
    """``server``: its fingerprint, None where no key reads; ``seals``: those of the certificates found, of time
    authorities too; ``vouched``: whether what bears an expected seal names this server."""
    about = {"fingerprint": server}
    if server is None:
        return Fact(SERVER, UNKNOWN, "no_record", about)
    wanted, _ = _read(given)
    if server in wanted:
        return Fact(SERVER, HOLDS, None, about)
    others = sorted(wanted - set(seals))
    if others and not vouched:
        return Fact(SERVER, FAILS, "other_server", about | {"given": others[0]})
    return Fact(SERVER, HOLDS, None, about) if vouched else Fact(SERVER, UNKNOWN, "no_fingerprint_given", about)


def _read(given: Collection[str]) -> tuple[set[str], str | None]:
    found = {text: fingerprint_in(text) for text in given}
    wrong = next((text for text, digits in found.items() if digits is None), None)
    return {digits for digits in found.values() if digits is not None}, wrong
