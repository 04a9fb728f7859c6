"""``seamwalk calc layout FILE``: panels, lengths and stations of one roof area in a file, and what is wrong with it."""

import json
import sys
from pathlib import Path
from typing import Any

from inspect_app.errors import BadInput
from inspect_app.report.number import number
from inspect_app.rules.layout import layout
from inspect_app.words import Words

NAME = "layout"
MOST_BYTES = 1 << 20


def run(files: list[str], as_json: bool, words: Words, language: str) -> int:
    """0 for a roof that is laid out, with what is wrong with it on standard error; 2 where it cannot be, or the file
    cannot be read. Raises ``BadInput``."""
    if len(files) != 1:
        print(words.say("calc.layout.usage", language), file=sys.stderr)
        return 2
    area, assembly = _read(Path(files[0]))
    told = layout(area, assembly)
    if as_json:
        print(json.dumps(_as_object(told), ensure_ascii=False, allow_nan=False))
    elif told["panels"] is not None:
        print(_page(told, words, language))
    for fault in told["faults"]:
        print(_said(fault, words, language), file=sys.stderr)
    return 2 if told["panels"] is None else 0


def _read(file: Path) -> tuple[Any, Any]:
    """The area and its assembly. Numbers may stand bare in such a file: they are read by their digits, as typed."""
    try:
        data = file.read_bytes()
        if len(data) > MOST_BYTES:
            raise ValueError("more than a megabyte")
        told = json.loads(data, parse_float=str, parse_int=str)
    except OSError as error:
        raise BadInput("file_unusable", str(file), error.strerror) from error
    except (ValueError, RecursionError) as error:
        raise BadInput("file_unusable", str(file), str(error)) from error
    if isinstance(told, dict) and "area" in told:
        return told["area"], told.get("assembly")
    inside = told.get("assembly") if isinstance(told, dict) else None
    return told, inside if isinstance(inside, dict) else None


def _as_object(told: dict[str, Any]) -> dict[str, Any]:
    """The layout, and its numbers under ``values`` as the rules give theirs."""
    values = {name: _value(told[name], told["unit"]) for name in ("longest", "seam_length")}
    values |= {name: _value(told[name], "") for name in ("panels", "seams")}
    lengths = [one | {"length": _value(one["length"], told["unit"])} for one in told["lengths"]]
    stations = {zone: _value(count, "") for zone, count in told["stations"].items()}
    return {"rule": NAME, "values": values | {"lengths": lengths, "stations": stations}} | told


def _value(value: Any, unit: str) -> dict[str, Any]:
    return {"value": value, "unit": unit}


def _page(told: dict[str, Any], words: Words, language: str) -> str:
    unit = told["unit"]
    lines = [words.say("calc.layout.panels", language, {"n": told["panels"]})]
    for run in told["lengths"]:
        facts = {"from": run["from"], "to": run["to"], "length": number(run["length"], unit)}
        key = "calc.layout.panel" if run["from"] == run["to"] else "calc.layout.run"
        lines.append("  " + words.say(key, language, facts))
    lines.append(words.say("calc.layout.longest", language, {"length": number(told["longest"], unit)}))
    facts = {"n": told["seams"], "length": number(told["seam_length"], unit)}
    lines.append(words.say("calc.layout.seams", language, facts))
    lines.append(words.say("calc.layout.stations", language, {"n": sum(told["stations"].values())}))
    for zone in sorted(told["stations"]):
        shown = zone or words.say("calc.layout.no_zone", language)
        lines.append(f"  {shown}: {told['stations'][zone]}")
    return "\n".join(lines)


def _said(fault: dict[str, Any], words: Words, language: str) -> str:
    value = "—" if fault["value"] in (None, "") else fault["value"]
    facts = {"field": fault["field"], "value": value}
    key = f"refused.{fault['code']}"
    return f"{words.say(key, language, facts)} {words.say(f'{key}.way_out', language, facts)}"
