"""What countersigns reports, as the composition root built it: ``app.extensions["countersigned"]``."""

from typing import cast

from flask import Flask, current_app

from inspect_app.report.countersigned import Countersigned


def countersigned(app: Flask | None = None) -> Countersigned:
    """Of the app given, else of the one in hand."""
    return cast(Countersigned, (app or current_app).extensions["countersigned"])
