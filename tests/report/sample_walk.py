"""The invented walk: its day, its places, its photos, its signature."""

from typing import Any

from tests.report.sample_ground import base, digest, q
from tests.report.sample_pictures import LOST, TAB, WHAT, WHAT_1, WHERE, WHERE_1


def walks() -> dict[str, Any]:
    signoff = base("signoff", 52) | {
        "walk": "walk",
        "statement": "What is written here is what I saw on this roof on this day.",
        "name": "Tomas Ridgeway (invented)",
        "role": "foreman",
        "canvas": {"width": 600, "height": 200},
        "strokes": [
            [40, 150, 80, 40, 120, 150, 160, 60, 200, 150, 260, 90],
            [300, 120, 340, 60, 380, 140, 520, 70],
        ],
        "covers": [digest("walk")],
        "uncovered": [],
    }
    walk = base("walk", 2) | {
        "definition": digest("day"),
        "areas": ["quay", "yard"],
        "crew": "crew 2",
        "head_count": 4,
        "weather": {"sky": "clear", "wind": "light", "air": q("52", "F")},
        "metal_temperature": q("70", "F"),
        "metal_uncertainty": q("5", "dF"),
        "metal_temperature_by": "contact thermometer",
        "placed": [{"area": "quay", "from": 1, "to": 14}, {"area": "yard", "from": 1, "to": 9}],
        "fall_protection": "confirmed",
        "independent": False,
        "signoff": signoff,
        "stations": ["s1", "s2", "s3", "s4", "s5"],
        "answers": [],
        "photos": [WHERE, WHAT, WHERE_1, WHAT_1, TAB, LOST],
    }
    return {"walk": walk}


def stations() -> dict[str, Any]:
    def station(key: str, area: str, panel: int, at: str, minute: int, **more: Any) -> dict[str, Any]:
        return base(key, minute) | {"walk": "walk", "area": area, "panel": panel, "from_low_end": q(at, "ft"),
                                    "zone": "field", "chosen": "hand", "reached": "yes"} | more  # fmt: skip

    made = [
        station("s1", "quay", 3, "10", 10), station("s2", "quay", 9, "2", 16, zone="edge"),
        station("s3", "quay", 14, "28.5", 20), station("s4", "yard", 6, "64", 30),
        station("s5", "yard", 9, "98", 36, reached="unsafe"),
    ]  # fmt: skip
    return {one["id"]: one for one in made}


def photo_entries() -> dict[str, Any]:
    def photo(sha256: str, station: str, item_: str, role: str, minute: int) -> dict[str, Any]:
        return base(sha256, minute) | {
            "walk": "walk",
            "station": station,
            "answer": f"{station}/{item_}",
            "role": role,
            "sha256": sha256,
            "size": 4_070_000,
            "type": "image/jpeg",
            "source": "camera",
            "width": 4032,
            "height": 3024,
            "position": None,
        }

    made = [
        photo(WHERE, "s3", "nail-flange/slot", "where", 20),
        photo(WHAT, "s3", "nail-flange/slot", "what", 20),
        photo(WHERE_1, "s1", "nail-flange/slot", "where", 20),
        photo(WHAT_1, "s1", "nail-flange/slot", "what", 20),
        photo(TAB, "s4", "clip/tab", "what", 20),
        photo(LOST, "s3", "nail-flange/slot", "other", 21),
    ]
    return {one["id"]: one for one in made}
