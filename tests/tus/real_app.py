"""The real app on a folder of its own, with three people's phones enrolled and their tokens written down.

``python -m tests.tus.real_app FOLDER PORT`` serves it, so that a test can kill it.
"""

import json
import sys
from pathlib import Path

from cryptography.hazmat.primitives.asymmetric import ec
from flask import Flask

from inspect_app.application import create_app
from inspect_app.entry.jwk import public_jwk
from inspect_app.entry.proof import format_proof
from inspect_app.intake.uploads import Uploads
from inspect_app.intake.uploads_caps import DEFAULT_CAPS
from inspect_app.settings import Settings, shipped, sqlite_in
from inspect_app.store.database import db
from inspect_app.store.vault_disk import Disk
from tests.intake.receiving import JOB, OTHER_JOB

PEOPLE = {"foreman": [JOB], "stranger": [OTHER_JOB], "inspector": [JOB, OTHER_JOB]}
PASSWORD = "a password for tests"


def real_app(folder: Path, caps=DEFAULT_CAPS, disk=None) -> Flask:
    """Everything as in production but for the caps and the disk that are given."""
    settings = Settings(
        data=folder, database_url=sqlite_in(folder), static=shipped("static"), checklists=shipped("checklists")
    )
    app = create_app(settings)
    desk = app.extensions["photos"]
    desk.vault.disk = disk or Disk()
    uploads = Uploads(folder / "uploads", desk.vault, desk.uploads.receipts, desk.uploads.now, caps, disk)
    app.extensions["photos"] = desk._replace(uploads=uploads)
    return app


def prepare(folder: Path) -> None:
    """Make the accounts, enrol a key each, and get a token by the real way: a signed nonce."""
    app = real_app(folder)
    parts, client, tokens = app.extensions["seamwalk"], app.test_client(), {}
    for login, jobs in PEOPLE.items():
        key = ec.generate_private_key(ec.SECP256R1())
        with app.app_context():
            person = parts.accounts.add(login, login.title(), "foreman", PASSWORD)
            for job in jobs:
                parts.membership.join(person.id, job)
            parts.devices.enrol(person, public_jwk(key.public_key()), "a phone for tests")
        proof = format_proof(client.get("/api/nonce").json["nonce"], "deliver", key)
        tokens[login] = client.post("/api/delivery", json={"proof": proof}).json["token"]
    with app.app_context():
        db.engine.dispose()
    (folder / "tokens.json").write_text(json.dumps(tokens))


def tokens_of(folder: Path) -> dict[str, str]:
    return json.loads((folder / "tokens.json").read_text())


if __name__ == "__main__":
    import waitress

    waitress.serve(real_app(Path(sys.argv[1])), host="127.0.0.1", port=int(sys.argv[2]), threads=4)
