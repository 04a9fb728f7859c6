"""How the job samples its lots: what it states, else our own defaults.

The defaults are ours, a choice and no source: critical items on the same panels as the major ones, accepted with none
found; level S-4 with an AQL of 2.5 for major items and 10 for minor ones, level II with 2.5 for an audit (levels and
AQLs as in MIL-STD-105E); a lot with more than a tenth of its drawn panels not looked at is not determinable.
"""

from inspect_app.rules.decimal_text import read_decimal
from inspect_app.rules.refused import Refused

OURS = {
    "critical": None,
    "major": {"level": "S-4", "aql": "2.5"},
    "minor": {"level": "S-4", "aql": "10"},
    "audit": {"level": "II", "aql": "2.5"},
    "nonresponse": "0.10",
    "reduced": False,
    "places": 3,
    "night_places": 5,
}


def sampling(job: "dict | None") -> dict:
    """Every choice by name, ours where the job says nothing. ``critical`` None: the panels of the major plan, none may
    be bad. A share of places not seen that is no share is not taken: one slip must not take the record with it."""
    own = (job or {}).get("sampling") or {}
    return {name: own[name] if _told(own, name) else OURS[name] for name in OURS}


def stated(job: dict) -> list:
    """The names of what the job's own entry states, as ``sampling`` takes them."""
    own = job.get("sampling") or {}
    return [name for name in OURS if _told(own, name)]


def _told(own: dict, name: str) -> bool:
    if name != "nonresponse" or own.get(name) is None:
        return own.get(name) is not None
    try:
        return 0.0 <= read_decimal(own[name], name) <= 1.0
    except Refused:
        return False
