"""Put the routes, their errors and their headers on an app."""

from flask import Flask

from inspect_app.web import (
    copies,
    countersign,
    definitions,
    devices,
    entries,
    errors,
    headers,
    invitations,
    job_devices,
    jobs,
    links,
    manifest,
    package,
    passkeys,
    people,
    photos,
    qr,
    quarantine,
    report,
    reports,
    server,
    session,
    shell,
    signed_in,
    tickets,
    trail,
    trends,
    view,
)
from inspect_app.web.api import described
from inspect_app.web.photos_upload import uploads

LARGEST = 1024 * 1024 + 64 * 1024  # a full batch and its wrapping; uploads set their own limit


def register(app: Flask) -> None:
    app.config["MAX_CONTENT_LENGTH"] = LARGEST
    api = described(app)
    signed_in.install(app)
    errors.install(app)
    headers.install(app)
    for part in (countersign, server, session, passkeys, devices, entries, tickets, manifest, jobs, definitions, report,
                 photos):  # fmt: skip
        api.register_blueprint(part.blueprint)
    for part in (people, invitations, links, job_devices, quarantine, trail, qr, trends, copies, package, reports):
        api.register_blueprint(part.blueprint)
    api.register_blueprint(uploads)
    app.register_blueprint(shell.blueprint)
    app.register_blueprint(view.blueprint)
