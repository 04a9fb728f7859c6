"""Faults of a store in words, for the shell."""

from collections.abc import Iterable

from inspect_app.commands.visible import visible
from inspect_app.upkeep.fault import Fault
from inspect_app.words import Words


def fault_lines(faults: Iterable[Fault], words: Words, language: str) -> list[str]:
    """What, where, way out: two lines each."""
    lines = []
    for one in faults:
        facts = {name: visible(str(value)) for name, value in one.facts.items()}
        sign = "·" if one.note else "✗"
        lines.append(f"{sign} {visible(one.where)}: {words.say(f'upkeep.{one.code}', language, facts)}")
        way_out = words.say(f"upkeep.{one.code}.way_out", language, facts)
        lines.append(f"   {words.say('upkeep.way_out', language, {'way_out': way_out})}")
    return lines
