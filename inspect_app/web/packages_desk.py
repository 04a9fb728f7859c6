"""What makes evidence packages, as the composition root built it, and the passes that open a download."""

from datetime import datetime, timedelta
from typing import NamedTuple, cast

from flask import current_app
from itsdangerous import BadSignature, URLSafeSerializer

from inspect_app.clock import spell
from inspect_app.errors import NotAllowed
from inspect_app.package.make import Packer
from inspect_app.web.parts import parts

LASTS = timedelta(hours=12)  # as long as a sign-in: a large package over a weak link takes its time


class Pass(NamedTuple):
    """Leave to fetch one job's package as it was ``made``: it says for whom, and is asked for by address alone.
    ``digest``: of the very package, empty where none was made for it."""

    job: str
    person: str
    made: datetime
    digest: str = ""


def packer() -> Packer:
    """The packer of the app in hand."""
    return cast(Packer, current_app.extensions["packages"])


def spelled(given: Pass) -> str:
    """A pass as a piece of an address."""
    return str(_signer().dumps([given.job, given.person, spell(given.made), given.digest]))


def read_pass(text: str) -> Pass:
    """Raises ``NotAllowed`` ``package_pass``: not one of ours, or too old."""
    try:
        job, person, made, *digest = _signer().loads(text)
        given = Pass(job, person, datetime.fromisoformat(made), *digest)
    except (BadSignature, ValueError, TypeError):
        raise NotAllowed("package_pass", "pass", text[:20]) from None
    if parts().clock() - given.made > LASTS:
        raise NotAllowed("package_pass", "pass", text[:20])
    return given


def _signer() -> URLSafeSerializer:
    return URLSafeSerializer(cast(bytes, current_app.secret_key), salt="package")
