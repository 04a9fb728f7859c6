"""Sign in and out."""

from flask_smorest import Blueprint

from inspect_app.errors import NotSignedIn
from inspect_app.web.csrf import csrf_token, require_csrf
from inspect_app.web.parts import parts
from inspect_app.web.schemas.session import SessionSchema, SignInSchema
from inspect_app.web.signed_in import sign_in, sign_out, signed_in

blueprint = Blueprint("session", __name__, url_prefix="/api", description="People's sign-in")


@blueprint.route("/session")
@blueprint.response(200, SessionSchema)
def read() -> dict[str, object]:
    """Who is signed in, and the token that changes must carry in ``X-Seamwalk-Csrf``."""
    return {"person": signed_in(), "csrf": csrf_token()}


@blueprint.route("/session", methods=["POST"])
@blueprint.arguments(SignInSchema)
@blueprint.response(200, SessionSchema)
def begin(given: dict[str, str]) -> dict[str, object]:
    """Sign in with login and password. 401 for a pair that does not fit, 429 after too many tries."""
    require_csrf()
    tries, login = parts().tries, given["login"].strip().casefold()
    tries.check(login)
    person = parts().accounts.signing_in(login, given["password"])
    if person is None:
        tries.wrong(login)
        raise NotSignedIn("wrong_password", "login", given["login"])
    tries.right(login)
    sign_in(person)
    return {"person": person, "csrf": csrf_token()}


@blueprint.route("/session", methods=["DELETE"])
@blueprint.response(200, SessionSchema)
def end() -> dict[str, object]:
    """Sign out. Nothing unsent is touched by it."""
    require_csrf()
    sign_out()
    return {"person": None, "csrf": csrf_token()}
