"""The OpenAPI side of the routes: made from the wire schemas, at ``/api/openapi.json``."""

from importlib.metadata import version

from flask import Flask
from flask_smorest import Api

from inspect_app.web.schemas.error import ErrorSchema

SECURITY = {
    "device": {"type": "http", "scheme": "bearer", "description": "a delivery token, see /api/delivery"},
    "person": {"type": "apiKey", "in": "cookie", "name": "seamwalk"},
}


class Described(Api):
    """The API, its errors described in our own shape."""

    ERROR_SCHEMA = ErrorSchema


def described(app: Flask) -> Described:
    """The API of this app, ready for blueprints."""
    app.config.update(
        API_TITLE="Seamwalk", API_VERSION=version("seamwalk"), OPENAPI_VERSION="3.0.3",
        OPENAPI_URL_PREFIX="/api", OPENAPI_JSON_PATH="openapi.json",
    )  # fmt: skip
    api = Described(app)
    for name, scheme in SECURITY.items():
        api.spec.components.security_scheme(name, scheme)
    return api
