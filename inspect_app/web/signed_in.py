"""People's sign-in by cookie (Flask-Login). It serves people's pages only; delivery rests on device keys."""

from datetime import timedelta

from flask import Flask, request, session
from flask.sessions import SecureCookieSessionInterface
from flask_login import LoginManager, UserMixin, current_user, login_user, logout_user

from inspect_app.clock import spell
from inspect_app.people.accounts import Person
from inspect_app.web.office_desk import office
from inspect_app.web.parts import parts

HOURS = 12


class SignedIn(UserMixin):
    """A person as Flask-Login keeps them."""

    def __init__(self, person: Person) -> None:
        self.person = person
        self.id = person.id


class Cookies(SecureCookieSessionInterface):
    """Over HTTPS the cookie never travels without it; on a plain local address it must."""

    def get_cookie_secure(self, app: Flask) -> bool:
        return request.is_secure


def install(app: Flask) -> None:
    app.session_interface = Cookies()
    # The cookie is set when a session changes and never with other answers: one that was on its way while somebody
    # else signed in would put the session before it back.
    app.config.update(
        SESSION_REFRESH_EACH_REQUEST=False,
        SESSION_COOKIE_NAME="seamwalk", SESSION_COOKIE_HTTPONLY=True, SESSION_COOKIE_SAMESITE="Lax",
        PERMANENT_SESSION_LIFETIME=timedelta(hours=HOURS),
    )  # fmt: skip
    manager = LoginManager(app)
    manager.user_loader(_load)


def _load(person: str) -> SignedIn | None:
    known = parts().accounts.by_id(person)
    ended = parts().accounts.sign_ins_from(person) if known else None
    return SignedIn(known) if known and (ended is None or ended < str(session.get("since", ""))) else None


def sign_in(person: Person) -> None:
    """Begin a new session: whatever was in the one before (a token somebody planted) ends."""
    session.clear()
    session.permanent = True
    stay_signed_in()
    office().trail.note("signed_in", None, person.id)
    login_user(SignedIn(person))


def stay_signed_in() -> None:
    """This sign-in counts from now: whoever revokes a phone of their own ends their other sign-ins by it."""
    session["since"] = spell(parts().clock() + timedelta(milliseconds=1))


def sign_out() -> None:
    logout_user()
    session.clear()


def signed_in() -> Person | None:
    """The person of this request's cookie; None when there is none, or it has expired."""
    return current_user.person if current_user.is_authenticated else None
