"""Who the server is, and a nonce to sign."""

from importlib.metadata import version

from flask_smorest import Blueprint

from inspect_app.clock import spell
from inspect_app.web.parts import parts
from inspect_app.web.schemas.server import NonceSchema, ServerSchema

blueprint = Blueprint("server", __name__, url_prefix="/api", description="The server and its key")


@blueprint.route("/server")
@blueprint.response(200, ServerSchema)
def server() -> dict[str, object]:
    """The server's public key, its time and its version."""
    key = parts().server_key
    return {"kid": key.kid, "jwk": key.jwk, "time": spell(parts().clock()), "build": version("seamwalk")}


@blueprint.route("/nonce")
@blueprint.response(200, NonceSchema)
def nonce() -> dict[str, object]:
    """A nonce for a proof, good for five minutes."""
    return {"nonce": parts().nonces.fresh(), "time": spell(parts().clock())}
