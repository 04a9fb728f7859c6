"""What ``calc`` prints: an answer as one object or as lines, a refusal, and what a rule takes."""

from fractions import Fraction
from typing import Any

from inspect_app.commands.calc_names import ALIASES, EXAMPLES
from inspect_app.errors import BadInput
from inspect_app.report.number import number
from inspect_app.rules.refused import Refused
from inspect_app.rules.rulebook import describe, full_name, names
from inspect_app.rules.unit import UNITS
from inspect_app.words import Words

FEET_FROM = 120.0  # inches: below, a rule or a tape is read in inches alone


def as_object(found: dict[str, Any], words: Words, language: str) -> dict[str, Any]:
    """``{"rule", "values", "verdict"?, "reason"?, "reason_code"?, "formula", "inputs", "understood", "source"}``."""
    shown = {"rule": found["rule"], "values": found["values"] | _also(found)}
    why = found["reason"]
    if found["verdict"]:
        shown["verdict"] = found["verdict"]
    if found["verdict"] or why:
        shown["reason"] = _reason(why, words, language) if why else None
        shown["reason_code"] = why["code"] if why else None
    shown["formula"] = words.say(f"rule.{found['rule']}.formula", language)
    shown["inputs"] = found["inputs"]
    shown["understood"] = found["understood"]
    shown["source"] = words.say(f"rule.{found['rule']}.source", language)
    return shown


def _also(found: dict[str, Any]) -> dict[str, Any]:
    """Values under the shorter names that the shell promises."""
    return {"nominal": found["values"]["nominal_force"]} if "nominal_force" in found["values"] else {}


def answer_page(found: dict[str, Any], words: Words, language: str) -> str:
    """The same as lines: each value under the name that ``--json`` gives it, with its words."""
    shown = as_object(found, words, language)
    base = found["rule"].split("@")[0]
    lines = [words.say(f"rule.{found['rule']}.name", language)]
    for name, value in found["values"].items():
        told = shown["reason"] if name == "because" else _value(value, words, language)
        lines.append(f"  {name} ({_named('value', base, name, words, language)}): {told}")
    if "verdict" in shown:
        verdict = words.say(f"report.result.{shown['verdict']}", language)
        lines.append(f"{words.say('calc.verdict', language)}: {verdict}")
    if shown.get("reason") and "because" not in found["values"]:
        lines.append(shown["reason"])
    for part in ("formula", "source"):
        lines.append(f"{words.say(f'calc.{part}', language)}: {shown[part]}")
    return "\n".join(lines)


def _value(value: dict[str, Any], words: Words, language: str) -> str:
    """A number with its unit, whole where it is whole by nature; a word in words; a list with commas."""
    told = value["value"]
    if isinstance(told, str):
        return words.say(f"said.{told}", language) if f"said.{told}" in words else told
    if isinstance(told, (int, list)):
        return number(told, value["unit"])
    tape = by_tape(told, value["unit"])
    return number(told, value["unit"], 4) + (f", {tape}" if tape else "")


def _named(kind: str, base: str, name: str, words: Words, language: str) -> str:
    """The words of an input or a value, a rule's own where one name means two things."""
    own = f"{kind}.{base}.{name}"
    return words.say(own if own in words else f"{kind}.{name}", language)


def by_tape(value: float, unit: str) -> str | None:
    """``35 ft 10 3/4 in`` for 430.7692 in, to the nearest sixteenth; None below 10 ft and for other units."""
    if unit != "in" or abs(value) < FEET_FROM:
        return None
    inches, sixteenths = divmod(round(abs(value) * 16), 16)
    feet, inches = divmod(inches, 12)
    parts = [str(inches)] if inches else []
    parts += [str(Fraction(sixteenths, 16))] if sixteenths else []
    return ("−" if value < 0 else "") + f"{feet} ft" + (f" {' '.join(parts)} in" if parts else "")


def rules_page(words: Words, language: str) -> str:
    """Every rule with its name, and how to see what one takes."""
    lines = [f"  {name}: {title}" for name, title in titles(words, language).items()]
    return "\n".join([words.say("calc.rules", language), *lines, words.say("calc.rules_next", language),
                      words.say("calc.layout", language)])  # fmt: skip


def titles(words: Words, language: str) -> dict[str, str]:
    """Each rule's newest name in words."""
    return {name: words.say(f"rule.{full_name(name)}.name", language) for name in names()}


def refusal(refused: Refused | BadInput, words: Words, language: str, accepted: dict[str, object] | None,
            keys: dict[str, str]) -> str:  # fmt: skip
    """Field, value and way out; what is ``accepted`` instead, where that is known. ``keys``: what a person called each
    input."""
    base, bracket, place = refused.field.partition("[")
    field = keys.get(base, base) + bracket + place
    value = refused.value if refused.value not in (None, "") else "—"
    facts = {"field": field, "value": value}
    key = f"refused.{refused.code}"
    said = f"{words.say(key, language, facts)} {words.say(f'{key}.way_out', language, facts)}"
    return f"{said} {words.say('calc.accepted', language, accepted)}" if accepted else said


def inputs_page(name: str, words: Words, language: str) -> str:
    """The inputs of a rule with their units, the other names that they go by, and an example."""
    base = name.split("@")[0]
    lines = [f"{name}: {words.say(f'rule.{name}.name', language)}"]
    for field, wants in describe(name).items():
        optional = "" if wants["required"] else f" ({words.say('calc.optional', language)})"
        named = _named("input", base, field, words, language)
        lines.append(f"  {field}: {named}; {_takes(wants, words, language)}{optional}")
    lines.append(f"  units: US | SI ({words.say('calc.optional', language)})")
    for alias, field in ALIASES.get(base, {}).items():
        lines.append(f"  {alias} = {field}")
    return "\n".join([*lines, f"seamwalk calc {base} {EXAMPLES[base]}"])


def _takes(wants: dict[str, Any], words: Words, language: str) -> str:
    if wants["choices"]:
        return " | ".join(wants["choices"])
    dimension = "length" if wants["dimension"] == "lengths" else wants["dimension"]
    units = [unit for unit, (measures, _) in UNITS.items() if measures == dimension]
    if dimension == "difference":
        units = ["F", "C", "K"]
    return " ".join(units) or words.say(f"calc.takes.{dimension}", language)


def _reason(why: dict[str, Any], words: Words, language: str) -> str:
    facts = {
        name: number(fact["value"], fact["unit"]) if isinstance(fact, dict) else fact
        for name, fact in why["facts"].items()
    }
    return words.say(f"reason.{why['code']}", language, facts)
