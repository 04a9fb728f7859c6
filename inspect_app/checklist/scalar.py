"""What an unquoted word of YAML means: the core schema of YAML 1.2.2, section 10.3.2."""

import re

_WHOLE = re.compile(r"[-+]?[0-9]+")
_DECIMAL = r"[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?"
_FRACTION = re.compile(_DECIMAL + r"|[-+]?\.(inf|Inf|INF)|\.(nan|NaN|NAN)")
_WORDS = {
    "null": None, "Null": None, "NULL": None, "~": None, "": None,
    "true": True, "True": True, "TRUE": True, "false": False, "False": False, "FALSE": False,
}  # fmt: skip
LONGEST_NUMBER = 15  # digits: beyond them JavaScript's numbers are no longer whole


def plain(text: str) -> tuple[object, bool]:
    """The value, and whether it is a number that must be quoted instead (a fraction, or too long)."""
    if text in _WORDS:
        return _WORDS[text], False
    if _WHOLE.fullmatch(text):
        return (int(text), False) if len(text) <= LONGEST_NUMBER else (text, True)
    return text, _FRACTION.fullmatch(text) is not None
