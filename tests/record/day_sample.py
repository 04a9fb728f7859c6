"""A crew's days with what people wrote of them, in memory. Invented."""

from typing import Any

from tests.bodies import body_of
from tests.record.rhythm_sample import FOREMAN, LEAD, Site

DAY = "2026-11-25"
COIL = {"what": "coil", "quantity": "2", "accepted": "accepted", "stored": "dry", "photos": [], "gauge": "24",
        "gauge_system": "MSG", "coating": "AZ50, painted"}  # fmt: skip
NOTHING = {
    "head_count": None, "no_work": None, "weather": [], "work": "", "materials": [], "equipment": [], "submittals": "",
    "offsite": "", "instructions": [], "delays": [], "safety": "", "tied_down": "", "photos": [],
}  # fmt: skip


def written(**changed: Any) -> dict[str, Any]:
    """A day's record that tells nothing but its day and crew, unless ``changed``."""
    return {**body_of("day"), **NOTHING, "day": DAY, "crew": "2", **changed}


def say_day(site: Site, kid: str = FOREMAN, subject: str | None = None, replaces: tuple[str, ...] = (),
            **changed: Any) -> str:  # fmt: skip
    return site.say(kid, "day", subject or site.new_id(), written(**changed), replaces)


def with_assembly(site: Site, **changed: Any) -> Site:
    """The site, its approved assembly another."""
    body = {**body_of("assembly"), "gauge": "24", "gauge_system": "MSG", "coating": "AZ50, painted", **changed}
    for name in [name for name, value in body.items() if value is None]:
        del body[name]
    site.assembly = site.say(LEAD, "assembly", "assembly", body, (site.assembly,))
    return site


def of(record: dict[str, Any], day: str = DAY, crew: str = "2") -> dict[str, Any]:
    """The one day of that crew."""
    (found,) = [one for one in record["days"] if one["day"] == day and crew in one["crews"]]
    assert isinstance(found, dict)
    return found
