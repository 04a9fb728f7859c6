"""A hand-made record of an invented job, as the fold gives it: two areas, four places, one failure, one photo
that never arrived. Every name, number of approval and reading is made up."""

import hashlib
import io
from pathlib import Path
from typing import Any

from PIL import Image, ImageDraw

ZONE = "-05:00"
FOREMAN, INSPECTOR, KEY = "p-foreman", "p-inspector", "K" * 43
PEOPLE = {
    FOREMAN: {"name": "Tomas Ridgeway (invented)", "role": "foreman", "kids": [KEY]},
    INSPECTOR: {"name": "Mara Plumb (invented)", "role": "inspector", "kids": ["M" * 43]},
}
OPTIONS = {"language": "en", "units": "US", "paper": "letter", "issued": "2026-11-25T18:05:00.000-05:00",
           "number": 1, "final": False, "issuer": "Gannet Sheet Metal (invented)"}  # fmt: skip


def q(value: str, unit: str) -> dict[str, str]:
    return {"value": value, "unit": unit}


def digest(text: str) -> str:
    return (hashlib.sha256(text.encode()).hexdigest() + "A" * 43)[:43]


def base(identity: str, minute: int = 0, by: str = FOREMAN) -> dict[str, Any]:
    at = f"2026-11-25T16:{minute:02d}:05.120{ZONE}"
    return {"id": identity, "digest": digest(identity), "by": by, "at": at, "heads": [digest(identity)],
            "clock": {"monotonic": 1, "server": None, "age": None, "zone": "America/New_York"}}  # fmt: skip


def both(en: str, es: str) -> dict[str, str]:
    return {"en": en, "es": es}


def item(name: str, en: str, es: str, **more: Any) -> dict[str, Any]:
    return {"id": name, "question": both(en, es), "why": both("Why.", "Por qué."), "how": both("Look.", "Mire."),
            "kind": "judge", "photo": "optional", "severity": "major", "instrument": None, "rule": None,
            "basis": both("approved assembly", "conjunto aprobado"), "basis_kind": "assembly"} | more  # fmt: skip


SLOT_INPUTS = {
    "expansion": "assembly.expansion", "metal_low": "job.metal_low", "metal_high": "job.metal_high",
    "metal_now": "walk.metal_temperature", "slot": "assembly.slot_length", "shank": "assembly.fastener_diameter",
    "station": "station.from_low_end", "fixed_line": "area.fixed_line.from_low_end",
    "length": "area.panel_length", "taps": "reading.taps",
}  # fmt: skip
FLANGE = {
    "id": "nail-flange", "version": 1, "title": both("Nail-flange fastening", "Fijación de aleta clavable"),
    "performed_by": ["foreman"], "applies": {"attachment": ["nail_flange"]}, "per": "station", "hold": True,
    "sampling": None, "items": [
        item("identity", "Is it the approved fastener?", "¿Es el tornillo aprobado?", severity="critical"),
        item("slot", "Where does the screw stand in its slot?", "¿Dónde está el tornillo en su ranura?",
             kind="measure", photo="required", instrument="slot_taps", rule={"name": "slot@1", "inputs": SLOT_INPUTS},
             basis=both("first principles: free movement", "primeros principios: movimiento libre"),
             basis_kind="first_principles"),
        item("spacing", "How far apart are the fasteners?", "¿A qué distancia están los tornillos?", kind="measure",
             severity="critical", instrument="gaps",
             rule={"name": "spacing@1", "inputs": {"gaps": "reading.gaps", "limit": "zone.spacing"}}),
        item("flat", "Is the flange flat?", "¿Está plana la aleta?", severity="minor", basis_kind="common_practice"),
    ]}  # fmt: skip
CLIP = {
    "id": "clip", "version": 1, "title": both("Clip fastening", "Fijación de clips"), "performed_by": ["foreman"],
    "applies": {"attachment": ["expansion_clip"]}, "per": "station", "hold": True, "sampling": None, "items": [
        item("tab", "Where does the tab stand?", "¿Dónde está la lengüeta?", kind="measure", instrument="number",
             rule={"name": "clip@1", "inputs": {"travel_outward": "assembly.clip_travel_outward",
                                                "travel_inward": "assembly.clip_travel_inward",
                                                "tab": "reading.value"}}),
    ]}  # fmt: skip
DAY = {
    "id": "end-of-day", "version": 1, "title": both("End-of-day walk", "Recorrido de fin de jornada"),
    "performed_by": ["foreman"], "applies": {}, "per": "walk", "hold": True, "sampling": None, "items": [
        item("loose", "Is anything loose?", "¿Hay algo suelto?", severity="critical", basis_kind="common_practice"),
        item("seal", "Is the roof closed for the night?", "¿Está cerrado el techo para la noche?"),
    ]}  # fmt: skip
DEFINITIONS = {digest("flange"): FLANGE, digest("clip"): CLIP, digest("day"): DAY}


def picture(tag: str, size: tuple[int, int] = (800, 600)) -> bytes:
    image = Image.new("RGB", size, "#9fb0b8")
    draw = ImageDraw.Draw(image)
    draw.rectangle((0, size[1] * 0.3, size[0], size[1] * 0.7), fill="#c4d0d6")
    draw.rounded_rectangle((size[0] * 0.3, size[1] * 0.45, size[0] * 0.7, size[1] * 0.55), 30, fill="#39454c")
    draw.text((20, 20), f"INVENTED {tag}", fill="black", font_size=40)
    out = io.BytesIO()
    image.save(out, "JPEG", quality=85)
    return out.getvalue()


PICTURES = {hashlib.sha256(data).hexdigest(): data for data in (
    picture("where 3"), picture("what 3"), picture("where 1", (600, 800)), picture("what 1"), picture("clip"))}
WHERE, WHAT, WHERE_1, WHAT_1, TAB = PICTURES
LOST = "f" * 64


def write_pictures(folder: Path) -> dict[str, Path]:
    for name, data in PICTURES.items():
        (folder / f"{name}.jpg").write_bytes(data)
    return {name: folder / f"{name}.jpg" for name in PICTURES}


def photos() -> dict[str, Any]:
    held = {
        name: {"held": True, "path": name, "copy": name, "size": len(data), "width": 800, "height": 600,
               "undecodable": None, "exif_time": "2026:11:25 16:20:05", "exif_offset": ZONE}
        for name, data in PICTURES.items()
    }  # fmt: skip
    held[WHAT] |= {"exif_time": "2026:11:25 15:02:11", "exif_offset": None}
    return held | {LOST: {"held": False, "path": None}}


def log() -> dict[str, Any]:
    return {"head_seq": 41, "head_receipt": digest("receipt"), "server_kid": "S" * 43,
            "fingerprint": "ab12" * 16,
            "keys": {KEY: {"count": 23, "head": digest("signoff"), "person": FOREMAN}}}  # fmt: skip


def record() -> dict[str, Any]:
    job = base("job") | {
        "name": "Ferry shed at Lower Quillon (invented)", "place": "Quay 3, Lower Quillon (no such place)",
        "units": "US", "language": "en", "paper": "letter", "invented": True, "metal_low": q("-20", "F"),
        "metal_high": q("180", "F"), "metal_range_source": "invented engineer's letter 14",
        "placing_error": q("0.125", "in"), "definitions": {"nail-flange": digest("flange")},
        "parties": [{"role": "contractor", "name": "Tidewrack Building (invented)"},
                    {"role": "installer", "name": "Gannet Sheet Metal, crew 2 (invented)"}],
    }  # fmt: skip
    things: dict[str, Any] = {
        "job": job, "assemblies": _assemblies(), "areas": _areas(), "walks": _walks(), "stations": _stations(),
        "answers": _answers(), "photos": _photos(), "flags": [],
        "chains": {KEY: {"count": 23, "head": digest("signoff"), "gaps": [], "forks": [], "orphans": []}},
    }  # fmt: skip
    things["findings"] = {
        key: {"id": key, "walk": "walk", "station": one["station"], "area": one["area"], "item": one["item"],
              "definition": one["definition"], "result": "fail", "state": "open"}
        for key, one in things["answers"].items() if one["result"] == "fail"
    }  # fmt: skip
    return things


def _assemblies() -> dict[str, Any]:
    shared = {
        "metal": "steel, aluminium-zinc coated, painted", "expansion": q("0.0000065", "/F"), "gauge": "24",
        "expansion_source": "AISC value for structural steel", "gauge_system": "MSG", "coating": "AZ50, painted",
        "fastener_head_diameter": q("0.46", "in"), "underlayment": "high-temperature self-adhered membrane",
    }  # fmt: skip
    flange = base("a-flange") | shared | {
        "name": "Snap-lock 1-1/2 in, nail flange", "panel": "invented profile SL-15", "seam": "snap_lock",
        "seam_height": q("1.5", "in"), "coverage": q("16", "in"), "attachment": "nail_flange",
        "slot_length": q("1", "in"), "slot_pitch": q("6", "in"), "fastener": "#10 pancake-head screw, 1 in",
        "fastener_diameter": q("0.190", "in"), "fastener_length": q("1", "in"), "deck": "5/8 in plywood",
        "minimum_slope": q("3", "/12"), "longest_run": q("40", "ft"),
        "zones": [{"name": "field", "spacing": q("12", "in"), "pressure": q("30", "psf")},
                  {"name": "edge", "spacing": q("6", "in"), "pressure": q("52", "psf")}],
        "approval": {"reference": "INV-2211 (invented)", "issued": "2025-03-01", "expires": "2028-03-01"},
    }  # fmt: skip
    clip = base("a-clip") | shared | {
        "name": "Double-lock 2 in, expansion clip", "panel": "invented profile DL-20", "seam": "double_lock",
        "seam_height": q("2", "in"), "coverage": q("18", "in"), "attachment": "expansion_clip",
        "clip": "invented two-piece clip XC-2", "clip_travel_outward": q("1", "in"),
        "clip_travel_inward": q("1", "in"), "fastener": "#12 pancake-head screw, 1-1/2 in", "fasteners_per_clip": 2,
        "fastener_diameter": q("0.216", "in"), "fastener_length": q("1.5", "in"), "deck": "22 ga steel deck",
        "minimum_slope": q("0.5", "/12"), "longest_run": q("120", "ft"),
        "zones": [{"name": "field", "spacing": q("24", "in"), "pressure": q("60", "psf")}],
        "approval": {"reference": "INV-2212 (invented)", "issued": "2025-03-01", "expires": "2028-03-01"},
    }  # fmt: skip
    return {"a-flange": flange, "a-clip": clip}


def _areas() -> dict[str, Any]:
    def outline(width: str, length: str) -> dict[str, Any]:
        return {"unit": "ft", "points": [["0", "0"], [width, "0"], [width, length], ["0", length]]}

    edges = ["eave", "rake", "ridge", "rake"]
    quay = base("quay") | {
        "name": "Quay slope", "assembly": "a-flange", "slope": q("4", "/12"), "outline": outline("64", "40"),
        "edges": edges, "start": "left", "coverage": q("16", "in"), "panel_length": q("40", "ft"), "panel_count": 48,
        "fixed_line": {"from_low_end": q("40", "ft"), "by": "ridge zee screwed through the pan", "fasteners": 3},
        "zones": ["field", "edge"],
    }  # fmt: skip
    yard = base("yard") | {
        "name": "Yard slope", "assembly": "a-clip", "slope": q("1", "/12"), "outline": outline("72", "100"),
        "edges": edges, "start": "right", "coverage": q("18", "in"), "panel_length": q("100", "ft"),
        "panel_count": 48, "zones": ["field"],
        "fixed_line": {"from_low_end": q("0", "ft"), "by": "fixed clips and eave cleat", "fasteners": 4},
    }  # fmt: skip
    return {"quay": quay, "yard": yard}


def _walks() -> dict[str, Any]:
    signoff = base("signoff", 52) | {
        "walk": "walk", "statement": "What is written here is what I saw on this roof on this day.",
        "name": "Tomas Ridgeway (invented)", "role": "foreman", "canvas": {"width": 600, "height": 200},
        "strokes": [[40, 150, 80, 40, 120, 150, 160, 60, 200, 150, 260, 90], [300, 120, 340, 60, 380, 140, 520, 70]],
        "covers": [digest("walk")], "uncovered": [],
    }  # fmt: skip
    walk = base("walk", 2) | {
        "definition": digest("day"), "areas": ["quay", "yard"], "crew": "crew 2", "head_count": 4,
        "weather": {"sky": "clear", "wind": "light", "air": q("52", "F")}, "metal_temperature": q("70", "F"),
        "metal_uncertainty": q("5", "dF"), "metal_temperature_by": "contact thermometer",
        "placed": [{"area": "quay", "from": 1, "to": 14}, {"area": "yard", "from": 1, "to": 9}],
        "fall_protection": "confirmed", "independent": False, "signoff": signoff,
        "stations": ["s1", "s2", "s3", "s4", "s5"], "answers": [], "photos": [WHERE, WHAT, WHERE_1, WHAT_1, TAB, LOST],
    }  # fmt: skip
    return {"walk": walk}


def _stations() -> dict[str, Any]:
    def station(key: str, area: str, panel: int, at: str, minute: int, **more: Any) -> dict[str, Any]:
        return base(key, minute) | {"walk": "walk", "area": area, "panel": panel, "from_low_end": q(at, "ft"),
                                    "zone": "field", "chosen": "hand", "reached": "yes"} | more  # fmt: skip

    made = [
        station("s1", "quay", 3, "10", 10), station("s2", "quay", 9, "2", 16, zone="edge"),
        station("s3", "quay", 14, "28.5", 20), station("s4", "yard", 6, "64", 30),
        station("s5", "yard", 9, "98", 36, reached="unsafe"),
    ]  # fmt: skip
    return {one["id"]: one for one in made}


def answer(station: str | None, definition: str, name: str, result: str, minute: int, **more: Any) -> dict[str, Any]:
    subject = f"{station or 'walk'}/{definition}/{name}"
    area = {None: None, "s1": "quay", "s2": "quay", "s3": "quay"}.get(station, "yard")
    verdict = more.pop("verdict", {"result": result, "rule": None, "rulebook": "R" * 43, "reason": None,
                                   "inputs": {}, "values": {}})  # fmt: skip
    return base(subject, minute) | {
        "walk": "walk", "station": station, "area": area, "item": name, "result": result, "note": "", "photos": [],
        "definition": digest({"nail-flange": "flange", "clip": "clip", "end-of-day": "day"}[definition]),
        "choice": result if result in ("pass", "fail") else None, "reading": None, "verdict": verdict,
        "versions": [{"digest": digest(subject), "by": FOREMAN, "at": "2026-11-25T16:10:05.120-05:00",
                      "result": result}],
    } | more  # fmt: skip


def slot_verdict(result: str, offset: str, code: str | None = None, station: str = "10") -> dict[str, Any]:
    values = {"offset": offset, "bound": "0.0412", "low": "-0.1476", "high": "0.1944", "aim": "0.0234"}
    return {
        "result": result, "rule": "slot@1", "rulebook": "R" * 43,
        "reason": {"code": code, "facts": {}} if code else None,
        "inputs": {"expansion": q("0.0000065", "/F"), "metal_low": q("-20", "F"), "metal_high": q("180", "F"),
                   "metal_now": q("70", "F"), "slot": q("1", "in"), "shank": q("0.190", "in"),
                   "station": q(station, "ft"), "fixed_line": q("40", "ft"), "length": q("40", "ft"),
                   "taps": {"ridge_end": [412, 300], "eave_end": [1012, 302], "screw": [735, 301]}},
        "values": {name: q(value, "in") for name, value in values.items()},
    }  # fmt: skip


def _answers() -> dict[str, Any]:
    gaps = [q("11.5", "in"), q("12", "in"), q("11.75", "in"), q("12.25", "in"), q("12", "in")]
    clip_inputs = {"expansion": q("0.0000065", "/F"), "metal_low": q("-20", "F"), "metal_high": q("180", "F"),
                   "metal_now": q("70", "F"), "travel_outward": q("1", "in"), "travel_inward": q("1", "in"),
                   "tab": q("0.25", "in"), "station": q("64", "ft"), "fixed_line": q("0", "ft"),
                   "length": q("100", "ft")}  # fmt: skip
    clip_values = {"low": "-0.55072", "high": "0.45088", "aim": "-0.04992", "grow": "0.54912", "shrink": "0.44928",
                   "offset": "0.25"}  # fmt: skip
    made = [
        answer("s1", "nail-flange", "identity", "pass", 10),
        answer("s1", "nail-flange", "slot", "pass", 11, photos=[WHERE_1, WHAT_1],
               reading={"instrument": "slot_taps"}, verdict=slot_verdict("pass", "0.0383")),
        answer("s1", "nail-flange", "flat", "pass", 12),
        answer("s2", "nail-flange", "spacing", "fail", 16, reading={"gaps": gaps},
               note="Two gaps opened by a knot in the deck; the crew was told at once.",
               verdict={"result": "fail", "rule": "spacing@1", "rulebook": "R" * 43,
                        "reason": {"code": "over_limit", "facts": {"gap": q("12.25", "in")}},
                        "inputs": {"gaps": gaps, "limit": q("12", "in")},
                        "values": {"longest": q("12.25", "in"), "mean": q("11.9", "in"), "limit": q("12", "in")}}),
        answer("s3", "nail-flange", "slot", "fail", 20, photos=[WHERE, WHAT, LOST],
               reading={"instrument": "slot_taps"}, note="Screw at the ridge end of its slot.",
               verdict=slot_verdict("fail", "-0.2871", "outside", "28.5")),
        answer("s4", "clip", "tab", "pass", 30, photos=[TAB], reading={"value": q("0.25", "in")},
               verdict={"result": "pass", "rule": "clip@1", "rulebook": "R" * 43, "reason": None,
                        "inputs": clip_inputs, "values": {k: q(v, "in") for k, v in clip_values.items()}}),
        answer(None, "end-of-day", "loose", "pass", 40),
        answer(None, "end-of-day", "seal", "not_determinable", 41, choice="not_determinable",
               note="The last lap was already covered by the ridge cap."),
    ]  # fmt: skip
    return {one["id"]: one for one in made}


def _photos() -> dict[str, Any]:
    def photo(sha256: str, station: str, item_: str, role: str, minute: int) -> dict[str, Any]:
        return base(sha256, minute) | {
            "walk": "walk", "station": station, "answer": f"{station}/{item_}", "role": role, "sha256": sha256,
            "size": 4_070_000, "type": "image/jpeg", "source": "camera", "width": 4032, "height": 3024,
            "position": None,
        }  # fmt: skip

    made = [
        photo(WHERE, "s3", "nail-flange/slot", "where", 20), photo(WHAT, "s3", "nail-flange/slot", "what", 20),
        photo(WHERE_1, "s1", "nail-flange/slot", "where", 20), photo(WHAT_1, "s1", "nail-flange/slot", "what", 20),
        photo(TAB, "s4", "clip/tab", "what", 20), photo(LOST, "s3", "nail-flange/slot", "other", 21),
    ]  # fmt: skip
    return {one["id"]: one for one in made}
