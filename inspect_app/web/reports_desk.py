"""What makes reports, as the composition root built it: ``app.extensions["reports"]``."""

from typing import cast

from flask import Flask, current_app

from inspect_app.report.make import Maker


def maker() -> Maker:
    """The maker of the app in hand."""
    return cast(Maker, current_app.extensions["reports"])


def make_report(app: Flask, job: str) -> None:
    """For the background: make the job's report, as it stands now."""
    maker().make(job)
