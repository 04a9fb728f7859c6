"""The photos that an entry names."""

from collections.abc import Mapping

ONE, MANY = ("sha256", "document"), "photos"


def pictures(payload: Mapping[str, object]) -> set[str]:
    """SHA-256 in hexadecimal of every photo that an entry's body names, however deep: a ``photo`` entry's own, those of
    answers, corrections and deliveries, a concession's document. Names only: whether they are held is not asked."""
    found: set[str] = set()
    waiting: list[object] = [payload.get("body")]
    while waiting:
        value = waiting.pop()
        if isinstance(value, Mapping):
            found |= {text for name in ONE if isinstance(text := value.get(name), str)}
            named = value.get(MANY)
            found |= {text for text in named if isinstance(text, str)} if isinstance(named, list) else set()
            waiting.extend(value.values())
        elif isinstance(value, list):
            waiting.extend(value)
    return {name for name in found if len(name) == 64}
