"""Two invented assemblies on two invented roof areas."""

from typing import Any

from tests.report.sample_ground import base, q


def assemblies() -> dict[str, Any]:
    shared = {
        "metal": "steel, aluminium-zinc coated, painted",
        "expansion": q("0.0000065", "/F"),
        "gauge": "24",
        "expansion_source": "AISC value for structural steel",
        "gauge_system": "MSG",
        "coating": "AZ50, painted",
        "fastener_head_diameter": q("0.46", "in"),
        "underlayment": "high-temperature self-adhered membrane",
    }
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
    clip = (
        base("a-clip")
        | shared
        | {
            "name": "Double-lock 2 in, expansion clip",
            "panel": "invented profile DL-20",
            "seam": "double_lock",
            "seam_height": q("2", "in"),
            "coverage": q("18", "in"),
            "attachment": "expansion_clip",
            "clip": "invented two-piece clip XC-2",
            "clip_travel_outward": q("1", "in"),
            "clip_travel_inward": q("1", "in"),
            "fastener": "#12 pancake-head screw, 1-1/2 in",
            "fasteners_per_clip": 2,
            "fastener_diameter": q("0.216", "in"),
            "fastener_length": q("1.5", "in"),
            "deck": "22 ga steel deck",
            "minimum_slope": q("0.5", "/12"),
            "longest_run": q("120", "ft"),
            "zones": [{"name": "field", "spacing": q("24", "in"), "pressure": q("60", "psf")}],
            "approval": {"reference": "INV-2212 (invented)", "issued": "2025-03-01", "expires": "2028-03-01"},
        }
    )
    return {"a-flange": flange, "a-clip": clip}


def areas() -> dict[str, Any]:
    def outline(width: str, length: str) -> dict[str, Any]:
        return {"unit": "ft", "points": [["0", "0"], [width, "0"], [width, length], ["0", length]]}

    edges = ["eave", "rake", "ridge", "rake"]
    quay = base("quay") | {
        "name": "Quay slope",
        "assembly": "a-flange",
        "slope": q("4", "/12"),
        "outline": outline("64", "40"),
        "edges": edges,
        "start": "left",
        "coverage": q("16", "in"),
        "panel_length": q("40", "ft"),
        "run": q("40", "ft"),
        "panel_count": 48,
        "fixed_line": {
            "from_low_end": q("40", "ft"),
            "by": "ridge zee screwed through the pan",
            "fasteners": 3,
        },
        "zones": ["field", "edge"],
    }
    yard = base("yard") | {
        "name": "Yard slope",
        "assembly": "a-clip",
        "slope": q("1", "/12"),
        "outline": outline("72", "100"),
        "edges": edges,
        "start": "right",
        "coverage": q("18", "in"),
        "panel_length": q("100", "ft"),
        "run": q("100", "ft"),
        "panel_count": 48,
        "zones": ["field"],
        "fixed_line": {"from_low_end": q("0", "ft"), "by": "fixed clips and eave cleat", "fasteners": 4},
    }
    return {"quay": quay, "yard": yard}
