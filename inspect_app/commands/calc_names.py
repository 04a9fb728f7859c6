"""The names that people give a rule's inputs in the shell, and the inputs read under them."""

import re
from typing import Any

from inspect_app.commands.calc_input import read
from inspect_app.commands.calc_meant import as_meant
from inspect_app.errors import BadInput
from inspect_app.rules.refused import Refused
from inspect_app.rules.rulebook import describe

ALIASES = {
    "movement": {"length": "distance", "run": "distance", "difference": "change", "delta_t": "change",
                 "range": "change"},
    "window": {"length": "distance", "run": "distance", "temperature_uncertainty": "metal_uncertainty"},
    "slope": {"rise": "slope", "degrees": "slope", "percent": "slope", "pitch": "slope", "min": "minimum"},
    "thickness": {"gauge_system": "system", "thickness": "reading", "coating": "coating_thickness"},
    "spacing": {"spacing": "gaps", "gap": "gaps", "found": "gaps", "length": "over"},
    "spacing_tested": {"spacing": "gaps", "gap": "gaps", "found": "gaps", "length": "over"},
    "limit": {"min": "at_least", "max": "at_most"},
    "guard": {"min": "at_least", "max": "at_most"},
    "count": {"bad": "count", "looked_at": "of", "max": "at_most"},
    "clip": {"run": "distance", "offset": "tab", "travel_out": "travel_outward", "travel_in": "travel_inward",
             "temperature_uncertainty": "metal_uncertainty"},
    "centred": {"length": "distance", "run": "distance", "error": "offset_error", "travel_out": "travel_outward",
                "travel_in": "travel_inward"},
    "longest_run": {"travel_out": "travel_outward", "travel_in": "travel_inward", "error": "offset_error"},
    "end_gap": {"run": "distance", "length": "distance", "temperature_uncertainty": "metal_uncertainty"},
    "pull_out": {"screw": "diameter"},
    "pull_over": {"diameter": "head"},
    "clearance": {"temperature_uncertainty": "metal_uncertainty", "room": "clearance", "run": "distance"},
    "fold_return": {"run": "distance"},
    "penetration": {"length": "fastener", "min": "least"},
    "zone_spacing": {"slot_pitch": "pitch"},
    "plan": {"size": "lot"},
    "zero_plan": {"share": "defective", "defectives": "defective"},
    "risk": {"sample": "n", "bad": "defectives"},
    "share_bound": {"count": "found", "of": "n"},
    "lot_bound": {"count": "found", "of": "n"},
    "draw": {"sample": "n"},
    "kappa": {"both": "both_bad", "first": "first_only", "second": "second_only", "neither": "both_good"},
}  # fmt: skip
RULES = {"tab": "clip"}  # the same rule by its other name: a tab moves in its clip
BARE_UNITS = {"degrees": "deg", "percent": "%", "rise": "/12"}
EXAMPLES = {
    "movement": 'distance="100 ft" expansion=6.5e-6/F change=80F',
    "wear": 'mark="1/2 in" uncertainty="1/16 in" distance="40 ft" expansion=6.5e-6/F metal_low=-20F metal_high=180F',
    "window": 'distance="40 ft" expansion=6.5e-6/F metal_low=-20F metal_high=180F metal_now=70F slot=1in '
    "shank=0.190in",
    "slot": 'length="40 ft" station="7 ft 6 in" fixed_line="40 ft" expansion=6.5e-6/F metal_low=-20F metal_high=180F '
    "metal_now=70F slot=1in shank=0.190in third=middle",
    "clip": 'distance="100 ft" expansion=6.5e-6/F metal_low=-20F metal_high=180F metal_now=130F travel_outward=1in '
    "travel_inward=1in",
    "slope": "slope=3:12 minimum=0.5:12",
    "spacing": 'gaps="11.5in,12in,13in" limit=12in',
    "spacing_tested": "pressure=85psf tested=24in:60psf,12in:110psf gaps=11in,12in",
    "thickness": "gauge=24 system=MSG reading=0.0230in coated=no",
    "limit": "reading=2 equal=2",
    "centred": 'distance="30 ft" expansion=6.5e-6/F metal_low=-20F metal_high=180F slot=1in shank=0.190in '
    "offset_error=1/8in",
    "longest_run": "expansion=6.5e-6/F metal_low=-20F metal_high=180F slot=1in shank=0.190in offset_error=1/8in "
    "run=30ft",
    "end_gap": 'gap=0.5in return=1.5in engagement=0.5in distance="40 ft" expansion=6.5e-6/F metal_low=-20F '
    "metal_high=180F metal_now=70F",
    "pull_out": "thickness=0.0283in diameter=0.190in tensile=33ksi",
    "pull_over": "thickness=0.0283in head=0.340in tensile=33ksi hole=round",
    "withdrawal": "specific_gravity=0.50 diameter=0.190in penetration=1.5in",
    "head_compared": "specified=0.430in found=0.340in slot_width=0.22in",
    "clip_force": "pressure=45psf basis=ASD width=16in spacing=30in fasteners=2",
    "edge_width": 'least_width="100 ft" height="30 ft" edition="ASCE 7-10"',
    "count": "count=1 of=8 at_most=0",
    "guard": "reading=29.9in at_most=30in uncertainty=0.25in rule=guarded",
    "in_force": "day=2026-11-25 issued=2025-03-01 expires=2028-03-01",
    "penetration": "fastener=5in build_up=4-1/4in least=1/2in",
    "clearance": 'clearance=1/2in distance="40 ft" expansion=6.5e-6/F metal_low=-20F metal_high=180F metal_now=70F',
    "fold_return": 'return=1in engagement=3/8in distance="40 ft" expansion=6.5e-6/F metal_low=-20F metal_high=180F',
    "zone_spacing": "spacing=12in pitch=6in",
    "clip_seam": "seam=double_lock seams=single_lock,double_lock",
    "plan": "lot=60 level=S-4 aql=2.5 inspection=normal",
    "zero_plan": "defective=5% confidence=95% lot=500",
    "risk": "n=5 accept=0 share=10%",
    "share_bound": "found=1 n=32 confidence=95% sides=1",
    "lot_bound": "lot=60 n=5 found=0 confidence=95%",
    "kappa": "both_bad=22 first_only=2 second_only=4 both_good=11 confidence=95%",
    "draw": "population=60 n=5 seed=00112233445566778899aabbccddeeff00112233445566778899aabbccddeeff",
    "switch": "history=A,R,A,R inspection=normal reduced=not",
}


def rule_meant(name: str, pairs: list[str]) -> str:
    """The rule that a person means by ``name``: a spacing against tested points has a rule of its own."""
    if name == "spacing" and any(pair.strip().startswith("tested") for pair in pairs):
        return "spacing_tested"
    return RULES.get(name, name)


def read_inputs(name: str, pairs: list[str]) -> tuple[dict[str, Any], str | None, dict[str, str]]:
    """``key=value`` words as the inputs of the rule ``name``, the system asked for with ``units=``, and the key under
    which each input came.

    Raises ``BadInput`` (``calc_not_pair``, ``calc_twice`` and those of ``calc_input``) and Refused
    ``unknown_input``.
    """
    known, base = describe(name), name.split("@")[0]
    aliases = ALIASES.get(base, {})
    texts: dict[str, tuple[str, str]] = {}  # input: (the key it came under, its text)
    for pair in pairs:
        key, equals, text = (part.strip() for part in pair.partition("="))
        if not equals or not text:
            raise BadInput("calc_not_pair", field=key, value=pair)
        wanted = key if key in known else aliases.get(key, key)
        if wanted in texts:
            raise BadInput("calc_twice", field=key, value=text)
        texts[wanted] = (key, text)
    units = texts.pop("units", ("", ""))[1].upper() or None
    as_meant(base, texts, known)
    inputs = {}
    for wanted in texts:
        key, text = texts[wanted]
        if wanted not in known:
            raise Refused("unknown_input", key, text)
        if key in BARE_UNITS and re.fullmatch(r"[+-]?[0-9]*\.?[0-9]+", text):
            text += BARE_UNITS[key]
        inputs[wanted] = read(text, key, known[wanted])
    return inputs, units, {wanted: texts[wanted][0] for wanted in texts}
