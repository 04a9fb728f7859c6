"""Who may say what. Missing authority flags an entry; it never drops it."""

LOOKERS = ("foreman", "inspector", "reviewer")  # a reviewer surveys what was claimed, years later
MAY = {
    "job": ("administrator",),
    "assembly": ("administrator",),
    "area": ("administrator", "inspector", "foreman"),
    "fit": ("administrator", "inspector", "foreman"),
    "walk": LOOKERS,
    "station": LOOKERS,
    "answer": LOOKERS,
    "photo": LOOKERS,
    "signoff": LOOKERS,
    "lot": LOOKERS,
    "mark": ("foreman", "inspector"),
    "stop": ("foreman", "inspector"),
    "release": ("administrator", "foreman", "inspector"),
    # What is not accepted is not for those who made it, or found it, to put right by a word.
    "disposition": ("administrator", "engineer"),
    "finding": ("foreman", "inspector", "reviewer", "administrator", "engineer"),
    "assignment": ("administrator", "inspector", "foreman"),
    "correction": ("administrator", "inspector", "foreman"),
    "recheck": ("administrator", "inspector", "foreman"),  # never their own correction: the fold looks
    "reopening": ("foreman", "inspector", "reviewer", "administrator", "engineer", "owner"),
    "concession": ("engineer", "administrator"),
    "day": ("administrator", "foreman", "inspector"),
    "admission": ("administrator",),
    "survey": ("inspector", "reviewer", "administrator", "engineer"),
}


def objection(entry: dict, people: dict) -> str:
    """The reason why this entry's author may not say it, as a flag code; empty when they may.

    ``people`` maps a person id to ``{"name", "role", "kids": [...]}``.
    """
    payload = entry["payload"]
    person = people.get(payload.get("by"))
    if person is None:
        return "unknown_person"
    if entry["kid"] not in person["kids"]:
        return "wrong_key"
    if person["role"] not in MAY.get(payload["kind"], ()):
        return "no_authority"
    return ""


def may_replace(newer: dict, older: dict, people: dict) -> bool:
    """Whether ``newer`` supersedes ``older``: its own author may correct it, an inspector or an administrator
    may pick between versions. Anyone else's version stands beside it, so that nobody can hide a finding
    made by another."""
    if newer["payload"]["by"] == older["payload"]["by"]:
        return True
    person = people.get(newer["payload"]["by"])
    return person is not None and person["role"] in ("inspector", "administrator")
