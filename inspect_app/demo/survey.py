"""The demonstration's warranty survey: years later, by an invented reviewer's clock, where a finding once stood."""

import json
from collections.abc import Callable
from datetime import datetime, timedelta
from typing import Any

from inspect_app.demo import picture
from inspect_app.demo.phone import Phone
from inspect_app.demo.walk import in_strings
from inspect_app.record.ask import ask
from inspect_app.record.scope import narrowed

LATER = timedelta(days=4 * 365 + 118)
RADIUS = {"value": "6", "unit": "ft"}
MARK = {"length": {"value": "0.4375", "unit": "in"}, "uncertainty": {"value": "0.0625", "unit": "in"}}
NOTE = ("What the panels cover was not opened. Who stepped on the ridge that night, nobody says. "
        "All of this is invented, and its clock is set years ahead.")  # fmt: skip
STATEMENT = "I wrote down what I was told and shown, and left out nothing that I was told."


def later(dusk: datetime) -> Callable[[], datetime]:
    """The reviewer's clock: it stands at one afternoon, years after the invented dusk."""
    return lambda: dusk + LATER


def survey(reviewer: Phone, job: str, record: dict[str, Any], rulebook: str, dusk: datetime) -> dict[str, Any]:
    """Sign the survey and deliver it with its picture; the scope of its report. ``reviewer``: a phone of that clock;
    ``record``: the job's, with a finding at a place of its own."""
    found = [one for one in record["findings"].values() if one["panel"] is not None and one["from_low_end"] is not None]
    finding = min(found, key=lambda one: (one["state"] == "withdrawn", one["severity"] != "critical", one["id"]))
    place = {"area": finding["area"], "panel": finding["panel"], "from_low_end": finding["from_low_end"],
             "radius": RADIUS}  # fmt: skip
    scope = {"kind": "survey", **place}
    when = dusk + LATER
    day = [(when - timedelta(days=back)).date().isoformat() for back in (26, 24, 0)]
    bag = ["bag 7 (invented)", f"one clip, panel {place['panel']}", f"taken {day[2]}"]
    shown = reviewer.keep_photo(job, picture.smaller(picture.label(bag, "bag 7", when)))
    reviewer.say(job, "survey", reviewer.new_id(), {
        **place,
        "warranty": {"shown": "shown", "number": "KW 0417 (invented)", "by": "Kittiwake Roofing Supply (invented)",
                     "from": (dusk + timedelta(days=30)).date().isoformat(), "until": None,
                     "terms": "Finish 20 years; seams open by wind only below 90 mph at the nearest station."},
        "event": {"what": "Wind; a seam stands open over a hand's length", "day": day[0],
                  "figures": "Gust of 71 mph.", "source": "Lower Quillon light, 2 miles (invented)"},
        "noticed": {"day": day[1], "by": "Hollis Mooring (invented)",
                    "said": "Seen from the quay. Tarpaulin laid that evening, nothing taken off."},
        "substitutions": [{"what": "No other part was told of.", "agreed_by": "the installer's delivery slips, by word",
                           "document": None}],
        "changed": "yes",
        "changes": [{"what": "equipment", "day": None, "by": "the harbour office",
                     "said": "Two aerials clamped to the seams, four panels away."},
                    {"what": "traffic", "day": day[1], "by": "the harbour office",
                     "said": "Two people to lay the tarpaulin."}],
        "samples": [{"bag": "7", "what": "One clip with its screws, by agreement of both sides.", "day": day[2],
                     "taken_by": "Owen Docket (invented)", "photos": [shown],
                     "custody": [{"day": day[2], "from": "Owen Docket (invented)", "to": "Hollis Mooring (invented)",
                                  "kept": "locked in the harbour office, seal 118"}]}],
        "wear": {**MARK, "by": "steel rule", "photos": [], "verdict": _held(record, scope, rulebook)},
        "photos": [], "note": NOTE,
        "statement": STATEMENT, "name": reviewer.person["name"], "role": reviewer.person["role"],
    })  # fmt: skip
    reviewer.deliver()
    return scope


def _held(record: dict[str, Any], scope: dict[str, Any], rulebook: str) -> dict[str, Any]:
    """The mark against the movement, as the phone shows it."""
    wear = narrowed(record, scope)["survey"]["wear"]
    inputs = {**wear["inputs"], "mark": MARK["length"], "uncertainty": MARK["uncertainty"], "fixed": wear["fixed"]}
    told = in_strings(json.loads(ask(json.dumps({"call": "judge", "rule": "wear", "inputs": inputs})))["ok"])
    return {"result": "not_applicable", "rule": told["rule"], "rulebook": rulebook, "reason": told["reason"],
            "inputs": told["inputs"], "values": told["values"]}  # fmt: skip
