"""Sign in by passkey; add, see and remove one's own. All of it rests on the cookie: a device key opens none of it."""

from typing import Any

from flask_smorest import Blueprint

from inspect_app.errors import NotAllowed, NotSignedIn
from inspect_app.people.accounts import Person
from inspect_app.people.passkeys import Passkey
from inspect_app.web.csrf import csrf_token, require_csrf
from inspect_app.web.office_desk import office
from inspect_app.web.parts import parts
from inspect_app.web.passkey_asked import asked, asking, party
from inspect_app.web.schemas.passkeys import (
    CredentialSchema,
    ForSchema,
    NewPasskeySchema,
    OptionsSchema,
    PasskeySchema,
    PasskeysSchema,
)
from inspect_app.web.schemas.session import SessionSchema
from inspect_app.web.signed_in import sign_in, signed_in

blueprint = Blueprint("passkeys", __name__, url_prefix="/api/passkeys", description="Passkeys beside passwords")


@blueprint.route("/sign-in/options", methods=["POST"])
@blueprint.response(200, OptionsSchema)
def to_sign_in() -> dict[str, object]:
    """A challenge for any passkey of this server, good for one answer and five minutes."""
    require_csrf()
    return {"options": parts().passkeys.to_sign_in(asking("sign-in"), party())}


@blueprint.route("/sign-in", methods=["POST"])
@blueprint.arguments(CredentialSchema)
@blueprint.response(200, SessionSchema)
def begin(given: dict[str, Any]) -> dict[str, object]:
    """Sign in with the browser's answer: the same session as a password gives."""
    require_csrf()
    person = parts().passkeys.signing_in(given["credential"], asked("sign-in"), party())
    sign_in(person)
    return {"person": person, "csrf": csrf_token()}


@blueprint.route("/options", methods=["POST"])
@blueprint.arguments(ForSchema)
@blueprint.response(200, OptionsSchema)
def to_add(given: dict[str, str]) -> dict[str, object]:
    """What to make a passkey from, for the person signed in, whom the call must name."""
    person = _person()
    if given["person"] != person.id:
        # Several people share a phone: who unlocked it by PIN need not be who signed in last.
        raise NotAllowed("passkey_other_person", "person", person.name)
    return {"options": parts().passkeys.to_add(person, asking("add"), party())}


@blueprint.route("", methods=["POST"])
@blueprint.arguments(NewPasskeySchema)
@blueprint.response(201, PasskeySchema)
def add(given: dict[str, Any]) -> Passkey:
    """Keep the passkey that the browser made."""
    person, challenge = _person(), asked("add")
    with parts().transactions.writing():
        kept = parts().passkeys.add(person, given["name"], given["credential"], challenge, party())
        office().trail.note("passkey_added", None, person.id, name=kept.name)
    return kept


@blueprint.route("")
@blueprint.response(200, PasskeysSchema)
def listing() -> dict[str, object]:
    """The passkeys of the person signed in, oldest first."""
    person = signed_in()
    if person is None:
        raise NotSignedIn("not_signed_in", "session")
    return {"person": person.id, "passkeys": parts().passkeys.of(person.id)}


@blueprint.route("/<passkey>", methods=["DELETE"])
@blueprint.response(204)
def remove(passkey: str) -> None:
    """One's own passkey opens nothing any more."""
    person = _person()
    with parts().transactions.writing():
        parts().passkeys.remove(person.id, passkey)
        office().trail.note("passkey_removed", None, person.id)


def _person() -> Person:
    person = signed_in()
    if person is None:
        raise NotSignedIn("not_signed_in", "session")
    require_csrf()
    return person
