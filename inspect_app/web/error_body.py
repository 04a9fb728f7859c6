"""The one shape of every error: ``{"error": {"code", "field", "value", "message", "way_out"}}``."""

from inspect_app.entry.refusal import shown
from inspect_app.web.language import language
from inspect_app.web.parts import parts

FAMILIES = ("refusal", "error")


def explained(code: str, field: str, value: object, family: str = "refusal") -> dict[str, str]:
    """The members of an error, in the language of the request. A code of both families is said as of the one given;
    one without words of its own is still said, with the general ones."""
    words = parts().words
    keys = [f"{family}.{code}" for family in (family, *FAMILIES) if f"{family}.{code}.message" in words]
    key = keys[0] if keys else "error.request_refused"
    facts = {"field": field, "value": shown(value)}
    return {
        "code": code, "field": field, "value": shown(value),
        "message": words.say(f"{key}.message", language(), facts),
        "way_out": words.say(f"{key}.way_out", language(), facts),
    }  # fmt: skip


def error_body(code: str, field: str = "", value: object = None, family: str = "error") -> dict[str, dict[str, str]]:
    return {"error": explained(code, field, value, family)}
