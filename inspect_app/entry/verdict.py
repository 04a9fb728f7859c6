"""A verdict as it was shown: numbers as decimal strings, the rule and the rulebook that gave it."""

from inspect_app.entry.shape import choice, mapping, name, nullable, record, text

VERDICT = record(
    {
        "result": nullable(choice("pass", "fail", "not_determinable", "not_applicable", "too_close")),
        "rule": nullable(name),
        "rulebook": text,
        "reason": nullable(mapping),
        "inputs": mapping,
        "values": mapping,
    }
)
