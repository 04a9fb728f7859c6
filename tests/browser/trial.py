"""A checklist that measures with every instrument once, beside the released ones: made for the tests, on no roof."""

import json
import shutil
from pathlib import Path
from typing import Any

from inspect_app.settings import shipped

METAL = {"metal_now": "reading.metal_temperature", "metal_uncertainty": "reading.metal_uncertainty"}
AGE = {"metal_age": "reading.metal_age", "acceptance": "job.acceptance"}
RANGE = {"expansion": "assembly.expansion", "metal_low": "job.metal_low", "metal_high": "job.metal_high"}
PLACE = {"station": "station.from_low_end", "fixed_line": "area.fixed_line.from_low_end", "length": "area.panel_length"}
LENGTH = {"US": "in", "SI": "mm"}
FLANGE, CLIP = {"attachment": ["nail_flange"]}, {"attachment": ["expansion_clip"]}


def limit(most: str, doubt: str) -> dict[str, Any]:
    return {"name": "limit@2", "inputs": {
        "reading": "reading.value", "at_most": {"value": most, "unit": "in"}, "acceptance": "job.acceptance",
        "uncertainty": f"job.instruments.{doubt}.uncertainty"}}  # fmt: skip


# Item, instrument, photo, attachment, unit and step, rule.
ITEMS: tuple[tuple[str, str, str, dict[str, Any], dict[str, Any], dict[str, Any]], ...] = (
    ("try_slot", "slot_taps", "required", FLANGE, {}, {"name": "slot@2", "inputs": METAL | AGE | RANGE | PLACE | {
        "taps": "reading.taps", "card": "reading.card", "end_hidden": "reading.end_hidden", "third": "reading.third",
        "slot": "assembly.slot_length", "shank": "assembly.fastener_diameter",
        "head": "assembly.fastener_head_diameter"}}),
    ("try_tab", "tab", "on_fail", CLIP, {"unit": LENGTH}, {"name": "clip@2", "inputs": METAL | AGE | RANGE | PLACE | {
        "tab": "reading.value", "travel_outward": "assembly.clip_travel_outward",
        "travel_inward": "assembly.clip_travel_inward", "uncertainty": "job.instruments.rule.uncertainty"}}),
    ("try_gaps", "gaps", "on_fail", {}, {"unit": LENGTH}, {"name": "spacing@2", "inputs": {
        "gaps": "reading.gaps", "count": "reading.count", "over": "reading.over", "limit": "zone.spacing",
        "uncertainty": "job.instruments.tape.uncertainty", "acceptance": "job.acceptance"}}),
    ("try_feeler", "feeler", "on_fail", {}, {"unit": LENGTH}, limit("0.0625", "feeler")),
    ("try_step", "number", "on_fail", {}, {"unit": LENGTH, "step": {"US": "0.03125", "SI": "0.5"}},
     limit("0.03125", "depth_gauge")),
    ("try_sheet", "micrometer", "on_fail", {}, {"unit": LENGTH}, {"name": "thickness@2", "inputs": {
        "gauge": "assembly.gauge", "system": "assembly.gauge_system", "reading": "reading.value",
        "coated": "reading.coated", "coating_thickness": "reading.coating",
        "uncertainty": "job.instruments.micrometer.uncertainty", "acceptance": "job.acceptance"}}),
    ("try_slope", "inclinometer", "on_fail", {}, {"unit": {"US": "deg", "SI": "deg"}},
     {"name": "slope@2", "inputs": {
        "slope": "reading.value", "readings": "reading.readings", "reversed": "reading.reversed",
        "minimum": "assembly.minimum_slope", "uncertainty": "job.instruments.inclinometer.uncertainty",
        "acceptance": "job.acceptance"}}),
    ("try_count", "count", "on_fail", {}, {}, {"name": "count@1", "inputs": {
        "count": "reading.count", "of": "reading.of", "at_most": 0}}),
)  # fmt: skip


def beside_the_released(folder: Path) -> Path:
    """The released checklists and this one, in ``folder``."""
    shutil.copytree(shipped("checklists"), folder)
    (folder / "trial-1.yaml").write_text(json.dumps(definition(), indent=1), "utf-8")
    return folder


def definition() -> dict[str, Any]:
    return {
        "id": "trial", "version": 1, "title": both("Trial of the instruments", "Prueba de los instrumentos"),
        "performed_by": ["foreman"], "per": "station", "hold": False, "sampling": None,
        "cautions": [both("This is a trial: nobody climbs for it.", "Es una prueba: nadie sube por ella.")],
        "items": [item(*one) for one in ITEMS],
    }  # fmt: skip


def item(
    name: str, instrument: str, photo: str, applies: dict[str, Any], more: dict[str, Any], rule: dict[str, Any]
) -> dict[str, Any]:
    word = name.removeprefix("try_")
    return {
        "id": name, "question": both(f"Trial of {word}?", f"¿Prueba de {word}?"), "applies": applies,
        "why": both("A trial shows whether it can be measured.", "Una prueba muestra si se puede medir."),
        "how": both("As its instrument asks.", "Como lo pide su instrumento."), "photo": photo, "severity": "minor",
        "kind": "count" if instrument == "count" else "measure", "instrument": instrument, "rule": rule, **more,
        "basis": both("Common practice, no source", "Práctica común, sin fuente"), "basis_kind": "common_practice",
    }  # fmt: skip


def both(en: str, es: str) -> dict[str, str]:
    return {"en": en, "es": es}
