"""``seamwalk calc NAME key=value … [--json]``: every rule from the shell, for people and for outside checks."""

import argparse
import json
import sys
from typing import Any

from inspect_app.commands.calc_input import quantity, read
from inspect_app.errors import BadInput
from inspect_app.report.number import number
from inspect_app.rules.refused import Refused
from inspect_app.rules.rulebook import describe, full_name, judge, names
from inspect_app.settings import shipped
from inspect_app.words import Words

ALIASES = {
    "movement": {"length": "distance", "difference": "change", "delta_t": "change", "range": "change"},
    "slope": {"rise": "slope", "degrees": "slope", "percent": "slope", "pitch": "slope"},
    "thickness": {"gauge_system": "system"},
    "spacing": {"spacing": "gaps", "gap": "gaps"},
}
BARE_UNITS = {"degrees": "deg", "percent": "%", "rise": "/12"}
EXAMPLES = {
    "movement": 'distance="100 ft" expansion=6.5e-6/F change=80F',
    "window": 'distance="40 ft" expansion=6.5e-6/F metal_low=-20F metal_high=180F metal_now=70F slot=1in '
    "shank=0.190in",
    "slot": 'length="40 ft" station="7 ft 6 in" fixed_line="40 ft" expansion=6.5e-6/F metal_low=-20F metal_high=180F '
    "metal_now=70F slot=1in shank=0.190in third=middle",
    "clip": 'distance="100 ft" expansion=6.5e-6/F metal_low=-20F metal_high=180F metal_now=130F travel_outward=1in '
    "travel_inward=1in",
    "slope": "slope=3:12 minimum=0.5:12",
    "spacing": 'gaps="11.5in,12in,13in" limit=12in',
    "thickness": "gauge=24 system=MSG reading=0.0230in coated=no",
    "limit": "reading=2 equal=2",
}


def add_to(subparsers: Any) -> None:
    """The words of the command line."""
    parser = subparsers.add_parser(
        "calc", help="compute one rule", description=f"Rules: {', '.join(names())}. Without inputs: lists them."
    )
    parser.add_argument("rule", metavar="NAME", help="a rule, as window or window@1")
    parser.add_argument("inputs", nargs="*", metavar="key=value", help="inputs with units; units=US or units=SI")
    parser.add_argument("--json", action="store_true", help="one JSON object")
    parser.add_argument("--lang", choices=("en", "es"), default="en")


def run(args: argparse.Namespace) -> int:
    """0 for a computed answer, 2 for refused input with field, value and way out on standard error."""
    words = Words(shipped("static") / "words")
    try:
        name = full_name(args.rule)
        if not args.inputs:
            print(_inputs_of(name))
            return 0
        inputs, units = read_inputs(name, args.inputs)
        found = judge(name, inputs, units)
    except (Refused, BadInput) as refused:
        print(_refusal(refused, words, args.lang), file=sys.stderr)
        return 2
    shown = json.dumps(_object(found, words, args.lang), ensure_ascii=False)
    print(shown if args.json else _page(found, words, args.lang))
    return 0


def read_inputs(name: str, pairs: list[str]) -> tuple[dict[str, Any], str | None]:
    """``key=value`` words as the rule's inputs, and the system asked for. Raises ``BadInput``."""
    known, base = describe(name), name.split("@")[0]
    inputs: dict[str, Any] = {}
    units = None
    for pair in pairs:
        key, equals, text = pair.partition("=")
        if not equals or not text:
            raise BadInput("calc_not_pair", field=key, value=pair)
        if key == "units":
            units = text.upper()
        elif base == "slope" and key == "run":
            continue  # read together with its rise
        else:
            wanted = ALIASES.get(base, {}).get(key, key)
            if wanted not in known:
                raise Refused("unknown_input", key, text)
            if key in BARE_UNITS and text.replace(".", "", 1).isdigit():
                text = f"{text}{BARE_UNITS[key]}"
            inputs[wanted] = read(text, key, known[wanted])
    if base == "slope":
        _with_run(inputs, pairs)
    if base == "thickness":
        _split_gauge(inputs)
    return inputs, units


def _with_run(inputs: dict[str, Any], pairs: list[str]) -> None:
    given = dict(pair.split("=", 1) for pair in pairs)
    if "run" in given and "rise" in given:
        parts = [given[name].rstrip("in ").strip() for name in ("rise", "run")]
        inputs["slope"] = quantity(":".join(parts), "run", "slope")


def _split_gauge(inputs: dict[str, Any]) -> None:
    """``24 MSG`` and ``24 ga`` are how people say it; MSG where nothing else is said."""
    parts = str(inputs.get("gauge", "")).replace("ga", " ").split()
    if parts:
        inputs["gauge"] = parts[0]
        if len(parts) > 1:
            inputs.setdefault("system", parts[1])
    system = str(inputs.get("system", "MSG"))
    inputs["system"] = "mil" if system.lower() == "mil" else system.upper()


def _object(found: dict[str, Any], words: Words, language: str) -> dict[str, Any]:
    shown = {"rule": found["rule"], "values": found["values"]}
    if found["verdict"]:
        why = found["reason"]
        shown["verdict"] = found["verdict"]
        shown["reason"] = _reason(why, words, language) if why else None
        shown["reason_code"] = why["code"] if why else None
    shown["formula"] = words.say(f"rule.{found['rule']}.formula", language, {})
    shown["inputs"] = found["inputs"]
    shown["understood"] = found["understood"]
    shown["source"] = words.say(f"rule.{found['rule']}.source", language, {})
    return shown


def _page(found: dict[str, Any], words: Words, language: str) -> str:
    lines = [f"{name}: {number(has['value'], has['unit'], 4)}" for name, has in found["values"].items()]
    shown = _object(found, words, language)
    if "verdict" in shown:
        lines.append(f"verdict: {shown['verdict']}" + (f" ({shown['reason']})" if shown["reason"] else ""))
    return "\n".join([*lines, f"formula: {shown['formula']}", f"source: {shown['source']}"])


def _reason(why: dict[str, Any], words: Words, language: str) -> str:
    facts = {
        name: number(fact["value"], fact["unit"]) if isinstance(fact, dict) else fact
        for name, fact in why["facts"].items()
    }
    return words.say(f"reason.{why['code']}", language, facts)


def _refusal(refused: Refused | BadInput, words: Words, language: str) -> str:
    facts = {"field": refused.field, "value": refused.value if refused.value is not None else "-"}
    start = f"{refused.field}: {facts['value']}"
    key = f"refused.{refused.code}"
    if key not in words:
        return f"{start}: {refused.code}"
    return f"{start}: {words.say(key, language, facts)} {words.say(f'{key}.way_out', language, facts)}"


def _inputs_of(name: str) -> str:
    base = name.split("@")[0]
    lines = [f"{name} takes:"]
    for field, wants in describe(name).items():
        choices = f" ({', '.join(wants['choices'])})" if wants["choices"] else ""
        lines.append(f"  {field}: {wants['dimension']}{choices}{'' if wants['required'] else ', optional'}")
    for alias, field in ALIASES.get(base, {}).items():
        lines.append(f"  {alias}: the same as {field}")
    lines.append("  units: US or SI, the system of the answer")
    return "\n".join([*lines, f"example: seamwalk calc {base} {EXAMPLES[base]}"])
