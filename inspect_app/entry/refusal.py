"""The one way bad bytes are turned down: a code with its facts, returned or raised."""

import json

SHOWN = 120


class Refused(Exception):
    """Why something signed was not taken: ``code`` (a key of ``static/words/entry.json``), the ``field`` it
    is about (a path such as ``body.slope.unit`` or ``header.alg``) and the offending ``value`` as short, safe
    text.

    Raised by parsers, returned by ``accept``: one bad entry never hides another.
    """

    def __init__(self, code: str, field: str, value: object = None) -> None:
        super().__init__(code, field)
        self.code = code
        self.field = field
        self.value = shown(value)

    def __repr__(self) -> str:
        return f"Refused({self.code!r}, {self.field!r}, {self.value!r})"


def shown(value: object) -> str:
    """The value as text that is safe to print and to put in JSON: at most 120 characters, no lone surrogates
    and no NUL, because hostile input ends up here. Nothing for None."""
    if value is None:
        return ""
    if isinstance(value, bytes):
        text = value[: SHOWN + 1].decode("utf-8", "backslashreplace")
    elif isinstance(value, str):
        text = value[: SHOWN + 1]
    else:
        text = json.dumps(value, default=repr)[: SHOWN + 1]
    text = text.encode("utf-8", "backslashreplace").decode("utf-8").replace("\0", "\\u0000")
    return text if len(text) <= SHOWN else text[: SHOWN - 1] + "…"
