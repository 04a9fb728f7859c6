"""The shape of a definition. What its parts mean together is judged in ``meaning.py``.

Fields of a compiled definition: see ``checklists/README.md``.
"""

from typing import Any

from marshmallow import fields, validate

from inspect_app.checklist.said import Flag, Inputs, Shape, Whole, many_of, one_of, text, told

ROLES = ("foreman", "inspector", "reviewer", "administrator")
ATTACHMENTS = ("nail_flange", "fixed_clip", "expansion_clip")
KINDS = ("judge", "measure", "count", "note", "compute")
PHOTOS = ("required", "on_fail", "optional")
SEVERITIES = ("critical", "major", "minor", "record")
INSTRUMENTS = ("slot_taps", "number", "tab", "feeler", "micrometer", "inclinometer", "gaps", "count", "choice")
BASES = ("assembly", "published", "common_practice", "first_principles")
# Inspection levels and preferred quality levels in percent nonconforming: MIL-STD-105E, tables I and II.
LEVELS = ("S-1", "S-2", "S-3", "S-4", "I", "II", "III")
QUALITY = ("0.10", "0.15", "0.25", "0.40", "0.65", "1.0", "1.5", "2.5", "4.0", "6.5", "10")
ITEM_MOST = 60
CAUSE_MOST = 20
QUESTION_LONGEST = 80  # letters: two lines on a phone held at arm's length
TEXT_LONGEST = 400

_END = r"(?![\s\S])"  # "$" would let a last line break through; JavaScript has no "\\Z"
_NAME = "[a-z][a-z0-9]*(-[a-z0-9]+)*"
_WORD = "[a-z][a-z0-9]*(_[a-z0-9]+)*"


def _length(most: int) -> validate.Length:
    return validate.Length(max=most, error=f"too_long|{most}")


def _said(pattern: str, code: str) -> validate.Regexp:
    return validate.Regexp(f"^{pattern}{_END}", error=code)


def _worded(most: int) -> fields.String:
    # Not blank, and no space at either end: such text prints askew and compares unequal.
    return text(validate.Regexp(rf"^\S([\s\S]*\S)?{_END}", error="blank"), _length(most))


def _words(most: int) -> type[Shape]:
    return Shape.from_dict(  # type: ignore[return-value]
        {one: _worded(most) for one in ("en", "es")}, name=f"Words{most}"
    )


Question, Text = _words(QUESTION_LONGEST), _words(TEXT_LONGEST)


def _both(schema: type[Shape]) -> fields.Nested:
    return fields.Nested(schema, required=True, error_messages=told("map"))


def _listed(schema: type[Shape], check: validate.Length, **options: Any) -> fields.List[Any]:
    inner = fields.Nested(schema, error_messages=told("map"))
    return fields.List(inner, error_messages=told("list"), validate=check, **({"required": True} | options))


class Applies(Shape):
    attachment = many_of(*ATTACHMENTS, required=False)


class Sampling(Shape):
    """Plan for the day's panels: ``level`` and ``aql`` for major items, ``aql_minor`` for minor ones;
    critical ones always with zero acceptance."""

    level = one_of(*LEVELS)
    aql = one_of(*QUALITY)
    aql_minor = one_of(*QUALITY, required=False)
    critical = one_of("zero_acceptance")


class Units(Shape):
    """The unit in which a reading is entered, by the job's system."""

    US = one_of("in", "ft", "F", "dF", "/12", "deg", "%")
    SI = one_of("mm", "cm", "m", "C", "K", "deg", "%")


class Step(Shape):
    """What one press adds to a reading, in the reading's own unit."""

    US = text(_said(r"[0-9]{1,4}(\.[0-9]{1,6})?", "bad_step"))
    SI = text(_said(r"[0-9]{1,4}(\.[0-9]{1,6})?", "bad_step"))


class Rule(Shape):
    name = text(_said(f"{_WORD}@[1-9][0-9]?", "rule_name"))
    inputs = Inputs(required=True, error_messages=told("map"), metadata={
        "additionalProperties": {"anyOf": [
            {"type": "string"}, {"type": "boolean"}, {"type": "integer"},
            {"type": "object", "required": ["value", "unit"], "additionalProperties": False,
             "properties": {"value": {"type": "string"}, "unit": {"type": "string"}}},
        ]}})  # fmt: skip


class Cause(Shape):
    """One of the causes that a finding under the definition may be given."""

    code = text(_said(_WORD, "bad_cause_code"), _length(40))
    en = _worded(QUESTION_LONGEST)
    es = _worded(QUESTION_LONGEST)


class Item(Shape):
    id = text(_said(_WORD, "bad_item_id"), _length(40))
    question = _both(Question)
    why = _both(Text)
    how = _both(Text)
    kind = one_of(*KINDS)
    photo = one_of(*PHOTOS)
    severity = one_of(*SEVERITIES)
    quick = Flag(load_default=False)
    applies = fields.Nested(Applies, load_default=dict, error_messages=told("map"))
    instrument = one_of(*INSTRUMENTS, required=False, allow_none=True, load_default=None)
    unit = fields.Nested(Units, error_messages=told("map"))
    step = fields.Nested(Step, error_messages=told("map"))
    rule = fields.Nested(Rule, allow_none=True, load_default=None, error_messages=told("map"))
    basis = _both(Text)
    basis_kind = one_of(*BASES)


class Definition(Shape):
    id = text(_said(_NAME, "bad_id"), _length(40))
    version = Whole(required=True, error_messages=told("number"),
                    validate=validate.Range(min=1, max=9999, error="bad_version"))  # fmt: skip
    title = _both(Question)
    performed_by = many_of(*ROLES)
    applies = fields.Nested(Applies, load_default=dict, error_messages=told("map"))
    per = one_of("station", "walk", "area")
    hold = Flag(required=True, error_messages=told("flag"))
    sampling = fields.Nested(Sampling, required=True, allow_none=True, error_messages=told("map"))
    cautions = _listed(Text, validate.Length(min=1, error="empty"))
    # Left out: the list that all share. It is then not compiled, so that what was released before keeps its digest.
    causes = _listed(Cause, validate.Length(min=1, max=CAUSE_MOST, error=f"cause_count|{CAUSE_MOST}"), required=False)
    items = _listed(Item, validate.Length(min=1, max=ITEM_MOST, error=f"item_count|{ITEM_MOST}"))
