"""What people say to the shell that is more than another name of an input: the texts, as the rule wants them."""

import re
from typing import Any

from inspect_app.commands.calc_input import quantity
from inspect_app.errors import BadInput
from inspect_app.rules.metal import expansion_of

SYSTEMS_BY_NAME = {"galvanized": "GSG", "usstandard": "USS", "brownsharpe": "BS", "mil": "mil"}
METALS = {"aluminum": "aluminium", "aluminio": "aluminium", "acero": "steel", "cobre": "copper", "zinc": "zinc",
          "cinc": "zinc", "inoxidable": "stainless", "stainless steel": "stainless"}  # fmt: skip
Texts = dict[str, tuple[str, str]]  # input: (the key it came under, its text)


def as_meant(base: str, texts: Texts, known: dict[str, Any]) -> None:
    """``texts`` of the inputs of the rule ``base``, changed in place. Raises ``BadInput``."""
    if base == "slope" and "run" in texts:
        _over_run(texts)
    if base == "thickness":
        _with_system(texts)
    if base == "clip" and "fixed" in texts:
        _held_somewhere(texts)
    if base == "pull_out":
        texts.pop("hole", None)  # the thread draws out of what holds it, whatever the sheet's hole
    if base == "plan" and "aql" in texts:
        key, aql = texts["aql"]
        texts["aql"] = (key, aql.removesuffix("%").strip())
    if base == "edge_width" and "edition" in texts:
        key, edition = texts["edition"]
        year = re.fullmatch(r"(?:ASCE)?\s*(?:/\s*SEI)?\s*7\s*-\s*(\d\d)", edition.strip(), re.ASCII | re.IGNORECASE)
        texts["edition"] = (key, f"ASCE 7-{year[1]}" if year else edition)
    if "metal" in texts and "expansion" in known:
        _expansion(texts)


def _held_somewhere(texts: Texts) -> None:
    """``fixed=unknown`` of a tab: the distance is then the whole length, and either direction must hold."""
    key, fixed = texts.pop("fixed")
    if fixed not in ("known", "unknown"):
        raise BadInput("calc_unreadable", field=key, value=fixed)
    if fixed == "unknown" and "distance" in texts and "length" not in texts:
        texts["length"] = texts.pop("distance")


def _over_run(texts: Texts) -> None:
    """``rise=3 run=12``, in any one unit: a slope of rise over run, for every run."""
    run_text = texts.pop("run")[1]
    key, rise_text = texts.get("slope", ("", ""))
    if key != "rise":
        raise BadInput("calc_run_alone", field="run", value=run_text)
    lengths = [text if text[-1:].isalpha() else f"{text}in" for text in (rise_text, run_text)]
    rise, run = (quantity(text, name, "length") for text, name in zip(lengths, ("rise", "run"), strict=True))
    assert isinstance(rise, dict) and isinstance(run, dict)
    if rise["unit"] != run["unit"] or not float(run["value"]) > 0:
        raise BadInput("calc_run_alone", field="run", value=run_text)
    texts["slope"] = ("rise", f"{float(rise['value']) * 12 / float(run['value'])!r}/12")


def _with_system(texts: Texts) -> None:
    """``24 MSG`` and ``24 ga`` are how people say it; MSG, said back in the inputs, where nothing else is said."""
    key, gauge = texts.get("gauge", ("gauge", ""))
    parts = re.sub(r"\b(?:ga|gauge)\b\.?|(?<=\d)ga\b", " ", gauge).split()
    if len(parts) == 2 and "system" not in texts:
        texts["gauge"], texts["system"] = (key, parts[0]), ("system", parts[1])
    elif len(parts) == 1:
        texts["gauge"] = (key, parts[0])
    texts.setdefault("system", ("system", "MSG"))
    for name in ("system", "tested_system"):
        if name in texts:
            system_key, system = texts[name]
            texts[name] = (system_key, SYSTEMS_BY_NAME.get(system.lower().replace(" ", ""), system.upper()))


def _expansion(texts: Texts) -> None:
    """``metal=steel`` for the expansion offered for it; said back in the inputs with its value."""
    key, metal = texts.pop("metal")
    offered = expansion_of(METALS.get(metal.lower(), metal.lower()))
    if offered is None:
        raise BadInput("calc_metal", field=key, value=metal)
    if "expansion" in texts:
        raise BadInput("calc_twice", field=key, value=metal)
    texts["expansion"] = (key, offered["value"] + offered["unit"])
