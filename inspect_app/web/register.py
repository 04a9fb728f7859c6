"""Put the routes, their errors and their headers on an app."""

from importlib import import_module
from importlib.util import find_spec

from flask import Flask
from flask_smorest import Blueprint as Described

from inspect_app.web import definitions, devices, entries, errors, headers, jobs, manifest, server, session, signed_in
from inspect_app.web.api import described

LARGEST = 1024 * 1024 + 64 * 1024  # a full batch and its wrapping; uploads set their own limit


def register(app: Flask) -> None:
    app.config["MAX_CONTENT_LENGTH"] = LARGEST
    api = described(app)
    signed_in.install(app)
    errors.install(app)
    headers.install(app)
    for part in (server, session, devices, entries, manifest, jobs, definitions):
        api.register_blueprint(part.blueprint)
    for name in ("report", "photos", "shell"):
        if find_spec(f"inspect_app.web.{name}"):
            blueprint = import_module(f"inspect_app.web.{name}").blueprint
            (api if isinstance(blueprint, Described) else app).register_blueprint(blueprint)
