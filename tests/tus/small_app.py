"""The photo routes alone, on a small app: uploads, vault and copies real, tokens and log of receipts simple.

``python -m tests.tus.small_app FOLDER PORT`` serves it, so that a test can kill it.
"""

import sys
import time
from pathlib import Path
from types import SimpleNamespace

from flask import Flask, jsonify, request

from inspect_app.errors import NotFound, NotSignedIn, Problem
from inspect_app.intake.pictures import shrink
from inspect_app.intake.uploads import Uploads
from inspect_app.intake.uploads_caps import DEFAULT_CAPS
from inspect_app.settings import shipped
from inspect_app.store.trouble import trouble
from inspect_app.store.vault import Vault
from inspect_app.store.vault_copies import Copies
from inspect_app.web.photos import blueprint
from inspect_app.web.photos_desk import PhotoDesk
from inspect_app.words import Words
from tests.intake.upload_bench import JOB, OTHER_JOB, ReceiptLog

# A token is "device:job,job": whoever tests says who may do what.
TOKEN = f"phone-one:{JOB}"
OTHERS_TOKEN = f"phone-two:{OTHER_JOB}"
BOTH_JOBS_TOKEN = f"phone-three:{JOB},{OTHER_JOB}"


def small_app(folder: Path, caps=DEFAULT_CAPS, disk=None) -> Flask:
    app = Flask("small")
    app.config["MAX_CONTENT_LENGTH"] = 1 << 20  # as for every other route of a real app
    vault = Vault(folder / "vault", disk)
    vault.sweep()
    receipts = ReceiptLog(vault, folder / "receipts.json")
    uploads = Uploads(folder / "uploads", vault, receipts, time.time, caps, disk)
    copies = Copies(folder / "copies", vault, shrink)
    words = Words(shipped("static") / "words")
    app.extensions["photos"] = PhotoDesk(uploads, vault, copies, receipts, words, _device, _member)
    app.register_blueprint(blueprint)
    app.register_error_handler(Problem, lambda problem: _problem(problem, 404))
    app.register_error_handler(NotSignedIn, lambda problem: _problem(problem, 401))
    app.register_error_handler(OSError, lambda error: _problem(trouble(error), 507))
    return app


def _bearer() -> tuple[str, str]:
    kind, _, token = request.headers.get("Authorization", "").partition(" ")
    device, colon, jobs = token.partition(":")
    if kind != "Bearer" or not colon:
        raise NotSignedIn("token_unknown", "Authorization")
    return device, jobs


def _device():
    return SimpleNamespace(kid=_bearer()[0])


def _member(job: str) -> None:
    if job not in _bearer()[1].split(","):
        raise NotFound("job_unknown", "job", job)


def _problem(problem: Problem, status: int):
    return jsonify(error={"code": problem.code, "field": problem.field, "value": problem.value}), status


if __name__ == "__main__":
    import waitress

    waitress.serve(small_app(Path(sys.argv[1])), host="127.0.0.1", port=int(sys.argv[2]), threads=4)
