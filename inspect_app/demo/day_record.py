"""What the invented foreman writes of each day: what came, what was used, what was said, and a day of rain."""

from datetime import datetime
from typing import Any

from inspect_app.demo import picture
from inspect_app.demo.phone import Phone
from inspect_app.demo.walk import Walk

STATEMENT = "I wrote this record of the day. As far as I know it is complete and correct."
IDLE = "No work was done on the roof by this crew that day. As far as I know this is correct."
NOTHING: dict[str, Any] = {
    "head_count": None, "no_work": None, "weather": [], "work": "", "materials": [], "equipment": [],
    "submittals": "none", "offsite": "none", "instructions": [{"by": "", "said": "none"}],
    "delays": [{"why": "none", "hours": ""}], "safety": "lines; ladders",
    "tied_down": "loose_panels; bundles; tools", "photos": [],
}  # fmt: skip
COIL = {"what": "coil", "quantity": "2 coils", "accepted": "accepted", "stored": "dry", "gauge": "24",
        "gauge_system": "MSG", "coating": "AZ50, painted", "coil": "K-2417 (invented)",
        "maker": "Puffin Coil (invented)"}  # fmt: skip
LIGHTER = {**COIL, "quantity": "1 coil", "accepted": "set_aside", "stored": "covered", "gauge": "26",
           "coil": "K-2604 (invented)"}  # fmt: skip
SCREWS = {"what": "fasteners", "quantity": "6 boxes", "accepted": "accepted", "stored": "dry",
          "lot": "F-88 (invented)"}  # fmt: skip
DRIVER = {"what": "driver", "operator": "Rolf Batten (invented)", "setting": "clutch 6", "hours": "7"}
FORMER = {"what": "roll_former", "operator": "Nell Hemming (invented)", "setting": "16 in coverage", "hours": "5"}
SEAMER = {"what": "seamer", "operator": "Nell Hemming (invented)", "setting": "die for 2 in, two passes", "hours": "4"}
# Days before the last evening: what was told of each; the label is photographed where it says something.
TOLD: dict[int, dict[str, Any]] = {
    4: {"materials": [COIL, SCREWS], "equipment": [DRIVER, FORMER], "work": "Eave cleat and starter strip first."},
    3: {"equipment": [DRIVER, FORMER], "delays": [{"why": "wind", "hours": "1"}],
        "instructions": [{"by": "Ines Ledger (invented)", "said": "Clutch back to 4; open the seams beside it."}]},
    2: {"materials": [LIGHTER], "equipment": [{**DRIVER, "setting": "clutch 4"}, FORMER],
        "instructions": [{"by": "Ines Ledger (invented)", "said": "Coil K-2604 is too light: it goes back."}],
        "work": "Five panels of the ferry slope drawn anew; quay slope begun."},
    1: {"equipment": [DRIVER, SEAMER], "submittals": "Trial seam of the morning held to the approved one: the same.",
        "work": "Seams of the day folded."},
    0: {"equipment": [{**DRIVER, "setting": "clutch 4"}, FORMER], "safety": "lines; ladders; talk",
        "work": "Quay slope to panel 32; its edge stays open for the engineer."},
}  # fmt: skip


def write_day(walk: Walk, crew: str, ago: int) -> None:
    """The record of one crew's day, at its end."""
    phone, job, day = walk.phone, walk.job["id"], walk.clock().date().isoformat()
    walk.clock.advance(minutes=2)
    told = {**NOTHING, **TOLD.get(ago, {}), "head_count": 4}
    told["materials"] = [{**row, "photos": _labels(phone, job, row, walk.clock())} for row in told["materials"]]
    told["weather"] = [
        {"at": "07:00", "sky": "clear", "wind": "calm", "metal": {"value": "58", "unit": "F"}, "metal_by": "contact"},
        {"at": "13:00", "sky": "clouds", "wind": "gusts" if ago == 3 else "breeze"},
    ]  # fmt: skip
    phone.say(job, "day", phone.new_id(), {**told, "day": day, "crew": crew, "statement": STATEMENT, **_by(phone)})


def write_rain(phone: Phone, job: str, crews: list[str], day: datetime) -> None:
    """A day on which nobody of these crews worked."""
    for crew in crews:
        phone.say(job, "day", phone.new_id(), {
            **NOTHING, "day": day.date().isoformat(), "crew": crew, "no_work": "rain", "submittals": "", "offsite": "",
            "instructions": [], "delays": [], "safety": "", "tied_down": "", "statement": IDLE, **_by(phone),
            "weather": [{"at": "07:00", "sky": "wet", "wind": "gusts"}],
        })  # fmt: skip


def _labels(phone: Phone, job: str, row: dict[str, Any], taken: datetime) -> list[str]:
    if row["what"] != "coil":
        return []
    lines = [row["maker"], f"COIL {row['coil']}", f"GAUGE {row['gauge']} {row['gauge_system']}", row["coating"]]
    return [phone.keep_photo(job, picture.smaller(picture.label(lines, "label of a coil", taken)))]


def _by(phone: Phone) -> dict[str, str]:
    return {"name": phone.person["name"], "role": phone.person["role"]}
