"""One invented payload of every kind, for ``make_entries.py``."""

import copy
from typing import Any

from inspect_app.entry.base64url import encode
from inspect_app.entry.uuid7 import uuid7


def uuid(number: int) -> str:
    return uuid7(1795642805120 + number, bytes([number]) * 10)


JOB, STATION, WALK, AREA, ASSEMBLY = (uuid(number) for number in (2, 3, 4, 5, 6))
SHA256 = "0f" * 32
DIGEST = encode(bytes(range(32)))
LOT = "/".join((DIGEST, "work", "4"))


def q(value: str, unit: str) -> dict[str, str]:
    return {"value": value, "unit": unit}


FINDING = uuid(10)
_BY = {"name": "Ada Ejemplo (invented)", "role": "inspector"}
_VERDICT = {"result": "pass", "rule": "limit@2", "rulebook": DIGEST, "reason": None, "inputs": {}, "values": {}}
FINDINGS: dict[str, tuple[str, dict[str, Any]]] = {
    "finding": (
        FINDING,
        {
            "walk": WALK, "area": AREA, "severity": "critical", "required": "a screw in each slot", "found": "none",
            "photos": [SHA256], "panel": 7, "from_low_end": q("12.5", "ft"), "station": STATION, **_BY,
        },
    ),
    "assignment": (
        FINDING,
        {
            "finding": FINDING, "firm": "Invented sub", "crew": "2", "by_day": "2026-11-26", "note": "",
            "cause": {"code": "driver_setting", "words": "clutch at 9"}, **_BY,
        },
    ),
    "correction": (
        uuid(11),
        {
            "finding": FINDING, "walk": None, "done": "screw set", "photos": [SHA256],
            "reading": {"value": q("1", "in")}, "verdict": _VERDICT, **_BY,
        },
    ),
    "recheck": (
        uuid(12),
        {
            "finding": FINDING, "correction": DIGEST, "result": "good", "walk": WALK, "photos": [SHA256], "note": "",
            "reading": None, "verdict": None, **_BY,
        },
    ),
    "reopening": (uuid(13), {"finding": FINDING, "of": [DIGEST], "reason": "it came loose", "photos": [], **_BY}),
    "concession": (
        FINDING,
        {"finding": FINDING, "reason": "enough there", "document": SHA256, "reference": "invented letter 4", **_BY},
    ),
}  # fmt: skip

BODIES: dict[str, tuple[str, dict[str, Any]]] = {
    "job": (
        JOB,
        {
            "name": "Boathouse (invented)", "place": "No such quay", "units": "US", "language": "en",
            "paper": "letter", "invented": True, "metal_low": q("-20", "F"), "metal_high": q("180", "F"),
            "metal_range_source": "invented", "placing_error": q("0.125", "in"),
            "parties": [{"role": "installer", "name": "Invented crew"}],
            "definitions": {"nail_flange": DIGEST},
        },
    ),
    "assembly": (
        ASSEMBLY,
        {
            "name": "Nail flange", "panel": "invented", "seam": "snap_lock", "seam_height": q("1.5", "in"),
            "coverage": q("16", "in"), "metal": "steel", "expansion": q("6.5e-6", "/F"),
            "expansion_source": "invented", "gauge": "24", "gauge_system": "MSG", "coating": "AZ50",
            "attachment": "nail_flange", "slot_length": q("1", "in"), "fastener": "screw",
            "fastener_diameter": q("0.190", "in"), "deck": "plywood", "underlayment": "membrane",
            "zones": [{"name": "field", "spacing": q("12", "in"), "pressure": q("30", "psf")}],
            "minimum_slope": q("3", "/12"), "longest_run": q("40", "ft"), "clip": None,
            "approval": {"reference": "invented", "issued": "2025-03-01", "expires": "2028-03-01"},
        },
    ),
    "area": (
        AREA,
        {
            "name": "Quay slope", "assembly": ASSEMBLY, "slope": q("4", "/12"), "start": "left",
            "outline": {"unit": "ft", "points": [["0", "0"], ["64", "0"], ["64", "40"], ["0", "40"]]},
            "edges": ["eave", "rake", "ridge", "rake"], "coverage": q("16", "in"), "fixed_line": None,
            "zones": ["field"],
        },
    ),
    "walk": (
        WALK,
        {
            "definition": DIGEST, "areas": [AREA], "crew": "2", "weather": {"sky": "clear", "wind": "light"},
            "metal_temperature": q("70", "F"), "metal_uncertainty": q("3", "dF"),
            "metal_temperature_by": "contact probe", "placed": [{"area": AREA, "from": 0, "to": 11}],
            "fall_protection": "confirmed", "independent": False,
        },
    ),
    "station": (
        STATION,
        {
            "walk": WALK, "area": AREA, "panel": 7, "from_low_end": q("12.5", "ft"), "zone": "field",
            "chosen": "hand", "reached": "yes",
        },
    ),
    "answer": (
        f"{STATION}/nail_flange/screw_centred",
        {
            "walk": WALK, "station": STATION, "area": AREA, "definition": DIGEST, "item": "screw_centred",
            "choice": None, "note": "", "photos": [SHA256],
            "reading": {"taps": {"ridge_end": [812, 40], "eave_end": [815, 990], "screw": [809, 520]}},
            "verdict": {
                "result": "pass", "rule": "slot@1", "rulebook": DIGEST, "reason": None, "inputs": {},
                "values": {"offset": q("0.02", "in")},
            },
        },
    ),
    "photo": (
        SHA256,
        {
            "walk": WALK, "station": STATION, "answer": None, "role": "what", "sha256": SHA256, "size": 4096,
            "type": "image/jpeg", "source": "camera",
            "position": {"latitude": "44.1", "longitude": "-68.2", "accuracy": "12"},
        },
    ),
    "signoff": (
        WALK,
        {
            "walk": WALK, "statement": "This is what I saw.", "name": "Ada Ejemplo (invented)",
            "role": "foreman", "strokes": [[1, 2, 3, 4]], "canvas": {"width": 320, "height": 120},
            "covers": [DIGEST],
        },
    ),
    "fit": (
        AREA,
        {
            "area": AREA, "day": "2026-11-25", "name": "Ada Ejemplo (invented)", "role": "inspector", "note": "",
            "found": {"slope": q("4", "/12"), "slope_by": "level", "deck": "as_approved", "fixed_lines": 1},
            "lines": [
                {
                    "line": "slope",
                    "verdict": {
                        "result": "pass", "rule": "slope@2", "rulebook": DIGEST, "reason": None, "inputs": {},
                        "values": {"rise": q("4", "/12")},
                    },
                }
            ],
        },
    ),
    "lot": (
        LOT,
        {
            "purpose": "work", "crew": "2", "day": "2026-11-25", "size": 32, "population_digest": DIGEST,
            "population": [{"area": AREA, "from": 1, "to": 32, "area_entry": DIGEST, "assembly_entry": DIGEST}],
            "ticket": {"series": "work", "n": 4, "random": DIGEST, "statement": "an invented statement"},
            "inspection": "normal", "n": 5, "places": 3, "night_places": 5, "placements": [],
            "plans": {
                "critical": {"n": 5, "accept": 0},
                "major": {"level": "S-4", "aql": "2.5", "letter": "C", "n": 5, "accept": 0, "reject": 1},
                "minor": {"level": "S-4", "aql": "10", "letter": "C", "n": 5, "accept": 1, "reject": 2},
            },
            "asks": {"critical": ["nail_flange/screw_centred"], "major": [], "minor": []},
        },
    ),
    "mark": (
        uuid(9),
        {
            "lot": LOT, "area": AREA, "to": 16, "metal_temperature": q("74", "F"),
            "metal_temperature_by": "contact", "metal_uncertainty": q("4", "dF"), "change": ["coil"], "night": False,
            "against": [16],
        },
    ),
    "stop": (f"{LOT}/17", {"lot": LOT, "area": AREA, "panel": 17, "outcome": "not_attended", "note": ""}),
    "release": (
        f"{LOT}/1/first",
        {
            "lot": LOT, "area": AREA, "panel": 1, "why": "first", "way": None, "walk": WALK,
            "statement": "I looked at the whole open leg.", "name": "Ada Ejemplo (invented)", "role": "foreman",
        },
    ),
    "disposition": (
        LOT,
        {
            "lot": LOT, "choice": "accept", "reason": "invented", "document": SHA256, "reference": "invented letter 3",
            "name": "Ines Ejemplo (invented)", "role": "administrator",
        },
    ),
    **FINDINGS,
    "day": (
        uuid(16),
        {
            "day": "2026-11-25", "crew": "2", "head_count": 4, "no_work": None, "work": "Panels 1 to 32 of Quay slope",
            "weather": [{"at": "07:30", "sky": "clear", "wind": "light", "air": q("41", "F"), "metal": q("38", "F"),
                         "metal_by": "contact"}],
            "materials": [{"what": "Panels", "quantity": "32", "accepted": "yes", "stored": "dry", "photos": [SHA256],
                           "gauge": 24, "gauge_system": "MSG", "coating": "AZ50", "coil": "C-17", "maker": "invented"}],
            "equipment": [{"what": "screw gun", "operator": "Ada", "setting": "clutch 6", "hours": "8"}],
            "submittals": "", "offsite": "", "instructions": [{"by": "Ines", "said": "Stop at the valley"}],
            "delays": [{"why": "dew", "hours": "1"}], "safety": "tied off", "tied_down": "two bundles", "photos": [],
            "statement": "Complete and correct.", "name": "Ada Ejemplo (invented)", "role": "foreman",
        },
    ),
    "admission": (
        DIGEST,
        {"entry": DIGEST, "reason": "a lost phone", "name": "Ines Ejemplo (invented)", "role": "administrator"},
    ),
    "survey": (
        uuid(17),
        {
            "area": AREA, "panel": 7, "from_low_end": q("12.5", "ft"), "radius": q("6", "ft"),
            "warranty": {"shown": "shown", "number": "invented 12", "by": "Invented maker", "terms": "20 years, finish",
                         "from": "2026-12-18", "until": "2046-12-18"},
            "substitutions": [{"what": "clip", "agreed_by": "nobody asked", "document": SHA256}],
            "event": {"what": "wind", "day": "2031-03-02", "figures": "gust of 71 mph", "source": "invented station"},
            "noticed": {"day": "2031-03-03", "by": "the owner", "said": "a seam stands open"},
            "changed": "yes",
            "changes": [{"what": "equipment", "day": None, "by": "the owner", "said": "two condensers"}],
            "samples": [{"bag": "7", "what": "one clip", "day": "2031-04-11", "taken_by": "Ada", "photos": [SHA256],
                         "custody": [{"day": "2031-04-11", "from": "Ada", "to": "the owner", "kept": "locked"}]}],
            "wear": {"length": q("0.5", "in"), "uncertainty": q("0.06", "in"), "by": "rule", "photos": [],
                     "verdict": _VERDICT},
            "photos": [], "note": "", "statement": "As I found it.", "name": "Ada Ejemplo (invented)",
            "role": "reviewer",
        },
    ),
}  # fmt: skip

DRAWN = {
    "outline": {
        "unit": "ft", "points": [["0", "0"], ["64", "0"], ["40", "40"], ["0", "40"]],
        "lengths": ["64", None, None, "40"],
    },
    "edges": ["eave", "hip", "ridge", "wall"],
    "openings": [
        {"name": "curb", "outline": {"unit": "in", "points": [["96", "96"], ["144", "96"], ["144", "120.5"]]}},
    ],
    "place": {"unit": "m", "east": "-12.5", "north": "3", "up": "292.5"},
    "fixed_line": {"from_low_end": q("40", "ft"), "by": "hip cleat", "fasteners": 3, "end": "high"},
    "zones": ["field", "edge"],
    "zone_map": {
        "state": "redrawn", "by": "Ada Ejemplo (invented), engineer", "standard": "invented edition", "basis": "ASD",
        "widths": {"eave": q("4", "ft"), "penetration": q("600", "mm")}, "names": {"corner": "edge"},
        "drawn": [
            {"zone": "edge", "outline": {"unit": "ft", "points": [["0", "30"], ["9", "30"], ["9", "40"], ["0", "40"]]}},
        ],
    },
}  # fmt: skip

WILD = (
    "Ñandú 屋根 🏠 e\u0301 \u202eright to left\u202c \u2028 \ufeff \ufffe "
    "\"\\/\b\f\n\r\t \x1f\x7f __proto__ </script>"
)


def payloads() -> list[tuple[str, dict[str, Any]]]:
    """``(name, payload)``: every kind by its name, then what is unusual and allowed."""
    rows = [(kind, _payload(kind, subject, body)) for kind, (subject, body) in BODIES.items()]
    station = dict(rows)["station"]
    first = station | {"seq": 0, "prev": None}
    body = station["body"]
    future = station | {"mood": {"sun": [True, None, 3]}, "body": body | {"tilt": q("1", "parsec")}}
    wild = station | {"build": WILD, "body": body | {"zone": WILD, WILD: WILD, "__proto__": {"a": 1}}}
    late = station | {"at": "2049-12-31T23:59:59.999+14:00", "replaces": [DIGEST, encode(bytes(32))]}
    drawn = dict(rows)["area"]
    drawn = drawn | {"body": drawn["body"] | DRAWN}
    metres = station | {"body": body | {"from_low_end": q("-3.81", "m")}}
    walk_answer = copy.deepcopy(dict(rows)["answer"]) | {"subject": f"{WALK}/nail_flange/screw_centred"}
    walk_answer["body"] |= {"station": None, "area": None, "choice": "pass", "reading": None}
    return [
        *rows,
        ("the first of its chain", first),
        ("members of a later release", future),
        ("wild text", wild),
        ("a clock that is years off", late),
        ("metres, below the low end", metres),
        ("an area with an opening, a place on the plan and a zone map", drawn),
        ("an answer of the whole walk", walk_answer),
    ]


def _payload(kind: str, subject: str, body: dict[str, Any]) -> dict[str, Any]:
    return {
        "v": 1, "id": uuid(1), "kind": kind, "job": JOB, "subject": subject, "replaces": [],
        "at": "2026-11-25T16:40:05.120-05:00",
        "clock": {"monotonic": 81234, "server": None, "age": None, "zone": "America/New_York"},
        "seq": 3, "prev": DIGEST, "by": "ada", "build": "1", "body": body,
    }  # fmt: skip
