"""The challenge of a passkey, in the session of whoever asked: for one purpose, one answer and five minutes."""

from os import urandom

from flask import request, session

from inspect_app.entry.base64url import decode, encode
from inspect_app.errors import BadInput, NotSignedIn
from inspect_app.people.passkey_answers import Party
from inspect_app.people.passkeys import SECONDS
from inspect_app.web.parts import parts

KEPT = "passkey"


def asking(purpose: str) -> bytes:
    """A new challenge; one asked before is void."""
    challenge = urandom(32)
    session[KEPT] = [purpose, encode(challenge), int(parts().clock().timestamp())]
    return challenge


def asked(purpose: str) -> bytes:
    """The challenge that this session waits to have answered, and no more after this. Raises ``NotSignedIn``."""
    known = session.pop(KEPT, None)
    if known is None or known[0] != purpose or parts().clock().timestamp() - known[2] > SECONDS:
        raise NotSignedIn("passkey_unasked", "challenge", "")
    return decode(known[1], "challenge")


def party() -> Party:
    """This server as the browser calls it. Behind a proxy HTTPS is the proxy's; a plain origin is taken of a browser's
    own machine alone, where W3C Secure Contexts lets it have passkeys. Raises ``BadInput`` for a call without host."""
    host = request.host
    name = host.rpartition(":")[0] if host.rpartition(":")[2].isdigit() else host
    if not name:
        raise BadInput("field_missing", "Host", host)
    local = name == "localhost" or name.endswith(".localhost")
    return Party(name, (f"https://{host}", f"http://{host}") if local else (f"https://{host}",))
