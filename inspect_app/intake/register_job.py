"""Register a job from its file: every part signed, accepted and receipted like anything a phone sends.

The key is made for this one registration, enrolled to the administrator in whose name it signs, and forgotten: a key
that lies about in a server's folder proves nothing. Later changes are signed by that person's phone.
"""

from collections.abc import Callable
from datetime import datetime
from typing import Any

from cryptography.hazmat.primitives.asymmetric import ec

from inspect_app.clock import spell
from inspect_app.entry.format import format_entry, parse
from inspect_app.entry.jwk import public_jwk
from inspect_app.entry.refusal import Refused
from inspect_app.errors import BadInput, NotAllowed
from inspect_app.intake.batch import Batches
from inspect_app.intake.job_file import Saying, sayings
from inspect_app.people.accounts import Person
from inspect_app.people.devices import Devices


def register_job(page: dict[str, Any], person: Person, definitions: dict[str, str], devices: Devices,
                 batches: Batches, new_id: Callable[[], str], now: datetime) -> str:  # fmt: skip
    """The new job's id. ``page`` as ``job_file.read_yaml`` gives it; all of it is kept or nothing.

    Raises ``NotAllowed`` for anyone but an administrator, ``BadInput`` naming the first part at fault."""
    if person.role != "administrator":
        raise NotAllowed("role_may_not", "by", person.login)
    said = sayings(page, definitions, new_id)
    key = ec.generate_private_key(ec.SECP256R1())
    tokens = _signed(said, key, person, new_id, now)
    with batches.log.transactions.writing():
        devices.enrol(person, public_jwk(key), "job file")
        for answer in batches.receive(tokens):
            if answer.status != "accepted":
                why = answer.why
                field, value = (why.field, why.value) if why else ("entry", answer.status)
                raise BadInput("job_file_part_refused", field, value)
    return said[0].subject


def _signed(said: list[Saying], key: ec.EllipticCurvePrivateKey, person: Person, new_id: Callable[[], str],
            now: datetime) -> list[str]:  # fmt: skip
    tokens: list[str] = []
    for seq, one in enumerate(said):
        payload = {
            "v": 1, "id": new_id(), "kind": one.kind, "job": said[0].subject, "subject": one.subject,
            "replaces": [], "at": spell(now), "clock": {"monotonic": 0, "server": spell(now), "age": 0, "zone": ""},
            "seq": seq, "prev": parse(tokens[-1]).digest if tokens else None, "by": person.id, "build": "job file",
            "body": one.body,
        }  # fmt: skip
        try:
            tokens.append(format_entry(payload, key))
        except Refused as refused:
            raise BadInput("job_file_part_refused", f"{one.kind}: {refused.field}", refused.value) from refused
    return tokens
