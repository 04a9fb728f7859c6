"""A job that a command names, or the refusal of one that is not here."""

import sys
from typing import Any

from inspect_app.commands.visible import visible
from inspect_app.errors import NotFound

LISTED = 30  # jobs named to who asked for one that is not here: the newest


def require_job(parts: Any, asked: str, language: str) -> None:
    """Raises ``NotFound`` after a list of those that are here. Needs an app context."""
    if parts.reading.has_kind(asked, "job"):
        return
    jobs = parts.reading.jobs_with("job")
    if not jobs:
        raise NotFound("report_no_jobs", "job", asked)
    print(parts.words.say("report.command.jobs", language), file=sys.stderr)
    for job in jobs[-LISTED:]:
        print(f"  {job}  {visible(parts.records.name(job))}", file=sys.stderr)
    raise NotFound("report_job_unknown", "job", asked)
