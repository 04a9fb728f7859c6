"""Fold a job's entries into its record. See ``inspect_app/record/__init__.py`` for what it promises."""

from inspect_app.record.admissions import flag_admissions
from inspect_app.record.answers import fold_answers
from inspect_app.record.area import from_high_end, longest_run, panel_count, panel_length
from inspect_app.record.authority import objection
from inspect_app.record.chain import chains
from inspect_app.record.coverage import coverage
from inspect_app.record.day_record import fold_days
from inspect_app.record.decisions import fold_decisions
from inspect_app.record.doubts import fold_doubts
from inspect_app.record.earlier import earlier, redrawn
from inspect_app.record.findings import fold_findings
from inspect_app.record.fits import fold_fits
from inspect_app.record.heads import versions
from inspect_app.record.instruments import instruments
from inspect_app.record.lots import fold_lots
from inspect_app.record.partly_seen import partly_seen
from inspect_app.record.sampling import sampling, stated
from inspect_app.record.signoff import fold_signoff

PLACES = ("assembly", "area", "walk", "station", "photo", "mark", "stop", "release", "survey")


def fold(entries: list, people: dict, partial: bool = False, areas: "list | None" = None) -> dict:
    """The record of one job.

    ``entries``: list of ``{"digest", "kid", "payload"}`` in any order, duplicates allowed.
    ``people``: ``{person id: {"name", "role", "kids": [...]}}``. ``partial``: these are the entries of somebody who
    sees a part of the job (``partly_seen``), and ``areas`` the ids of those they see whole, or None where nobody told.
    Returns ``{"job", "sampling", "assemblies", "areas", "fits", "walks", "stations", "answers", "photos", "marks",
    "stops", "releases", "surveys", "redrawn", "lots", "layouts", "coverage", "series", "to_date", "audits", "findings",
    "days", "flags", "doubts", "chains", "earlier"}``; each thing is its head's body plus ``id, digest, by, at, clock,
    heads``. Where several heads stand, of those by people who may say it the one with the greatest digest lends its
    body, and ``heads`` names them all; of a lot, the first that used its ticket (``lots``).
    """
    flags: list = []
    grouped = versions(entries, people, flags)
    for kind in grouped:
        for subject in grouped[kind]:
            for entry in grouped[kind][subject]["all"]:
                code = objection(entry, people)
                if code:
                    flags.append({"digest": entry["digest"], "code": code, "facts": {"kind": kind}})
    things = {kind: _things(grouped.get(kind, {}), people) for kind in PLACES}
    jobs = _things(grouped.get("job", {}), people)
    record: dict = {
        "job": jobs[sorted(jobs)[0]] if jobs else None,
        "assemblies": things["assembly"],
        "areas": things["area"],
        "fits": fold_fits(grouped.get("fit", {})),
        "walks": things["walk"],
        "stations": things["station"],
        "answers": fold_answers(grouped.get("answer", {})),
        "photos": things["photo"],
        "marks": things["mark"],
        "stops": things["stop"],
        "releases": things["release"],
        "surveys": things["survey"],
        "redrawn": redrawn(grouped, things["area"]),
        "chains": chains(entries),
    }
    record["sampling"] = sampling(record["job"])
    if record["job"]:
        record["job"]["instruments"] = instruments(record["job"])
        record["job"]["sampling"] = dict(record["sampling"], own=stated(record["job"]))
    _measure_areas(record)
    _fill_walks(record, grouped, flags)
    _flag_orphans(record, flags)
    told = fold_lots(record, grouped, people, flags)
    fold_decisions(record, grouped, people, flags)
    record["coverage"] = coverage(record, told)
    record["findings"] = fold_findings(record, grouped, people, flags)
    record["days"] = fold_days(record, grouped, people, told["days"], flags)
    flag_admissions(grouped, people, flags)
    record["flags"] = sorted(partly_seen(record, flags, areas) if partial else flags, key=_place)
    record["doubts"] = fold_doubts(record, entries, grouped, partial)
    record["earlier"] = earlier(grouped, record)
    return record


def _place(flag: dict) -> tuple:
    """Where a flag stands among all: by what it says alone, whatever order it was found in."""
    facts = flag["facts"]
    return (flag["digest"], flag["code"], "\n".join([name + " " + str(facts[name]) for name in sorted(facts)]))


def _things(subjects: dict, people: dict) -> dict:
    return {subject: _thing(subject, subjects[subject], people) for subject in sorted(subjects)}


def _thing(subject: str, group: dict, people: dict) -> dict:
    # Who may not say it is flagged and kept, but moves nobody's approved slot: a digest can be searched for.
    may = [entry for entry in group["heads"] if not objection(entry, people)]
    head = (may or group["heads"])[-1]
    payload = head["payload"]
    thing = dict(payload["body"])
    thing.update({
        "id": subject, "digest": head["digest"], "by": payload["by"], "at": payload["at"],
        "clock": payload["clock"], "heads": [entry["digest"] for entry in group["heads"]],
    })
    return thing


def _measure_areas(record: dict) -> None:
    for area in record["areas"].values():
        assembly = record["assemblies"].get(area.get("assembly"))
        area["panel_length"] = panel_length(area)
        area["panel_count"] = panel_count(area, assembly)
        area["run"] = longest_run(area)
        high = from_high_end(area)
        if high is not None:
            area["fixed_line"] = dict(area["fixed_line"])
            area["fixed_line"]["from_high_end"] = high


def _fill_walks(record: dict, grouped: dict, flags: list) -> None:
    for walk in record["walks"].values():
        for name in ("stations", "answers", "photos"):
            walk[name] = sorted(key for key, thing in record[name].items() if thing["walk"] == walk["id"])
        group = grouped.get("signoff", {}).get(walk["id"])
        walk["signoff"] = fold_signoff(walk, group, grouped, flags) if group else None


def _flag_orphans(record: dict, flags: list) -> None:
    for name in ("stations", "answers", "photos"):
        for thing in record[name].values():
            if thing["walk"] not in record["walks"]:
                flags.append({"digest": thing["digest"], "code": "orphan", "facts": {"other": thing["walk"]}})
