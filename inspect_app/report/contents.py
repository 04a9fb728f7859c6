"""Decide what a report says, as data. Values in, values out: no clock, no files, no words, no layout."""

import hashlib
import json
from typing import Any

from inspect_app.record.scope import WHOLE, narrowed, outside
from inspect_app.report.acceptance import acceptances
from inspect_app.report.area import areas, placed
from inspect_app.report.assembly import assemblies
from inspect_app.report.caution import cautions
from inspect_app.report.cover import cover
from inspect_app.report.daily import daily, days_missing
from inspect_app.report.day import days
from inspect_app.report.finding import findings
from inspect_app.report.finding_photos import photos_missing
from inspect_app.report.fit import fits
from inspect_app.report.hashes import hashes
from inspect_app.report.item import answered
from inspect_app.report.lot import lots
from inspect_app.report.method import instruments, rules_used, uncertainties
from inspect_app.report.missing import missing
from inspect_app.report.not_seen import not_seen
from inspect_app.report.order import numbering
from inspect_app.report.photo import photos as photo_log
from inspect_app.report.scope_about import about
from inspect_app.report.sign_off import sign_offs
from inspect_app.report.station import stations
from inspect_app.report.survey import survey, survey_photos_missing

JOB = (
    "id",
    "digest",
    "name",
    "place",
    "parties",
    "metal_low",
    "metal_high",
    "metal_range_source",
    "placing_error",
)


def report_contents(
    record: dict[str, Any], people: dict[str, Any], definitions: dict[str, Any], log: dict[str, Any],
    photos: dict[str, Any], options: dict[str, Any],
) -> dict[str, Any]:  # fmt: skip
    """Everything one report says, JSON-able and the same for the same inputs.

    ``record``: as ``inspect_app.record.fold`` gives it. ``people``: ``{id: {"name", "role", "kids"}}``.
    ``definitions``: ``{digest: compiled}``. ``log``: ``head_seq``, ``head_receipt``, ``server_kid``,
    ``fingerprint``, ``keys``, and perhaps ``apart``: how many entries are kept apart. ``photos``: ``{sha256: {"held",
    "lost", "copy", "undecodable", …}}``.
    ``options``: ``language``, ``units``, ``paper``, ``issued`` (ISO time), ``number``, ``final``, and perhaps
    ``issuer``, ``supersedes``, ``made_with`` (``release``) and ``scope`` (``record.scope``; the whole job without). A
    draft stays a draft while evidence is missing, whatever ``final`` says. ``kind``, ``scope`` and ``about`` say what
    it speaks of, ``outside`` what the job holds beyond that. Raises ``Refused`` (``scope_unknown``) for a scope that is
    not in the record.
    """
    scope = options.get("scope") or WHOLE
    whole = _whole(record)
    record = narrowed(whole, scope)
    job = record["job"] or {}
    numbers = numbering(record, definitions)
    answers = [answered(subject, record, people, definitions, numbers) for subject in numbers["answers"]]
    laid = placed(record, numbers)
    places = stations(record, people, numbers, answers)
    told: dict[str, Any] = {
        "v": 1,
        "kind": scope["kind"],
        "scope": scope,
        "outside": outside(whole, record),
        "number": options["number"],
        "issued": options["issued"],
        "issuer": options.get("issuer"),
        "supersedes": options.get("supersedes"),
        "language": options.get("language") or job.get("language") or "en",
        "recorded_in": job.get("language") or "en",
        "units": options.get("units") or job.get("units") or "US",
        "paper": options.get("paper") or job.get("paper") or "letter",
        "made_with": options.get("made_with"),
        "invented": bool(job.get("invented")),
        "job": {name: job.get(name) for name in JOB} | {"heads": len(job.get("heads") or [])},
        "answers": answers,
        "stations": places,
        "areas": areas(record, numbers, laid, places),
        "area_names": {key: area.get("name") for key, area in whole["areas"].items()},
        "assemblies": assemblies(record, definitions, answers),
        "fits": fits(record, people, numbers),
        "findings": findings(record, people, definitions, numbers, answers, photos),
        "lots": lots(record, people),
        "coverage": record["coverage"],
        "series": record["series"],
        "to_date": record["to_date"],
        "audits": record["audits"],
        "sampling": record.get("sampling"),
        "days": days(record, people, definitions, numbers, answers, laid),
        "photos": photo_log(record, people, numbers, photos),
        "signoffs": sign_offs(record, people, numbers),
        "missing": missing(record, people, definitions, numbers, photos, answers),
        "hashes": hashes(record, people, definitions, log),
        "survey": survey(record, people, numbers, photos),
    }
    told["about"] = about(scope, told["days"], told["lots"], told["areas"])
    told |= daily(record, photos)
    told["missing"] += days_missing(told["daily"]) + photos_missing(told["findings"])
    told["missing"] += survey_photos_missing(told["survey"])
    told["rules"] = rules_used(answers, told["fits"])
    told["uncertainties"] = uncertainties(job)
    told["acceptance"] = {"job": job.get("acceptance"), "readings": acceptances(answers, told["fits"])}
    told["instruments"] = instruments(answers, told["days"])
    told["not_seen"] = not_seen(record, definitions, numbers, places, answers, told["areas"], scope == WHOLE)
    told["cautions"] = cautions(record, told, definitions, people, log.get("apart", 0))
    told["final"] = bool(options.get("final")) and not any(one["blocks"] for one in told["missing"])
    told["cover"] = cover(told)
    return told


def contents_bytes(contents: dict[str, Any]) -> bytes:
    """The bytes of ``contents.json``: sorted names, UTF-8, one line end."""
    text = json.dumps(contents, ensure_ascii=False, sort_keys=True, indent=1, allow_nan=False)
    return text.encode("utf-8", "backslashreplace") + b"\n"


def contents_digest(contents: dict[str, Any]) -> str:
    """SHA-256 of ``contents_bytes``, lower-case hexadecimal: the number in the footer of every page."""
    return hashlib.sha256(contents_bytes(contents)).hexdigest()


def _whole(record: dict[str, Any]) -> dict[str, Any]:
    """A record with every part present: an empty job is a report about nothing, not an error."""
    parts = ("assemblies", "areas", "fits", "walks", "stations", "answers", "photos", "findings", "lots",
             "chains", "marks", "stops", "releases", "surveys", "redrawn", "coverage", "series", "to_date", "audits")
    return {"job": None, "flags": [], "days": [], "doubts": []} | {name: {} for name in parts} | record
