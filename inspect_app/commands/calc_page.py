"""What ``calc`` prints: an answer as one object or as lines, a refusal, and what a rule takes."""

from typing import Any

from inspect_app.commands.calc_names import ALIASES, EXAMPLES
from inspect_app.errors import BadInput
from inspect_app.report.number import number
from inspect_app.rules.refused import Refused
from inspect_app.rules.rulebook import describe
from inspect_app.rules.unit import UNITS
from inspect_app.words import Words


def as_object(found: dict[str, Any], words: Words, language: str) -> dict[str, Any]:
    """``{"rule", "values", "verdict"?, "reason"?, "reason_code"?, "formula", "inputs", "understood", "source"}``."""
    shown = {"rule": found["rule"], "values": found["values"]}
    if found["verdict"]:
        why = found["reason"]
        shown["verdict"] = found["verdict"]
        shown["reason"] = _reason(why, words, language) if why else None
        shown["reason_code"] = why["code"] if why else None
    shown["formula"] = words.say(f"rule.{found['rule']}.formula", language)
    shown["inputs"] = found["inputs"]
    shown["understood"] = found["understood"]
    shown["source"] = words.say(f"rule.{found['rule']}.source", language)
    return shown


def answer_page(found: dict[str, Any], words: Words, language: str) -> str:
    """The same as lines: each value under the name that ``--json`` gives it, with its words."""
    shown = as_object(found, words, language)
    lines = [words.say(f"rule.{found['rule']}.name", language)]
    for name, value in found["values"].items():
        lines.append(f"  {name} ({words.say(f'value.{name}', language)}): {number(value['value'], value['unit'], 4)}")
    if "verdict" in shown:
        verdict = words.say(f"report.result.{shown['verdict']}", language)
        lines.append(f"{words.say('calc.verdict', language)}: {verdict}")
        if shown["reason"]:
            lines.append(shown["reason"])
    for part in ("formula", "source"):
        lines.append(f"{words.say(f'calc.{part}', language)}: {shown[part]}")
    return "\n".join(lines)


def refusal(refused: Refused | BadInput, words: Words, language: str) -> str:
    """Field, value and way out."""
    value = refused.value if refused.value not in (None, "") else "—"
    facts = {"field": refused.field, "value": value}
    key = f"refused.{refused.code}"
    return f"{words.say(key, language, facts)} {words.say(f'{key}.way_out', language, facts)}"


def inputs_page(name: str, words: Words, language: str) -> str:
    """The inputs of a rule with their units, the other names that they go by, and an example."""
    base = name.split("@")[0]
    lines = [f"{name}: {words.say(f'rule.{name}.name', language)}"]
    for field, wants in describe(name).items():
        optional = "" if wants["required"] else f" ({words.say('calc.optional', language)})"
        lines.append(f"  {field}: {words.say(f'input.{field}', language)}; {_takes(wants, words, language)}{optional}")
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
