"""Changes that rest on a cookie must carry the session's token in a header too, which no other site can."""

import hmac
import secrets

from flask import request, session

from inspect_app.errors import NotAllowed

HEADER = "X-Seamwalk-Csrf"


def csrf_token() -> str:
    """This session's token, made on first need."""
    if "csrf" not in session:
        session["csrf"] = secrets.token_urlsafe(24)
    return str(session["csrf"])


def require_csrf() -> None:
    """Raises ``NotAllowed`` ``csrf`` when the header is missing or is not this session's."""
    sent, known = request.headers.get(HEADER, ""), str(session.get("csrf", ""))
    if not known or not hmac.compare_digest(sent.encode(), known.encode()):
        raise NotAllowed("csrf", HEADER, sent)
