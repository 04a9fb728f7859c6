"""Three invented checklists, compiled."""

from typing import Any

from tests.report.sample_ground import digest


def both(en: str, es: str) -> dict[str, str]:
    return {"en": en, "es": es}


def item(name: str, en: str, es: str, **more: Any) -> dict[str, Any]:
    return {
        "id": name,
        "question": both(en, es),
        "why": both("Why.", "Por qué."),
        "how": both("Look.", "Mire."),
        "kind": "judge",
        "photo": "optional",
        "severity": "major",
        "instrument": None,
        "rule": None,
        "basis": both("approved assembly", "conjunto aprobado"),
        "basis_kind": "assembly",
    } | more


SLOT_INPUTS = {
    "expansion": "assembly.expansion",
    "metal_low": "job.metal_low",
    "metal_high": "job.metal_high",
    "metal_now": "walk.metal_temperature",
    "slot": "assembly.slot_length",
    "shank": "assembly.fastener_diameter",
    "station": "station.from_low_end",
    "fixed_line": "area.fixed_line.from_low_end",
    "length": "area.panel_length",
    "taps": "reading.taps",
}
FLANGE = {
    "id": "nail-flange",
    "version": 1,
    "title": both("Nail-flange fastening", "Fijación de aleta clavable"),
    "performed_by": ["foreman"],
    "applies": {"attachment": ["nail_flange"]},
    "per": "station",
    "hold": True,
    "sampling": None,
    "items": [
        item("identity", "Is it the approved fastener?", "¿Es el tornillo aprobado?", severity="critical"),
        item(
            "slot",
            "Where does the screw stand in its slot?",
            "¿Dónde está el tornillo en su ranura?",
            kind="measure",
            photo="required",
            instrument="slot_taps",
            rule={"name": "slot@1", "inputs": SLOT_INPUTS},
            basis=both("first principles: free movement", "primeros principios: movimiento libre"),
            basis_kind="first_principles",
        ),
        item(
            "spacing",
            "How far apart are the fasteners?",
            "¿A qué distancia están los tornillos?",
            kind="measure",
            severity="critical",
            instrument="gaps",
            rule={"name": "spacing@1", "inputs": {"gaps": "reading.gaps", "limit": "zone.spacing"}},
        ),
        item(
            "flat",
            "Is the flange flat?",
            "¿Está plana la aleta?",
            severity="minor",
            basis_kind="common_practice",
        ),
    ],
}
CLIP = {
    "id": "clip",
    "version": 1,
    "title": both("Clip fastening", "Fijación de clips"),
    "performed_by": ["foreman"],
    "applies": {"attachment": ["expansion_clip"]},
    "per": "station",
    "hold": True,
    "sampling": None,
    "items": [
        item(
            "tab",
            "Where does the tab stand?",
            "¿Dónde está la lengüeta?",
            kind="measure",
            instrument="number",
            rule={
                "name": "clip@1",
                "inputs": {
                    "travel_outward": "assembly.clip_travel_outward",
                    "travel_inward": "assembly.clip_travel_inward",
                    "tab": "reading.value",
                },
            },
        ),
    ],
}
DAY = {
    "id": "end-of-day",
    "version": 1,
    "title": both("End-of-day walk", "Recorrido de fin de jornada"),
    "performed_by": ["foreman"],
    "applies": {},
    "per": "walk",
    "hold": True,
    "sampling": None,
    "items": [
        item(
            "loose",
            "Is anything loose?",
            "¿Hay algo suelto?",
            severity="critical",
            basis_kind="common_practice",
        ),
        item("seal", "Is the roof closed for the night?", "¿Está cerrado el techo para la noche?"),
    ],
}
DEFINITIONS = {digest("flange"): FLANGE, digest("clip"): CLIP, digest("day"): DAY}
