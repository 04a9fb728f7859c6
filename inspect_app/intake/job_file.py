"""Read a job file: one YAML page that registers a job, its approved assemblies and its roof areas.

Takes text and new identifiers, gives the bodies of the entries to sign; it signs and stores nothing.
The file has ``job``, ``assemblies`` {key: body} and ``areas`` {key: body}; an area names its assembly by key.
``people`` is for the demonstration and is ignored here.
"""

from collections.abc import Callable
from typing import Any, NamedTuple

from ruamel.yaml import YAML
from ruamel.yaml.error import MarkedYAMLError

from inspect_app.errors import BadInput


class Saying(NamedTuple):
    """What one entry will say: its kind, subject and body."""

    kind: str
    subject: str
    body: dict[str, Any]


def read_yaml(text: str) -> dict[str, Any]:
    """The file as plain data. Raises ``BadInput`` with the line where it is not YAML."""
    try:
        page = YAML(typ="safe", pure=True).load(text)
    except MarkedYAMLError as error:
        line = error.problem_mark.line + 1 if error.problem_mark else 1
        raise BadInput("job_file_unreadable", field=f"line {line}", value=str(error.problem)) from error
    if not isinstance(page, dict):
        raise BadInput("job_file_unreadable", field="line 1", value=type(page).__name__)
    return page


def sayings(page: dict[str, Any], definitions: dict[str, str], new_id: Callable[[], str]) -> list[Saying]:
    """The entries of a job file in the order in which they are signed: job, assemblies, areas.

    ``definitions``: {definition id: digest} that the job pins. Raises ``BadInput`` naming the missing part.
    """
    for part in ("job", "assemblies", "areas"):
        if not isinstance(page.get(part), dict) or not page[part]:
            raise BadInput("job_file_part_missing", field=part, value=page.get(part))
    job = new_id()
    said = [Saying("job", job, {**page["job"], "definitions": definitions})]
    ids = {key: new_id() for key in page["assemblies"]}
    said += [Saying("assembly", ids[key], dict(body)) for key, body in page["assemblies"].items()]
    for key, body in page["areas"].items():
        if body.get("assembly") not in ids:
            field = f"areas.{key}.assembly"
            raise BadInput("job_file_assembly_unknown", field=field, value=body.get("assembly"))
        said.append(Saying("area", new_id(), {**body, "assembly": ids[body["assembly"]]}))
    return said
