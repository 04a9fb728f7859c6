"""Who is asking: a device by its bearer token, a person by token or cookie; and whether a job is theirs."""

from flask import request

from inspect_app.errors import NotFound, NotSignedIn
from inspect_app.people.accounts import Person
from inspect_app.people.devices import Device
from inspect_app.web.csrf import require_csrf
from inspect_app.web.parts import parts
from inspect_app.web.signed_in import signed_in

SAFE = ("GET", "HEAD", "OPTIONS")


def device_from_bearer(scope: str = "full") -> Device:
    """The device of ``Authorization: Bearer TOKEN``. ``scope="quarantine"`` lets a revoked key deliver too.
    Raises ``NotSignedIn``, ``NotAllowed``."""
    token = _bearer()
    if token is None:
        raise NotSignedIn("token_missing", "Authorization")
    return parts().delivery.device(token, scope)


def device_or_none() -> Device | None:
    """As ``device_from_bearer``; None for a request without a bearer token."""
    return device_from_bearer() if _bearer() is not None else None


def device_of_member(job: str) -> Device:
    """The device of the bearer token, revoked or not, whose person belongs to the job: it delivers. Raises
    ``NotSignedIn``, ``NotFound``."""
    device = device_from_bearer("quarantine")
    if not parts().membership.belongs(device.person, job):
        raise NotFound("job_unknown", "job", job)
    return device


def person_from_request() -> Person:
    """The owner of the bearer token's key, else the person signed in by cookie; then a change needs the CSRF
    header as well. Raises ``NotSignedIn``, ``NotAllowed``."""
    if _bearer() is not None:
        person = parts().accounts.by_id(device_from_bearer().person)
    else:
        person = signed_in()
        if person and request.method not in SAFE:
            require_csrf()
    if person is None:
        raise NotSignedIn("not_signed_in", "session")
    return person


def require_member(job: str) -> Person:
    """The person asking, who belongs to the job. Raises ``NotFound`` otherwise, whether or not there is such
    a job: that is nobody else's to know."""
    person = person_from_request()
    if not parts().membership.belongs(person.id, job):
        raise NotFound("job_unknown", "job", job)
    return person


def _bearer() -> str | None:
    scheme, _, token = request.headers.get("Authorization", "").partition(" ")
    return token.strip() if scheme.lower() == "bearer" else None
