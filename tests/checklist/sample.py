"""A small sound definition to be spoiled: as data, and as YAML with known lines."""

import json
import re
from typing import Any

from inspect_app.checklist.compile import Compiled, compile_text
from inspect_app.checklist.load import rulebook_rules
from inspect_app.checklist.problem import Problem
from inspect_app.settings import shipped
from inspect_app.words import LANGUAGES, Words

RULES = rulebook_rules()
WORDS = Words(shipped("static") / "words")

TEXT = """\
id: sample-check
version: 3
title: {en: Sample, es: Muestra}
performed_by: [foreman]
applies: {attachment: [nail_flange]}
per: station
hold: false
sampling: null
cautions:
  - {en: Mind the edge, es: Cuidado con el borde}
items:
  - id: straight
    question: {en: Is it straight?, es: ¿Está recto?}
    why: {en: It shows., es: Se nota.}
    how: {en: Look., es: Mire.}
    kind: judge
    photo: on_fail
    severity: major
    basis: {en: Common practice, es: Práctica común}
    basis_kind: common_practice
  - id: gaps
    question: {en: How far apart?, es: ¿Qué separación?}
    why: {en: Wind., es: Viento.}
    how: {en: Tape., es: Cinta.}
    kind: measure
    photo: on_fail
    severity: critical
    instrument: gaps
    unit: {US: in, SI: mm}
    rule: {name: spacing@1, inputs: {gaps: reading.gaps, limit: zone.spacing}}
    basis: {en: Approved assembly, es: Conjunto aprobado}
    basis_kind: assembly
"""


def problems(text: str) -> list[Problem]:
    """The problems of a text; fails when it has none, or one that cannot be said in both languages."""
    found = compile_text(text, RULES)
    assert not isinstance(found, Compiled), "compiled without a problem"
    for one in found:
        for language in LANGUAGES:
            said = one.message(WORDS, language) + one.way_out(WORDS, language)
            assert not re.search(r"\{[a-z_]+\}", said), said  # no fact is missing
    return found


def spoil(old: str, new: str) -> list[Problem]:
    """The problems of the sample with one piece of its text replaced."""
    assert TEXT.count(old) >= 1, old
    return problems(TEXT.replace(old, new, 1))


def codes(found: list[Problem]) -> list[str]:
    return [one.code for one in found]


def sample() -> dict[str, Any]:
    found = compile_text(TEXT, RULES)
    assert isinstance(found, Compiled)
    return json.loads(json.dumps(found.definition))


def with_item(n: int, **changed: Any) -> str:
    """The sample as JSON, which is YAML too, with fields of one item changed; ``...`` removes a field."""
    data = sample()
    data["items"][n] |= changed
    data["items"][n] = {name: value for name, value in data["items"][n].items() if value is not ...}
    return json.dumps(data)
