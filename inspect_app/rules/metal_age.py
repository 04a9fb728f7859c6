"""How old a reading of the metal's temperature may be: ten minutes, in which a cloud changes it by more than a
reading's own doubt (common practice, no source)."""

from inspect_app.rules.answer import measured, reason
from inspect_app.rules.inputs import wanted

METAL_AGE = wanted("integer", required=False)
OLDEST = 600  # seconds


def too_old(given: dict) -> "dict | None":
    """The reason why the metal must be read again; None for a reading that is fresh, or whose age is not told."""
    if given["metal_age"] is None or given["metal_age"] <= OLDEST:
        return None
    return reason("metal_too_old", {"minutes": measured(given["metal_age"] // 60, "")})
