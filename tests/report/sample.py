"""A hand-made record of an invented job, as the fold gives it: two areas, four places, one failure, one photo
that never arrived, one fit check. Every name, number of approval and reading is made up."""

from typing import Any

from inspect_app.record.instruments import instruments
from tests.report.sample_answers import answers
from tests.report.sample_definitions import DEFINITIONS
from tests.report.sample_findings import findings
from tests.report.sample_fit import checked
from tests.report.sample_ground import FOREMAN, KEY, OPTIONS, PEOPLE, base, digest, q
from tests.report.sample_pictures import LOST, PICTURES, photos, write_pictures
from tests.report.sample_roof import areas, assemblies
from tests.report.sample_walk import photo_entries, stations, walks

__all__ = ["DEFINITIONS", "LOST", "OPTIONS", "PEOPLE", "PICTURES", "log", "photos", "record", "write_pictures"]


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
        "instruments": instruments({"units": "US", "instruments": {"micrometer": {
            "uncertainty": q("0.0002", "in"), "source": "invented: checked on a gauge block, 9 September"}}}),
        "parties": [{"role": "contractor", "name": "Tidewrack Building (invented)"},
                    {"role": "installer", "name": "Gannet Sheet Metal, crew 2 (invented)"}],
    }  # fmt: skip
    things: dict[str, Any] = {
        "job": job,
        "assemblies": assemblies(),
        "areas": areas(),
        "walks": walks(),
        "stations": stations(),
        "answers": answers(),
        "photos": photo_entries(),
        "flags": [],
        "chains": {KEY: {"count": 23, "head": digest("signoff"), "gaps": [], "forks": [], "orphans": []}},
    }
    things["fits"] = {"quay": checked(things, "quay")}
    things["findings"] = findings(things)
    return things
