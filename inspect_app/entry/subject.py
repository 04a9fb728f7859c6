"""The thing an entry speaks of, as its kind spells it."""

from inspect_app.entry.lot_bodies import lot_name
from inspect_app.entry.refusal import Refused
from inspect_app.entry.shape import name
from inspect_app.entry.uuid7 import any_uuid

# Things with an id of their own, made where they are first said.
OWN_IDS = (
    "assembly", "area", "walk", "station", "mark", "finding", "correction", "recheck", "reopening", "day", "survey",
)  # fmt: skip


def check_subject(kind: str, subject: object, job: object, body: dict[str, object]) -> None:
    """Raises Refused ``bad_field`` on ``subject`` when it contradicts what the body says."""
    name(subject, "subject")
    assert isinstance(subject, str)
    if kind in OWN_IDS:
        any_uuid(subject, "subject")
    elif kind == "answer":
        if not _names_answer(subject, body):
            raise Refused("bad_field", "subject", subject)
    elif kind == "lot":
        lot_name(subject, "subject")
        if subject.split("/")[1:] != _ticket(body):  # that the key is its signer's, the fold and verify see
            raise Refused("bad_field", "subject", subject)
    elif subject != _others(job, body)[kind]:
        raise Refused("bad_field", "subject", subject)


def _names_answer(subject: str, body: dict[str, object]) -> bool:
    """``<station id, or walk id>/<definition id>/<item id>``: a correction must meet what it corrects."""
    parts = subject.split("/")
    place = body["walk"] if body["station"] is None else body["station"]
    return len(parts) == 3 and parts[0] == place and parts[1] != "" and parts[2] == body["item"]


def _ticket(body: dict[str, object]) -> list[str]:
    ticket = body["ticket"]
    assert isinstance(ticket, dict)
    return [str(ticket["series"]), str(ticket["n"])]


def _others(job: object, body: dict[str, object]) -> dict[str, object]:
    stop = f"{body.get('lot')}/{body.get('panel')}"
    return {
        "job": job,
        "photo": body.get("sha256"),
        "signoff": body.get("walk"),
        "fit": body.get("area"),
        "stop": stop,
        "release": f"{stop}/{body.get('why')}",
        "disposition": body.get("lot"),
        "assignment": body.get("finding"),
        "concession": body.get("finding"),
        "admission": body.get("entry"),
    }
